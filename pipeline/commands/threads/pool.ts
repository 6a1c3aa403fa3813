import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { ResourceLimits } from 'node:worker_threads';
import { Tinypool } from 'tinypool';
import { reviewOfUnits } from '../../findings/review-of-units.ts';
import { DUE, UNIT_DAY } from '../../findings/shares/carried-share.ts';
import type { FileColumns } from '../../ingest/file-columns.ts';
import type { ReadJob } from '../../ingest/read-jobs.ts';
import type { Receipt } from '../../ingest/receipts/receipt.ts';
import { packRows } from '../../packed-rows.ts';
import { unitsWithPage } from '../../report/parts/units-with-page.ts';
import type { ReportBasis } from '../../report/report.ts';
import type { SheetTable, WorkbookAbout } from '../../report/tables/workbook.ts';
import { rowsOfUnits } from '../../rows-of-units.ts';
import type { Language } from '../../site/report-settings.ts';
import type { SharedUnits } from '../site-by-site/share-of-units.ts';
import { inBatches } from './in-batches.ts';
import type { DrawTask, InputsTask, ReadManyTask, ReadTask, ShareTask, WorkbookTask } from './thread.ts';

/** Heap of a thread that draws, MB: it holds the review of a thousand units, and the days of those it draws. With more it would only clear up later. */
export const DRAWING_HEAP = 2048;

/** Pages that a thread is given at once: what they are made from is copied to it. */
const MOST_PAGES_AT_ONCE = 10;

/** Tasks of a thread that draws: the next ones wait with it, since the program may be too busy with its tables to hear that the last are done. */
const DRAWING_TASKS = 2;

const FILE = fileURLToPath(new URL('./thread.mjs', import.meta.url));

/** Threads that read files. */
export interface ReadingThreads {
  read(task: ReadTask): Promise<FileColumns>;
  /** Reads files into the history. */
  receiptReader(task: InputsTask): (job: ReadJob) => Promise<Receipt>;
  end(): Promise<void>;
}

/** Threads that make shares of what was read. */
export interface SharingThreads {
  share(task: ShareTask): Promise<SharedUnits>;
  end(): Promise<void>;
}

/** Takes the page of a unit, as UTF-8. */
export type OnPage = (unit: string, page: Uint8Array) => Promise<void>;

/** Pages of units that are being made. */
export interface PagesBegun {
  /** Units that are left for the program's own thread to draw; each is to be asked for when its turn comes. */
  units: Iterable<string>;
  /** Ends when all other pages are handed over. What goes wrong in a thread is thrown here. */
  done: Promise<void>;
}

/** Threads that make parts of the report, and load what they need for it at once. */
export interface ReportThreads {
  /** Begins with the pages of units, which are handed over when they are made. */
  begin(basis: ReportBasis, language: Language, onPage: OnPage): PagesBegun;
  /** Left out where the program's own thread has the time for it. */
  workbook?(about: WorkbookAbout, tables: readonly SheetTable[], language: Language): Promise<Uint8Array>;
  end(): Promise<void>;
}

/** How many threads work where the user does not say. */
export const threadsOfMachine = (): number => Math.min(availableParallelism(), 16);

export function readingThreads(count: number): ReadingThreads {
  const pool = open(count);
  return {
    read: (task) => pool.run(task, { name: 'readOne' }),
    receiptReader: (task) =>
      inBatches(count, (jobs) =>
        pool.run({ ...task, jobs } satisfies ReadManyTask, { name: 'readReceipts' }),
      ),
    end: () => pool.destroy(),
  };
}

/** @param heap of each, MB */
export function sharingThreads(count: number, heap: number): SharingThreads {
  const pool = open(count, { maxOldGenerationSizeMb: heap });
  return { share: (task) => pool.run(task, { name: 'makeShare' }), end: () => pool.destroy() };
}

/** @param count threads beside the one of the program, at least 1 */
export function reportThreads(count: number): ReportThreads {
  const pool = open(count, { maxOldGenerationSizeMb: DRAWING_HEAP }, DRAWING_TASKS);
  for (let thread = 0; thread < count; thread++)
    pool.run(undefined, { name: 'prepareDrawing' }).catch(() => undefined);
  return {
    begin(basis, language, onPage) {
      const units = unitsWithPage(basis.review, basis.pagesAsked).map(({ unit }) => unit);
      const tasks = count * DRAWING_TASKS;
      const share = Math.max(1, Math.min(MOST_PAGES_AT_ONCE, Math.ceil(units.length / tasks)));
      const task = drawTasks(basis, language);
      let at = 0;
      // A thread is given more units when it is done with some: what is asked of it and what it made would take room while it waits.
      const draw = async (): Promise<void> => {
        while (at < units.length) {
          const next = units.slice(at, at + share);
          at += share;
          await handOver(await pool.run(task(next), { name: 'drawUnits' }), onPage);
        }
      };
      const done = Promise.all(Array.from({ length: tasks }, draw)).then(() => undefined);
      done.catch(() => undefined);
      return { units: [], done };
    },
    workbook({ month, span, fingerprint }, tables, language) {
      const about = { month, span, fingerprint };
      return pool.run({ about, tables, language } satisfies WorkbookTask, { name: 'writeWorkbook' });
    },
    end: () => pool.destroy(),
  };
}

export async function handOver(pages: ReadonlyMap<string, Uint8Array>, onPage: OnPage): Promise<void> {
  for (const [unit, page] of pages) await onPage(unit, page);
}

/** The pages of units are made from their own days and what the review says of them and of all. */
export function drawTasks(basis: ReportBasis, language: Language): (units: readonly string[]) => DrawTask {
  const { review, panel, dueOf, ...rest } = basis;
  const daysOf = rowsOfUnits(panel);
  return (units) => ({
    basis: {
      ...rest,
      review: reviewOfUnits(review, units),
      panel: packRows(units.flatMap(daysOf), UNIT_DAY),
      due: packRows(units.flatMap(dueOf), DUE),
    },
    units,
    language,
  });
}

/** @param atOnce tasks that a thread is handed at once: the next one only when the program is free to hear that the last is done, or all that there may be */
export function open(count: number, resourceLimits: ResourceLimits = {}, atOnce = 1): Tinypool {
  return new Tinypool({
    filename: FILE,
    runtime: 'worker_threads',
    minThreads: count,
    maxThreads: count,
    concurrentTasksPerWorker: atOnce,
    resourceLimits,
  });
}
