import type { Clock, ClockOutcome } from './clocks.ts';

/** Days at risk of a unit, each clock as it stood before the day's first cycle: columns, 19 bytes a day, since a network has five million. */
export interface DayColumns extends Record<Clock, Int32Array> {
  /** Cycles of the day that count for the clock. */
  cycles_of_day: Uint16Array;
  failed: Uint8Array;
  production: Uint16Array;
  aborts: Uint16Array;
}

/** Days of one spell, in order: places `from` to `to` (left out) of the columns. No clock falls from one to the next. */
export interface SpellDays {
  columns: DayColumns;
  from: number;
  to: number;
}

/** Columns for so many days. */
export const dayColumns = (days: number): DayColumns => ({
  calendar_days: new Int32Array(days),
  days_of_use: new Int32Array(days),
  cycles: new Int32Array(days),
  cycles_of_day: new Uint16Array(days),
  failed: new Uint8Array(days),
  production: new Uint16Array(days),
  aborts: new Uint16Array(days),
});

/** Days of all. */
export const lengthOf = (days: readonly SpellDays[]): number =>
  days.reduce((sum, { from, to }) => sum + to - from, 0);

/** Events and chances of days at risk: failures of days, or aborts of production cycles. */
export function countOf(
  days: readonly SpellDays[],
  outcome: ClockOutcome,
): { events: number; chances: number } {
  if (outcome === 'failed_test') return { events: sumOf(days, 'failed'), chances: lengthOf(days) };
  return { events: sumOf(days, 'aborts'), chances: sumOf(days, 'production') };
}

function sumOf(days: readonly SpellDays[], of: 'failed' | 'aborts' | 'production'): number {
  let sum = 0;
  for (const { columns, from, to } of days)
    for (let at = from, values = columns[of]; at < to; at++) sum += values[at]!;
  return sum;
}

/** Clocks of days, sorted. */
export function sortedClocks(days: readonly SpellDays[], clock: Clock): Int32Array {
  const clocks = new Int32Array(lengthOf(days));
  let next = 0;
  for (const { columns, from, to } of days) {
    clocks.set(columns[clock].subarray(from, to), next);
    next += to - from;
  }
  return clocks.sort();
}
