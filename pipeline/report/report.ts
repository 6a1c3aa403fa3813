import { z } from 'zod';
import type { IntervalCase } from '../findings/interval/interval-schema.ts';
import { type Review, reviewSchema } from '../findings/review-schema.ts';
import type { Problem } from '../ingest/reading.ts';
import type { DueTask } from '../transform/cleaning/due-tasks.ts';
import type { UnitDay } from '../transform/panel/unit-day.ts';
import { reportContext } from './page-context.ts';
import { comparisonsPage } from './pages/comparisons-page.ts';
import { intervalFiles } from './pages/interval/interval-page.ts';
import { methodsPage } from './pages/methods-page.ts';
import { recordsPage } from './pages/records-page.ts';
import { reviewPage } from './pages/review-page.ts';
import { unitPage } from './pages/unit-page.ts';
import type { ReportFile } from './report-file.ts';
import { chartTables } from './tables/chart-tables.ts';
import { csvText } from './tables/csv.ts';
import { en } from './words/en.ts';
import type { Words } from './words/words.ts';

/** What a report is made from: the review, and what it sums up. */
export interface ReportInput {
  review: Review;
  /** Unit-day panel up to the end of the month. */
  panel: readonly UnitDay[];
  /** Every due task of every unit. */
  due: readonly DueTask[];
  /** Every problem of the reading; the review holds three examples of each kind. */
  problems: readonly Problem[];
  /** The case for a cleaning interval, if the report is to have its page. */
  interval?: IntervalCase;
}

const PROBLEM_COLUMNS = [
  'code',
  'costs',
  'source',
  'file',
  'sheet',
  'row',
  'column',
  'value',
  'expected',
] as const;

/** How a report is written. */
export interface ReportOptions {
  /** Catalogue of its language; left out: English. */
  words?: Words;
}

/**
 * Makes the files of a report: pages, data and tables. Pure: the same input gives the same bytes; nothing is read, written or asked of a clock.
 * Charts are drawn one after the other, as the renderer counts its ids.
 */
export async function writeReport(input: ReportInput, options: ReportOptions = {}): Promise<ReportFile[]> {
  const { words = en } = options;
  const { review, panel, due, problems, interval } = input;
  const context = reportContext(review, panel, due, words, interval !== undefined);
  const files: ReportFile[] = [{ path: 'index.html', content: await reviewPage(context) }];
  for (const unit of review.units)
    files.push({ path: context.unitPage(unit.unit), content: await unitPage(context, unit) });
  files.push(
    { path: 'comparisons.html', content: comparisonsPage(context) },
    { path: 'records.html', content: recordsPage(context) },
    { path: 'methods.html', content: methodsPage(context) },
    { path: 'review.json', content: `${JSON.stringify(review, null, 2)}\n` },
    { path: 'review.schema.json', content: `${JSON.stringify(z.toJSONSchema(reviewSchema), null, 2)}\n` },
    { path: 'problems.csv', content: csvText(PROBLEM_COLUMNS, problems) },
    ...chartTables(context),
  );
  if (interval) files.push(...(await intervalFiles(context, interval)));
  return files;
}
