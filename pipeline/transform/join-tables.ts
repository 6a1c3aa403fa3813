import type { ColumnTable } from 'arquero';
import * as aq from 'arquero';
import type { JoinCount, Relationship } from './join-count.ts';

/** What a join expects of its two sides. */
export interface JoinExpectation {
  /** Name of the join, for counts and messages. */
  name: string;
  /** Column by which rows match, of numbers. */
  key: string;
  /** What a key means, for messages. */
  describe: (key: number) => string;
  relationship: Relationship;
  /** What a row of the left side without a match means. */
  unmatchedLeft: 'keep' | 'error';
  /** What a row of the right side without a match means. */
  unmatchedRight: 'drop' | 'error';
}

/**
 * Left join that states what it expects, since Arquero multiplies rows where keys repeat and says nothing of rows that find no match.
 *
 * @throws Error (a bug or a broken promise of an earlier step) with the first offending row where an expectation does not hold
 */
export function joinTables(
  left: ColumnTable,
  right: ColumnTable,
  expect: JoinExpectation,
): { table: ColumnTable; count: JoinCount } {
  const [leftKeys, rightKeys] = [keysOf(left, expect), keysOf(right, expect)];
  const ofRight = uniqueKeys(rightKeys, expect, 'right');
  const ofLeft =
    expect.relationship === 'one-to-one' ? uniqueKeys(leftKeys, expect, 'left') : new Set(leftKeys);
  const lost = leftKeys.filter((key) => !ofRight.has(key));
  const unused = rightKeys.filter((key) => !ofLeft.has(key));
  if (expect.unmatchedLeft === 'error') assertNone(lost, expect, 'left');
  if (expect.unmatchedRight === 'error') assertNone(unused, expect, 'right');
  const table = left.join_left(right, [[expect.key], [expect.key]]);
  const count = {
    name: expect.name,
    relationship: expect.relationship,
    left: leftKeys.length,
    right: rightKeys.length,
    matched: leftKeys.length - lost.length,
    unmatched_left: lost.length,
    unmatched_right: unused.length,
  };
  return { table, count };
}

const keysOf = (table: ColumnTable, { key }: JoinExpectation): number[] =>
  Array.from(table.array(key) as Iterable<number>);

function uniqueKeys(keys: readonly number[], expect: JoinExpectation, side: string): Set<number> {
  const unique = new Set<number>();
  for (const key of keys) {
    if (unique.has(key)) throw joinError(expect, `the ${side} side repeats a key`, key);
    unique.add(key);
  }
  return unique;
}

function assertNone([first]: readonly number[], expect: JoinExpectation, side: string): void {
  if (first !== undefined) throw joinError(expect, `a row of the ${side} side finds no match`, first);
}

const joinError = (expect: JoinExpectation, what: string, key: number): Error =>
  new Error(
    `join "${expect.name}" (${expect.relationship} on ${expect.key}): ${what}: ${expect.describe(key)}`,
  );

/** A table with the given columns even where there is no row to take them from. */
export function tableOf(rows: readonly object[], columns: readonly string[]): ColumnTable {
  return aq.from(rows as object[], columns as string[]);
}
