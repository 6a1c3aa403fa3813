import { join, resolve } from 'node:path';
import { intervalCase } from '../findings/interval/interval-case.ts';
import { reviewPeriod, spanOfRecords } from '../findings/period.ts';
import { makeReview } from '../findings/review.ts';
import { transform } from '../transform/transform.ts';
import { VERSION } from '../version.ts';
import { type Command, FOLDER_ARGUMENT, JSON_ARGUMENT, SITE_ARGUMENT } from './command.ts';
import { readInputs } from './read-inputs.ts';
import { writeFolder } from './write-files.ts';

/** Makes the review of a month: exports in, a folder of pages, tables and data out. */
export const reviewCommand: Command = {
  definition: {
    meta: {
      name: 'review',
      description: 'Make the review of a month: read the exports, write pages, tables and data.',
    },
    args: {
      folder: FOLDER_ARGUMENT,
      site: SITE_ARGUMENT,
      month: {
        type: 'string',
        valueHint: 'YYYY-MM',
        description: 'Month under review; left out: the last whole month in the records',
      },
      out: {
        type: 'string',
        valueHint: 'FOLDER',
        description: 'Folder in which the review gets a folder of its own, named by month',
        default: 'reports',
      },
      json: JSON_ARGUMENT,
    },
  },
  run: async (values, terminal) => {
    const { site, reading } = await readInputs(values, terminal);
    const period = reviewPeriod(values.month as string | undefined, spanOfRecords(site, reading.records));
    terminal.progress('Joining records');
    const transformed = transform(site, reading.records, period.until);
    terminal.progress('Comparing');
    const review = makeReview({ site, reading, transformed, period, version: VERSION });
    terminal.progress('Making the case for an interval');
    const { histories, panel, until } = transformed;
    const interval = intervalCase(histories, panel, site, reading.records, until);
    terminal.progress('Drawing');
    // Drawing is loaded only here: the commands that draw nothing start without it.
    const { writeReport } = await import('../report/report.ts');
    const due = transformed.histories.flatMap((history) => history.cleaning.due);
    const files = await writeReport({
      review,
      panel: transformed.panel,
      due,
      problems: reading.problems,
      interval,
    });
    const folder = join(String(values.out), period.month);
    await writeFolder(folder, files);
    terminal.progressDone();
    terminal.print(
      values.json
        ? JSON.stringify(review)
        : `Review of ${period.month}, ${files.length} files. Open ${resolve(folder, 'index.html')} in a browser.`,
    );
    return undefined;
  },
};
