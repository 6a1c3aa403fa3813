import { groupBy } from '../../group-by.ts';
import { countProblems, type FileRead, PROBLEM_CODES, type Reading } from '../../ingest/reading.ts';
import type { Review } from '../review-schema.ts';

/** Sums of a reading over its files. */
export function readingTotals(reading: Pick<Reading, 'files'>): Review['totals'] {
  const sum = (field: 'rows' | 'records' | 'duplicates' | 'rejected' | 'skipped' | 'cells_lost') =>
    reading.files.reduce((total, file) => total + file[field], 0);
  return {
    files: new Set(reading.files.map((file) => file.file)).size,
    rows: sum('rows'),
    records: sum('records'),
    duplicates: sum('duplicates'),
    rejected: sum('rejected'),
    skipped: sum('skipped'),
    cells_lost: sum('cells_lost'),
  };
}

/** Most files that are listed one by one: a network's exports would fill a page, or a screen, with them. */
const MOST_FILES = 500;

/** The files to list: all; of very many, those first of which rows or cells were lost. */
export function listedFiles(files: readonly FileRead[]): readonly FileRead[] {
  if (files.length <= MOST_FILES) return files;
  const loses = (file: FileRead): boolean => file.rejected > 0 || file.cells_lost > 0 || file.rows === 0;
  return [...files.filter(loses), ...files.filter((file) => !loses(file))].slice(0, MOST_FILES);
}

/** Problems by source and code, with up to three examples each. */
export function problemsByCode(reading: Pick<Reading, 'problems'>): Review['problems_by_code'] {
  const groups = groupBy(
    reading.problems,
    (problem) => `${problem.source}\u0000${problem.code}\u0000${problem.costs}`,
  );
  return [...groups.values()].map((problems) => {
    const { source, code, costs } = problems[0]!;
    return {
      source,
      code,
      costs,
      meaning: PROBLEM_CODES[code],
      count: countProblems(problems),
      examples: problems.slice(0, 3),
    };
  });
}
