import { readFileSync } from 'node:fs';

/** Rows of a table in this folder; the script of the same theme beside it made them with R 4.2.2. */
export function readReference<T>(name: string): T[] {
  return JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as T[];
}
