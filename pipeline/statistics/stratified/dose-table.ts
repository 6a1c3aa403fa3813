/**
 * Events out of trials in groups that stand in an order, with a score for each group. Arrays of one length.
 */
export interface DoseTable {
  events: readonly number[];
  totals: readonly number[];
  scores: readonly number[];
}

/**
 * @throws RangeError where lengths differ, counts are not whole or negative, events exceed trials, or a score
 * is not finite
 */
export function checkDoseTable(table: DoseTable, caller: string): void {
  const { events, totals, scores } = table;
  if (events.length !== totals.length || events.length !== scores.length) {
    throw new RangeError(
      `${caller}: events, totals and scores must have one length, found ${events.length}, ${totals.length}, ${scores.length}`,
    );
  }
  for (const [i, total] of totals.entries()) {
    const valid =
      Number.isSafeInteger(total) &&
      Number.isSafeInteger(events[i]) &&
      events[i]! >= 0 &&
      events[i]! <= total;
    if (!valid)
      throw new RangeError(`${caller}: group ${i} can't have ${events[i]} events in ${total} trials`);
    if (!Number.isFinite(scores[i]))
      throw new RangeError(`${caller}: score ${i} must be finite, found ${scores[i]}`);
  }
}

/**
 * Sum of score times events in excess of its expectation given the margins, with its exact (permutation)
 * variance, which has N - 1. Scores are centred first, so that large scores lose no digits. Variance 0 where
 * the table says nothing.
 */
export function doseMoments(table: DoseTable): { excess: number; variance: number; total: number } {
  const total = sum(table.totals);
  const events = sum(table.events);
  if (total < 2 || events === 0 || events === total) return { excess: 0, variance: 0, total };
  const centre = sum(table.totals.map((n, i) => n * table.scores[i]!)) / total;
  const centred = table.scores.map((score) => score - centre);
  const squares = sum(table.totals.map((n, i) => n * centred[i]! ** 2));
  const excess = sum(table.events.map((e, i) => (e - (table.totals[i]! * events) / total) * centred[i]!));
  const used = table.scores.filter((_, i) => table.totals[i]! > 0);
  const varies = used.some((score) => score !== used[0]);
  const variance = varies ? ((events / total) * (total - events) * squares) / (total - 1) : 0;
  return { excess, variance, total };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
