import { describe, expect, it } from 'vitest';
import type { FileColumns } from '../../../pipeline/ingest/file-columns.ts';
import { columnsByUnit } from '../../../pipeline/ingest/receipts/columns-by-unit.ts';

const choice = { starts: [1, 2], ends: [3] };
const file = {
  kind: 'cycles',
  count: 5,
  rows: Float64Array.of(2, 3, 5, 8, 9),
  columns: [
    ['unit', { type: 'words', codes: Int32Array.of(0, 1, 0, 2, 1), words: ['A', 'B', 'C'] }],
    ['start', { type: 'number', values: Float64Array.of(10, 20, 30, Number.NaN, 50) }],
    ['note', { type: 'words', codes: Int32Array.of(-1, 0, 0, -1, -1), words: ['wet'] }],
    ['major', { type: 'yes_no', values: Int8Array.of(1, 0, -1, 1, 1) }],
  ],
  choices: [
    [1, choice],
    [2, choice],
  ],
} as unknown as FileColumns;

describe('columns of a file cut to units', () => {
  const cut = columnsByUnit(file, ['B', 'A', 'none']);

  it('are those of the wanted units, rows in their order', () => {
    expect([...cut.keys()]).toEqual(['B', 'A']);
    const b = cut.get('B')!;
    expect([b.count, [...b.rows]]).toEqual([2, [3, 9]]);
    expect(Object.fromEntries(b.columns)).toEqual({
      unit: { type: 'words', codes: Int32Array.of(1, 1), words: ['A', 'B', 'C'] },
      start: { type: 'number', values: Float64Array.of(20, 50) },
      note: { type: 'words', codes: Int32Array.of(0, -1), words: ['wet'] },
      major: { type: 'yes_no', values: Int8Array.of(0, 1) },
    });
  });

  it('keep the readings of times that occur twice with their rows', () => {
    expect(cut.get('B')!.choices).toEqual([[0, choice]]);
    expect(cut.get('A')!.choices).toEqual([[1, choice]]);
  });

  it('of a file of one unit are the file', () => {
    const one = { ...file, columns: [['unit', { type: 'words', codes: new Int32Array(5), words: ['A'] }]] };
    expect(columnsByUnit(one as unknown as FileColumns, ['A']).get('A')).toBe(one);
  });
});
