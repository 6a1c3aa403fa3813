import { join, resolve } from 'node:path';
import { caseOfUnits } from '../findings/interval/interval-case.ts';
import { reviewPeriod } from '../findings/period.ts';
import { calendarFile } from '../report/pages/interval/calendar-file.ts';
import { caseText } from '../report/pages/interval/case-text.ts';
import { CATALOGUES } from '../report/words/catalogues.ts';
import {
  type Command,
  FOLDER_ARGUMENT,
  HISTORY_ARGUMENT,
  JSON_ARGUMENT,
  SITE_ARGUMENT,
  THREADS_ARGUMENT,
} from './command.ts';
import { readFleet } from './fleet.ts';
import { LANGUAGE_ARGUMENT, languageOf } from './language.ts';
import { writeFile } from './write-file.ts';

/** Makes the case for a cleaning interval: prints it in plain words and writes the proposed cleanings as a calendar file. */
export const intervalCommand: Command = {
  definition: {
    meta: {
      name: 'interval',
      description:
        'Make the case for a cleaning interval from the whole record, and propose cleanings for the next month as a calendar file.',
    },
    args: {
      folder: FOLDER_ARGUMENT,
      site: SITE_ARGUMENT,
      month: {
        type: 'string',
        valueHint: 'YYYY-MM',
        description: 'Last month of the record to use; left out: the last whole month in the records',
      },
      out: {
        type: 'string',
        valueHint: 'FOLDER',
        description: 'Folder in which interval.ics is written',
        default: 'reports',
      },
      language: LANGUAGE_ARGUMENT,
      history: HISTORY_ARGUMENT,
      threads: THREADS_ARGUMENT,
      json: JSON_ARGUMENT,
    },
  },
  run: async (values, terminal) => {
    const month = values.month as string | undefined;
    const { site, share, reading, period } = await readFleet(values, terminal, (span) =>
      reviewPeriod(month, span),
    );
    const words = CATALOGUES[languageOf(values, site)].interval;
    terminal.progress('Making the case');
    const found = caseOfUnits(share.units, share.panel, site, reading.records, period.until);
    const path = join(String(values.out), 'interval.ics');
    await writeFile(path, calendarFile(found, site.organisation, words));
    terminal.progressDone();
    terminal.print(values.json ? JSON.stringify(found) : `${caseText(found, words)}\n\n${resolve(path)}`);
    return undefined;
  },
};
