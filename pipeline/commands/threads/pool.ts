import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import type { FileColumns } from '../../ingest/file-columns.ts';
import type { ReportBasis } from '../../report/report.ts';
import type { Language } from '../../site/report-settings.ts';
import type { ReadTask } from './thread.ts';

const FILE = fileURLToPath(new URL('./thread.mjs', import.meta.url));

/** Threads that read files. */
export interface ReadingThreads {
  read(task: ReadTask): Promise<FileColumns>;
  end(): Promise<void>;
}

/** Threads that draw pages, and load what they need for it at once. */
export interface DrawingThreads {
  /** Begins with the pages of units. What goes wrong is thrown where they are awaited. */
  begin(basis: ReportBasis, language: Language): Promise<string[]>;
  end(): Promise<void>;
}

/** How many threads work where the user does not say. */
export const threadsOfMachine = (): number => Math.min(availableParallelism(), 16);

export function readingThreads(count: number): ReadingThreads {
  const pool = open(count);
  return { read: (task) => pool.run(task, { name: 'readOne' }), end: () => pool.destroy() };
}

/** @param count threads beside the one of the program, at least 1 */
export function drawingThreads(count: number): DrawingThreads {
  const pool = open(count);
  for (let thread = 0; thread < count; thread++)
    pool.run(undefined, { name: 'prepareDrawing' }).catch(() => undefined);
  return {
    begin(basis, language) {
      const units = basis.review.units.map(({ unit }) => unit);
      // One share a thread: what the pages are made from is handed over once.
      const share = Math.max(1, Math.ceil(units.length / count));
      const shares: Promise<string[]>[] = [];
      for (let at = 0; at < units.length; at += share)
        shares.push(pool.run({ basis, units: units.slice(at, at + share), language }, { name: 'drawUnits' }));
      const pages = Promise.all(shares).then((shares) => shares.flat());
      pages.catch(() => undefined);
      return pages;
    },
    end: () => pool.destroy(),
  };
}

function open(count: number): Tinypool {
  return new Tinypool({
    filename: FILE,
    runtime: 'worker_threads',
    minThreads: count,
    maxThreads: count,
  });
}
