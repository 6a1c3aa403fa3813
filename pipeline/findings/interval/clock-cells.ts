import type { RecurrentCell } from '../../statistics/recurrent/recurrent-cells.ts';
import type { Clock, ClockOutcome } from './clocks.ts';
import type { DayColumns, SpellDays } from './spell-days.ts';

/** More than the cycles of a day. */
const LONGEST = 2 ** 16;

/**
 * Cells of days at risk for the power-law intensity. A day at clock k covers the clock from k to k + 1 (with cycles: to k plus those of the day). Failed tests: one chance a
 * day at risk. Aborts: as many chances as production cycles on the day. Days alike are taken together.
 */
export function cellsOf(days: readonly SpellDays[], clock: Clock, outcome: ClockOutcome): RecurrentCell[] {
  const cells = new Map<number, RecurrentCell>();
  for (const { columns, from, to } of days) {
    for (let at = from; at < to; at++) {
      const { weight, events } = chancesOf(columns, at, clock, outcome);
      if (weight === 0) continue;
      const entry = columns[clock][at]!;
      const length = lengthOn(clock, columns, at);
      const key = entry * LONGEST + length;
      const cell = cells.get(key);
      if (cell) {
        cell.weight += weight;
        cell.events += events;
      } else cells.set(key, { entry, exit: entry + length, weight, events });
    }
  }
  return [...cells.values()];
}

/** How far a day takes the clock. */
export const lengthOn = (clock: Clock, { cycles_of_day }: DayColumns, at: number): number =>
  clock === 'cycles' ? Math.max(1, cycles_of_day[at]!) : 1;

function chancesOf(
  columns: DayColumns,
  at: number,
  clock: Clock,
  outcome: ClockOutcome,
): { weight: number; events: number } {
  if (outcome === 'failed_test') return { weight: 1, events: columns.failed[at]! };
  return { weight: columns.production[at]! / lengthOn(clock, columns, at), events: columns.aborts[at]! };
}
