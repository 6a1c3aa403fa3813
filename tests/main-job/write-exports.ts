import { mkdirSync, writeFileSync } from 'node:fs';
import type { Records } from '../../pipeline/site/records.ts';

/** Columns of each export, named as the fields of the records. */
const COLUMNS = {
  cycles: ['unit', 'start', 'end', 'kind', 'outcome', 'cycle_number', 'abort_text'],
  air_removal_tests: ['unit', 'time', 'result', 'cycle_number'],
  cleanings: ['unit', 'task', 'time', 'start', 'state', 'reason'],
  service: ['unit', 'kind', 'from', 'to'],
} as const;
const INSTANTS = new Set(['start', 'end', 'time', 'from', 'to']);

/** Writes records as exports, one file a kind. Their instants are written as wall times, whatever zone the site file then gives them. */
export function writeExports(folder: URL, records: Records, site: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(new URL('site.yaml', folder), site);
  for (const [kind, columns] of Object.entries(COLUMNS)) {
    const rows = records[kind as keyof typeof COLUMNS] as unknown as Record<string, unknown>[];
    if (rows.length === 0) continue;
    const lines = rows.map((row) => columns.map((column) => cell(row, column)).join(','));
    const text = [columns.join(','), ...lines].join('\n');
    writeFileSync(new URL(`${kind.replaceAll('_', '-')}.csv`, folder), `${text}\n`);
  }
}

function cell(row: Record<string, unknown>, column: string): string {
  const value = row[column];
  if (value === undefined) return '';
  if (!INSTANTS.has(column)) return String(value);
  const wall = new Date(value as number).toISOString().replace('T', ' ');
  return wall.slice(0, row.time_mark === 'day' ? 10 : 16);
}
