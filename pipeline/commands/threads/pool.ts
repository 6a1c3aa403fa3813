import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import type { FileColumns } from '../../ingest/file-columns.ts';
import type { Elsewhere } from '../../report/report.ts';
import type { DrawTask, ReadTask } from './thread.ts';

const FILE = fileURLToPath(new URL('./thread.mjs', import.meta.url));

/** Threads that read files. */
export interface ReadingThreads {
  read(task: ReadTask): Promise<FileColumns>;
  end(): Promise<void>;
}

/** Threads that draw pages, and load what they need for it at once. */
export interface DrawingThreads {
  elsewhere(language: string): Elsewhere;
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
  const draw = (task: DrawTask): Promise<string[]> => pool.run(task, { name: 'drawUnits' });
  return {
    elsewhere: (language) => ({
      async unitPages(input) {
        const units = input.review.units.map(({ unit }) => unit);
        // Small shares, so that threads end at about the same time.
        const share = Math.max(1, Math.ceil(units.length / (2 * count)));
        const pages: Promise<string[]>[] = [];
        for (let at = 0; at < units.length; at += share)
          pages.push(draw({ input, units: units.slice(at, at + share), language }));
        return (await Promise.all(pages)).flat();
      },
      workbook: (input) => pool.run({ input, language }, { name: 'drawWorkbook' }),
    }),
    end: () => pool.destroy(),
  };
}

function open(count: number): Tinypool {
  return new Tinypool({ filename: FILE, runtime: 'worker_threads', minThreads: count, maxThreads: count });
}
