/**
 * Index of the first of sorted rows from which on a test holds, by halving; the number of rows where it never does.
 *
 * @param rows in an order in which the test fails for the first ones and holds for all others
 * @param low index from which on is looked
 */
export function firstFrom<Row>(rows: ArrayLike<Row>, holds: (row: Row) => boolean, low = 0): number {
  let from = low;
  let high = rows.length;
  while (from < high) {
    const middle = (from + high) >> 1;
    if (holds(rows[middle]!)) high = middle;
    else from = middle + 1;
  }
  return from;
}
