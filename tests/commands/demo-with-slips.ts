import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const DEMO = fileURLToPath(new URL('../../data-samples', import.meta.url));
const CYCLES = 'exports/quillhaven/cycle-log-2026-q2.csv';
const AGAIN = 'exports/quillhaven/cycle-log-2026-q2b.csv';
const TESTS = 'exports/quillhaven/air-removal-2026-04.csv';

/** Years typed for 2026: of the cycle of Q3 that began at 00:03 on 10 May, and of the first test of the file of April. */
export interface Slips {
  cycle?: string;
  test?: string;
}

/** Copies the demo into a folder, with years mistyped in one row of a file of cycles and in one of a file of tests. The file of cycles is exported twice, so that its rows are told twice. */
export function demoWithSlips(folder: string, { cycle, test }: Slips): void {
  cpSync(DEMO, folder, { recursive: true });
  if (cycle) change(join(folder, CYCLES), /2026(-05-10 00:03:09,)2026/, `${cycle}$1${cycle}`);
  cpSync(join(folder, CYCLES), join(folder, AGAIN));
  if (test) change(join(folder, TESTS), /2026/, test);
}

/** @throws Error where the file does not hold what is to be changed */
function change(file: string, what: RegExp, into: string): void {
  const text = readFileSync(file, 'utf8');
  const changed = text.replace(what, into);
  if (changed === text) throw new Error(`${file} does not hold ${what}`);
  writeFileSync(file, changed);
}
