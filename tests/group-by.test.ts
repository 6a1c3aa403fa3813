import { expect, it } from 'vitest';
import { groupBy } from '../pipeline/group-by.ts';

it('keeps keys and rows in order of first appearance, whether a group comes in one piece or not', () => {
  const rows = ['a1', 'a2', 'b1', 'a3', '-1', '-2', 'b2'];
  const keyOf = (row: string) => (row[0] === '-' ? undefined : row[0]);
  const groups = groupBy(rows, keyOf);
  expect([...groups]).toEqual([
    ['a', ['a1', 'a2', 'a3']],
    ['b', ['b1', 'b2']],
    [undefined, ['-1', '-2']],
  ]);
  expect([...groupBy(['-1', 'a1', '-2'], keyOf)]).toEqual([
    [undefined, ['-1', '-2']],
    ['a', ['a1']],
  ]);
  expect(groupBy([Number.NaN, Number.NaN], (row) => row).get(Number.NaN)).toHaveLength(2);
});
