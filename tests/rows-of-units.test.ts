import { describe, expect, it } from 'vitest';
import { rowsOfUnits } from '../pipeline/rows-of-units.ts';

const row = (unit: string, day: number) => ({ unit, day });

describe('rows of units', () => {
  it('are those of each unit in their order, the rows themselves', () => {
    const rows = [row('A', 1), row('A', 2), row('B', 1), row('C', 5), row('C', 3)];
    const of = rowsOfUnits(rows);
    expect(of('A')).toEqual([row('A', 1), row('A', 2)]);
    expect(of('B')[0]).toBe(rows[2]);
    expect(of('C').map(({ day }) => day)).toEqual([5, 3]);
  });

  it('are none for a unit without rows, and in a list without rows', () => {
    expect(rowsOfUnits([row('A', 1)])('B')).toEqual([]);
    expect(rowsOfUnits([])('A')).toEqual([]);
  });

  it('are refused where those of a unit stand in two places', () => {
    expect(() => rowsOfUnits([row('A', 1), row('B', 1), row('A', 2)])).toThrow(
      'rows of A must stand together, found more at 2',
    );
  });
});
