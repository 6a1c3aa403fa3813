import { nameUnpacked } from '../ingest/archives.ts';
import { filePattern } from '../ingest/file-pattern.ts';
import type { FoundTable } from './find-table.ts';
import { signatureOf } from './profile-column.ts';

/** Tables of one make: read by one source. */
export interface TableGroup {
  tables: readonly FoundTable[];
  files: readonly string[];
}

/** Groups tables that are written alike: the same headers, delimiter, encoding and shape. */
export function groupTables(tables: readonly FoundTable[]): TableGroup[] {
  const groups = new Map<string, FoundTable[]>();
  for (const table of tables) {
    const key = makeOf(table);
    // A file of ASCII letters alone is written as each of the encodings is.
    const like = table.sample.ascii
      ? [...groups.keys()].find((other) => other.startsWith(`${key}\u0001`))
      : undefined;
    const full = like ?? `${key}\u0001${table.sample.ascii ? '' : table.sample.encoding?.value}`;
    const plain = `${key}\u0001`;
    if (!table.sample.ascii && groups.has(plain)) {
      groups.set(full, [...groups.get(plain)!, ...(groups.get(full) ?? [])]);
      groups.delete(plain);
    }
    groups.set(full, [...(groups.get(full) ?? []), table]);
  }
  return [...groups.values()].map((list) => ({
    tables: list,
    files: [...new Set(list.map(({ sample }) => sample.file))],
  }));
}

function makeOf({ headers, dayColumns, delimiter, headerRows, sample, comment }: FoundTable): string {
  const days = new Set(dayColumns);
  const fixed = headers.filter((_, at) => !days.has(at));
  return [
    signatureOf(fixed),
    days.size > 0,
    delimiter?.value ?? 'workbook',
    headerRows,
    comment ?? '',
    sample.sheet === null,
  ].join('\u0002');
}

/**
 * The pattern of a group's files: one with a * at the part in which they differ, where it means these files and no others; else the files themselves.
 *
 * @param all all files that were found
 */
export function patternsOf(
  files: readonly string[],
  all: readonly string[],
): { patterns: string[]; star: string | undefined } {
  const names = files.map(nameUnpacked);
  if (files.length === 1) return { patterns: [names[0]!], star: undefined };
  let before = commonStart(names);
  let after = commonStart(names.map((name) => [...name.slice(before.length)].reverse().join('')));
  after = [...after].reverse().join('');
  // Digits and letters of the part that differs belong together: "S1" and "S2", not "1" and "2".
  before = before.replace(/[\p{L}\p{N}]*$/u, (tail) =>
    /[-_. /]/.test(before) || tail.length < before.length ? '' : tail,
  );
  after = after.replace(/^[\p{L}\p{N}]*/u, '');
  const pattern = `${before}*${after}`;
  const test = filePattern(pattern);
  const meant = all.filter((file) => test(file) || test(nameUnpacked(file)));
  const same = meant.length === files.length && !before.includes('*');
  return same ? { patterns: [pattern], star: pattern } : { patterns: [...names], star: undefined };
}

function commonStart(texts: readonly string[]): string {
  const [first = ''] = texts;
  let length = first.length;
  for (const text of texts) {
    let at = 0;
    while (at < length && at < text.length && text[at] === first[at]) at++;
    length = at;
  }
  return first.slice(0, length);
}
