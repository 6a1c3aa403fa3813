import { z } from 'zod';
import type { IntervalCase } from '../findings/interval/interval-schema.ts';
import { type Review, reviewSchema } from '../findings/review-schema.ts';
import type { Problem } from '../ingest/reading.ts';
import type { ReportMeasures } from '../site/report-settings.ts';
import type { DueTask } from '../transform/cleaning/due-tasks.ts';
import type { UnitDay } from '../transform/panel/unit-day.ts';
import type { ChartRuntimes } from './charts/chart-runtimes.ts';
import { jsonIndentedPieces, jsonPieces } from './json-pieces.ts';
import { ofTables } from './measures/review-in-measures.ts';
import { type ReportContext, reportContext } from './page-context.ts';
import { comparisonsPage } from './pages/comparisons-page.ts';
import { intervalFiles } from './pages/interval/interval-page.ts';
import { meetingPage } from './pages/meeting/meeting-page.ts';
import { methodsPage } from './pages/methods-page.ts';
import { recordsPage } from './pages/records-page.ts';
import { reviewPage } from './pages/review-page.ts';
import { unitPage } from './pages/unit-page.ts';
import type { PagesAsked } from './parts/units-with-page.ts';
import { withRecentSeries } from './recent-series.ts';
import { inPieces, type ReportFile } from './report-file.ts';
import { csvText } from './tables/csv.ts';
import { reviewTables, tableFiles } from './tables/review-tables.ts';
import { type SheetTable, sheetTable, type WorkbookAbout, workbookFile } from './tables/workbook.ts';
import { en } from './words/en.ts';
import type { Words } from './words/words.ts';

/** What most pages and all tables are made from: the review, and what it sums up. */
export interface ReportBasis {
  review: Review;
  /** Unit-day panel up to the end of the month; rows of a unit stand together. */
  panel: readonly UnitDay[];
  /** Every due task of a unit. Asked for unit by unit, since those of a large fleet take more room than the panel. */
  dueOf(unit: string): readonly DueTask[];
  /** Measures of the pages; left out: those of the review. The data files stay in them. */
  measures?: ReportMeasures;
  /** Whether the report has the page of the case for a cleaning interval. */
  hasInterval: boolean;
  /** Whose pages are drawn where there are many units; left out: of those that need attention. */
  pagesAsked?: PagesAsked | undefined;
}

/** What a whole report is made from. */
export interface ReportInput extends Omit<ReportBasis, 'hasInterval'> {
  /** Every problem of the reading; the review holds three examples of each kind. */
  problems: readonly Problem[];
  /** The case for a cleaning interval, if the report is to have its page; it is asked for late, so that it may still be in the making. */
  interval?: IntervalCase | Promise<IntervalCase>;
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
  'more',
] as const;

/** How a report is written. */
export interface ReportOptions {
  /** Catalogue of its language; left out: English. */
  words?: Words;
  /** Units whose pages are made here, where those of others are made elsewhere, such as in other threads; each is asked for when its turn comes. Left out: all of them. */
  units?: Iterable<string>;
  /** Makes the workbook elsewhere, such as in another thread; left out: it is made here. */
  workbook?: (about: WorkbookAbout, tables: readonly SheetTable[]) => Promise<Uint8Array>;
}

/**
 * Makes the files of a report: pages, data and tables. Pure: the same input gives the same bytes, in however many threads; nothing is read, written or
 * asked of a clock. Charts are drawn one after the other, as the renderer counts its ids.
 */
export async function writeReport(input: ReportInput, options: ReportOptions = {}): Promise<ReportFile[]> {
  const { review, problems, interval } = input;
  const { words, workbook = workbookFile } = options;
  const context = contextOf({ ...input, hasInterval: interval !== undefined }, words);
  const files: ReportFile[] = [{ path: 'index.html', content: await reviewPage(context) }];
  const tables = reviewTables({ ...context, review: ofTables(review, context.review) });
  const book = workbook(context, tables.map(sheetTable));
  book.catch(() => undefined);
  const rest: ReportFile[] = [
    { path: 'meeting.html', content: await meetingPage(context) },
    { path: 'comparisons.html', content: comparisonsPage(context) },
    { path: 'records.html', content: recordsPage(context) },
    { path: 'methods.html', content: methodsPage(context) },
    { path: 'review.json', content: dataFile(review) },
    { path: 'review.schema.json', content: `${JSON.stringify(z.toJSONSchema(reviewSchema), null, 2)}\n` },
    { path: 'problems.csv', content: csvText(PROBLEM_COLUMNS, problems) },
    ...tableFiles(tables),
  ];
  if (interval) rest.push(...(await intervalFiles(context, await interval)));
  rest.push({ path: 'review.xlsx', content: await book });
  const { units = context.paged.map(({ unit }) => unit) } = options;
  for await (const [unit, content] of unitPages(context, units))
    files.push({ path: context.unitPage(unit)!, content });
  return [...files, ...rest];
}

/** Units up to which the review's data are one text: those of 100 units in 15 years have 128 MB. */
const FEW_UNITS = 24;
/** Units up to which they hold every day of each series, indented throughout. */
const MANY_UNITS = 120;

function dataFile(review: Review): ReportFile['content'] {
  const { length } = review.units;
  if (length <= FEW_UNITS) return `${JSON.stringify(review, null, 2)}\n`;
  return inPieces(function* () {
    yield* length <= MANY_UNITS ? jsonIndentedPieces(review) : jsonPieces(withRecentSeries(review));
    yield '\n';
  });
}

/**
 * The pages of some units of a report, one after the other as they are asked for.
 *
 * @param runtimes compiled charts to use again, and to add to
 */
export function drawUnitPages(
  basis: ReportBasis,
  units: Iterable<string>,
  words?: Words,
  runtimes?: ChartRuntimes,
): AsyncGenerator<[unit: string, page: string]> {
  return unitPages({ ...contextOf(basis, words), ...(runtimes && { runtimes }) }, units);
}

async function* unitPages(
  context: ReportContext,
  units: Iterable<string>,
): AsyncGenerator<[unit: string, page: string]> {
  const paged = new Map(context.paged.map((unit) => [unit.unit, unit]));
  for (const unit of units) yield [unit, await unitPage(context, paged.get(unit)!)];
}

function contextOf(
  { review, panel, dueOf, hasInterval, measures, pagesAsked }: ReportBasis,
  words: Words = en,
): ReportContext {
  return reportContext(review, panel, dueOf, words, {
    hasInterval,
    pagesAsked,
    ...(measures && { measures }),
  });
}
