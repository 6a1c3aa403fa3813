import type { RecurrentCell } from '../../statistics/recurrent/recurrent-cells.ts';
import type { Spell, SpellDay } from './spells.ts';

export const CLOCKS = ['calendar_days', 'days_of_use', 'cycles'] as const;
export type Clock = (typeof CLOCKS)[number];
export const CLOCK_OUTCOMES = ['failed_test', 'cleanliness_abort'] as const;
export type ClockOutcome = (typeof CLOCK_OUTCOMES)[number];

/**
 * Cells of spells for the power-law intensity. A day at clock k covers the clock from k to k + 1 (with cycles: to k plus those of the day). Failed tests: one chance a
 * day at risk. Aborts: as many chances as production cycles on the day. Days alike are taken together.
 */
export function cellsOf(spells: readonly Spell[], clock: Clock, outcome: ClockOutcome): RecurrentCell[] {
  const cells = new Map<string, RecurrentCell>();
  for (const { days } of spells) {
    for (const day of days) {
      const { weight, events } = chancesOf(day, clock, outcome);
      if (weight === 0) continue;
      const entry = day[clock];
      const exit = entry + (clock === 'cycles' ? Math.max(1, day.cycles_of_day) : 1);
      const key = `${entry} ${exit}`;
      const cell = cells.get(key);
      if (cell) {
        cell.weight += weight;
        cell.events += events;
      } else cells.set(key, { entry, exit, weight, events });
    }
  }
  return [...cells.values()];
}

function chancesOf(day: SpellDay, clock: Clock, outcome: ClockOutcome): { weight: number; events: number } {
  if (outcome === 'failed_test') return { weight: 1, events: Number(day.failed) };
  const weight = clock === 'cycles' ? day.production / Math.max(1, day.cycles_of_day) : day.production;
  return { weight, events: day.aborts };
}
