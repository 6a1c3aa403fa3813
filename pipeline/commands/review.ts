import { readFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import type { PreviousFile } from '../findings/changes/previous-review.ts';
import { caseOfUnits } from '../findings/interval/interval-case.ts';
import type { IntervalCase } from '../findings/interval/interval-schema.ts';
import { nothingRead, nothingReadLine } from '../findings/lists/nothing-read.ts';
import type { PanelFindings } from '../findings/panel-findings.ts';
import { type Period, reviewPeriod } from '../findings/period.ts';
import { reviewOfShare } from '../findings/review.ts';
import type { Review } from '../findings/review-schema.ts';
import { unitPageNames } from '../report/html/page-names.ts';
import { jsonLinePieces } from '../report/json-pieces.ts';
import type { PagesAsked } from '../report/parts/units-with-page.ts';
import { CATALOGUES } from '../report/words/catalogues.ts';
import { monthOf } from '../site/day.ts';
import type { Language } from '../site/report-settings.ts';
import { UserError } from '../user-error.ts';
import { VERSION } from '../version.ts';
import {
  type Command,
  FOLDER_ARGUMENT,
  HISTORY_ARGUMENT,
  JSON_ARGUMENT,
  SITE_ARGUMENT,
  THREADS_ARGUMENT,
  UsageError,
  type Values,
} from './command.ts';
import { boundHeaps } from './engine-settings.ts';
import { type Beside, type Fleet, readFleet } from './fleet.ts';
import { LANGUAGE_ARGUMENT, languageOf } from './language.ts';
import { PAPERS, type Paper } from './pdf/print-pages.ts';
import { printReview } from './pdf/print-review.ts';
import { isMiddling } from './read-inputs.ts';
import type { PeriodOf } from './site-by-site/share-of-fleet.ts';
import type { Terminal } from './terminal.ts';
import { type ReportThreads, reportThreads } from './threads/pool.ts';
import { secondThread } from './threads/second-thread.ts';
import { threadCount } from './threads/thread-count.ts';
import { freshFolder } from './write-files.ts';

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
      previous: {
        type: 'string',
        valueHint: 'FILE',
        description:
          'review.json of an earlier review, to say what changed; left out: that of the month before in the output folder',
      },
      pdf: {
        type: 'boolean',
        description:
          'Also print the review, the page for the meeting and the pages of units that need attention to PDF, where a Chromium is at hand',
      },
      paper: {
        type: 'string',
        valueHint: 'SIZE',
        description: 'Paper of the PDF: a4 or letter',
        default: 'a4',
      },
      'unit-pages': {
        type: 'string',
        valueHint: 'UNITS',
        description:
          'Of more than 120 units, those whose pages are drawn beside the pages of units that need attention: ids separated by commas, or all',
      },
      language: LANGUAGE_ARGUMENT,
      history: HISTORY_ARGUMENT,
      threads: THREADS_ARGUMENT,
      json: JSON_ARGUMENT,
    },
  },
  run: async (values, terminal) => {
    paperOf(values);
    const month = values.month as string | undefined;
    const count = threadCount(values);
    const isHospital = await isMiddling(String(values.folder));
    if (isHospital) boundHeaps();
    const beside = isHospital && count > 1 ? secondThread() : undefined;
    try {
      const periodOf: PeriodOf = (span) => reviewPeriod(month, span);
      let begun: Begun = {};
      const whatIsBegun: Beside | undefined = beside && {
        onSite(site) {
          // Where it can't be prepared, what follows says why.
          beside.prepareSite(site).catch(() => undefined);
        },
        onJoined(site, joined, records, { until }) {
          const ofPanel = beside.askPanel(site, joined);
          const interval = beside.makeCase(site, joined, records, until);
          for (const part of [ofPanel, interval]) part.catch(() => undefined);
          begun = { ofPanel, interval };
        },
      };
      const fleet = await readFleet(values, terminal, periodOf, whatIsBegun);
      const language = languageOf(values, fleet.site);
      let many: ReportThreads | undefined;
      const openThreads = () => {
        many ??= reportThreadsFor(count, fleet.share);
        return many ?? beside;
      };
      try {
        return await makeAndWrite(values, terminal, { ...fleet, language, openThreads, begun });
      } finally {
        await many?.end();
      }
    } finally {
      await beside?.end();
    }
  },
};

/** What another thread makes beside the share. */
interface Begun {
  ofPanel?: Promise<PanelFindings>;
  interval?: Promise<IntervalCase>;
}

async function makeAndWrite(
  values: Values,
  terminal: Terminal,
  {
    site,
    share,
    reading,
    period,
    language,
    openThreads,
    begun,
  }: Fleet & {
    language: Language;
    openThreads: () => ReportThreads | undefined;
    begun: Begun;
  },
): Promise<undefined> {
  const { units, panel } = share;
  const areVeryMany = units.length >= VERY_MANY_UNITS;
  // They load while the program compares; of very many units they would only take memory until drawing begins.
  if (!areVeryMany) openThreads();
  terminal.progress('Comparing');
  const { records } = reading;
  const previous = await previousReview(values, period);
  const review = reviewOfShare(
    { site, reading, period, version: VERSION, previous },
    share,
    await begun.ofPanel,
  );
  const { pressure, temperature } = site.declared.report;
  const pagesAsked = pagesAskedFor(values, review);
  const courses = new Map(units.map((unit) => [unit.unit, unit]));
  const dueOf = (unit: string) => courses.get(unit)!.due;
  const basis = { review, panel, dueOf, measures: { pressure, temperature }, pagesAsked };
  const folder = join(String(values.out), period.month);
  const fresh = await freshFolder(folder);
  try {
    const names = unitPageNames(review.units.map(({ unit }) => unit));
    const begin = () =>
      openThreads()?.begin({ ...basis, hasInterval: true }, language, (unit, content) =>
        fresh.write({ path: names.get(unit)!, content }),
      );
    // Threads draw the pages of units, which don't need the case, while it is made; of very many units both together would take too much memory.
    const early = areVeryMany ? undefined : begin();
    terminal.progress('Making the case for an interval');
    const interval = begun.interval ?? caseOfUnits(units, panel, site, records, period.until);
    const pages = early ?? begin();
    const threads = openThreads();
    terminal.progress('Drawing');
    // Drawing is loaded only here: the commands that draw nothing start without it.
    const { writeReport } = await import('../report/report.ts');
    const files = await writeReport(
      { ...basis, problems: reading.problems, interval },
      {
        words: CATALOGUES[language],
        ...(pages && { units: pages.units }),
        ...(threads?.workbook && {
          workbook: (about, tables) => threads.workbook!(about, tables, language),
        }),
      },
    );
    for (const file of files) await fresh.write(file);
    await pages?.done;
    await fresh.finish();
    if (values.pdf === true) {
      const ofUnits = review.attention_order.map((unit) => names.get(unit)!);
      await printReview(review, folder, ofUnits, paperOf(values), terminal);
    }
  } catch (error) {
    await fresh.abandon();
    throw error;
  }
  terminal.progressDone();
  const [nothing, ...more] = nothingRead(reading);
  if (nothing)
    terminal.printError(
      `${nothingReadLine(nothing)}${more.length === 0 ? '' : `; and nothing of ${more.length} more, which check lists`}`,
    );
  terminal.print(
    values.json
      ? jsonLinePieces(review)
      : `Review of ${period.month}, ${fresh.count} files. Open ${resolve(folder, 'index.html')} in a browser.`,
  );
  return undefined;
}

/** Units from which it pays to make parts of the report in threads: each has to start, to warm up and to be given what it draws from. */
const MANY_UNITS = 24;

/** Units from which the program's own thread has little to do beside those that draw. */
const VERY_MANY_UNITS = 100;

/** The thread of the program works as well, so one fewer is asked for, unless most of the work is pages of units. */
function reportThreadsFor(count: number, { units }: Fleet['share']): ReportThreads | undefined {
  if (count < 2 || units.length < MANY_UNITS) return undefined;
  return reportThreads(units.length < VERY_MANY_UNITS ? count - 1 : count);
}

/** The units whose pages are asked for by name. */
function pagesAskedFor(values: Values, { units }: Review): PagesAsked | undefined {
  const asked = values['unit-pages'];
  if (asked === undefined || asked === 'all') return asked;
  const names = String(asked)
    .split(',')
    .map((name) => name.trim());
  const unknown = names.find((name) => !units.some(({ unit }) => unit === name));
  if (unknown !== undefined)
    throw new UserError(
      'unknown_unit',
      `--unit-pages must be all, or ids of units separated by commas, found "${unknown}"`,
    );
  return names;
}

/** The paper asked for. */
function paperOf(values: Values): Paper {
  const paper = String(values.paper).toLowerCase();
  if (!Object.hasOwn(PAPERS, paper))
    throw new UsageError(`--paper must be one of ${Object.keys(PAPERS).join(', ')}, found "${values.paper}"`);
  return paper as Paper;
}

/** The review before: the file asked for, else that of the month before in the output folder, if it is there. */
async function previousReview(
  values: Values,
  period: Period,
): Promise<{ lookedFor: string; given?: PreviousFile }> {
  const asked = values.previous === undefined ? undefined : String(values.previous);
  const month = monthOf(period.from - 1);
  const lookedFor = asked === undefined ? `${month}/review.json` : basename(asked);
  const path = asked ?? join(String(values.out), month, 'review.json');
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) => {
    if (asked === undefined) return undefined;
    throw new UserError(
      'no_previous',
      `--previous must be a file that can be read, found ${asked} (${error.code})`,
    );
  });
  return bytes === undefined ? { lookedFor } : { lookedFor, given: { file: lookedFor, bytes } };
}
