import type { ColumnTable } from 'arquero';
import * as aq from 'arquero';
import type { JoinCount, Relationship } from './join-count.ts';

/** What a join expects of its two sides. */
export interface JoinExpectation {
  /** Name of the join, for counts and messages. */
  name: string;
  keys: string[];
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
  assertUnique(right, expect, 'right');
  if (expect.relationship === 'one-to-one') assertUnique(left, expect, 'left');
  const on: [string[], string[]] = [expect.keys, expect.keys];
  const lost = left.antijoin(right, on);
  const unused = right.antijoin(left, on);
  if (expect.unmatchedLeft === 'error') assertNone(lost, expect, 'left');
  if (expect.unmatchedRight === 'error') assertNone(unused, expect, 'right');
  const table = left.join_left(right, on);
  const count = {
    name: expect.name,
    relationship: expect.relationship,
    left: left.numRows(),
    right: right.numRows(),
    matched: left.numRows() - lost.numRows(),
    unmatched_left: lost.numRows(),
    unmatched_right: unused.numRows(),
  };
  return { table, count };
}

function assertUnique(table: ColumnTable, expect: JoinExpectation, side: string): void {
  const repeated = table
    .groupby(expect.keys)
    .rollup({ rows_of_key: aq.op.count() })
    .filter(aq.escape((row: { rows_of_key: number }) => row.rows_of_key > 1));
  if (repeated.numRows() > 0) throw joinError(expect, `the ${side} side repeats a key`, repeated);
}

function assertNone(table: ColumnTable, expect: JoinExpectation, side: string): void {
  if (table.numRows() > 0) throw joinError(expect, `a row of the ${side} side finds no match`, table);
}

function joinError(expect: JoinExpectation, what: string, table: ColumnTable): Error {
  const row = table.object(0) as Record<string, unknown>;
  const key = expect.keys.map((name) => `${name} ${String(row[name])}`).join(', ');
  return new Error(
    `join "${expect.name}" (${expect.relationship} on ${expect.keys.join(', ')}): ${what}: ${key}`,
  );
}

/** A table with the given columns even where there is no row to take them from. */
export function tableOf(rows: readonly object[], columns: readonly string[]): ColumnTable {
  return aq.from(rows as object[], columns as string[]);
}
