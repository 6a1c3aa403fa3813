import { groupBy } from '../../group-by.ts';
import {
  countProblems,
  type FileRead,
  PROBLEM_CODES,
  type Problem,
  type Reading,
  tableName,
} from '../../ingest/reading.ts';

/** A source, or a file of one, of which no row became a record. */
export interface NothingRead {
  source: string;
  /** The file or files, sheets by name. */
  files: string[];
  rows: number;
  rejected: number;
  /** What was wrong with most of it. */
  code: Problem['code'];
  meaning: string;
  /** The first value that was found in its place. */
  value: string | null;
}

/** What keeps a whole file from being read; a file that is empty, or has a header alone, is none of it. */
const COST_OF_A_FILE: ReadonlySet<Problem['code']> = new Set([
  'unreadable_file',
  'header_not_found',
  'repeated_header',
  'sheet_not_found',
]);

/**
 * The files that hold rows and gave no record, in the order in which they were read; all files of a source as one. A file whose rows are duplicates of others, or are skipped
 * as the site file says, was read. One that could not be read at all counts where its source gave nothing else: a workbook may have a sheet of another kind.
 * What a damaged archive held belongs to no source.
 */
export function nothingRead({ files, problems }: Pick<Reading, 'files' | 'problems'>): NothingRead[] {
  const problemsOf = groupBy(problems, ({ source }) => source);
  return [...groupBy(files, ({ source }) => source)].flatMap(([source, own]): NothingRead[] => {
    const found = problemsOf.get(source) ?? [];
    const lost = own.filter(isLost);
    const unread = found.filter(isOfAFile);
    if (own.every((file) => isLost(file) || !wasRead(file)) && lost.length + unread.length > 0)
      return [describe(source, lost, found, unread)];
    if (lost.length === 0) return [];
    const ofFiles = groupBy(found, tableName);
    return lost.map((file) => describe(source, [file], ofFiles.get(tableName(file)) ?? [], []));
  });
}

const isOfAFile = ({ code, costs }: Problem): boolean => costs === 'file' && COST_OF_A_FILE.has(code);
const wasRead = ({ records, duplicates, skipped }: FileRead): boolean => records + duplicates + skipped > 0;
const isLost = ({ records, duplicates, rejected }: FileRead): boolean =>
  records + duplicates === 0 && rejected > 0;

function describe(
  source: string,
  lost: readonly FileRead[],
  problems: readonly Problem[],
  unread: readonly Problem[],
): NothingRead {
  const costly = lost.length > 0 ? problems.filter(({ costs }) => costs === 'row') : unread;
  const byCode = [...groupBy(costly, ({ code }) => code)];
  const [code, most] = byCode.toSorted((a, b) => countProblems(b[1]) - countProblems(a[1]))[0]!;
  return {
    source,
    files: [...new Set([...lost, ...unread].map(tableName))],
    rows: lost.reduce((sum, { rows }) => sum + rows, 0),
    rejected: lost.reduce((sum, { rejected }) => sum + rejected, 0),
    code,
    meaning: PROBLEM_CODES[code],
    value: most[0]!.value,
  };
}

/** One line for a person. */
export function nothingReadLine({ source, files, rows, rejected, meaning, value }: NothingRead): string {
  const what = files.length === 1 ? files[0] : `${source} (${files.length} files)`;
  const of = rows === 0 ? '' : ` (${rejected} of ${rows} rows)`;
  const cause = `${meaning[0]!.toLowerCase()}${meaning.slice(1)}`;
  return `Nothing of ${what} was read${of}: ${cause}${value === null ? '' : `, found "${value}"`}`;
}
