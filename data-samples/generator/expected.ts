import type { Table } from './table.ts';

/** What reading a source should count, all its files together. rows = records + duplicates + rejected + skipped. */
export interface ExpectedCounts {
  files: number;
  rows: number;
  records: number;
  duplicates: number;
  rejected: number;
  skipped: number;
  cells_lost: number;
}

export function expectedCounts(tables: readonly Table[]): Record<string, ExpectedCounts> {
  const counts: Record<string, ExpectedCounts> = {};
  const keys = new Map<string, Set<string>>();
  for (const { source, rows } of tables) {
    counts[source] ??= {
      files: 0,
      rows: 0,
      records: 0,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      cells_lost: 0,
    };
    const count = counts[source];
    const seen = keys.get(source) ?? new Set();
    keys.set(source, seen);
    count.files++;
    for (const { fate, key } of rows) {
      if (fate === 'blank') continue;
      count.rows++;
      if (fate === 'rejected' || fate === 'skipped') count[fate]++;
      else if (seen.has(key)) count.duplicates++;
      else {
        seen.add(key);
        count.records++;
        if (fate === 'cell') count.cells_lost++;
      }
    }
  }
  return counts;
}
