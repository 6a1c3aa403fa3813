import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Review } from '../review-schema.ts';
import { eventRate, proportion } from './rate.ts';

/** First days of the classes of the clock, calendar days; the last class is open. */
export const CLOCK_CLASSES = [0, 7, 14, 21, 28, 35, 42] as const;

/** Failures and aborts of days at risk by calendar days since the last counted chamber cleaning. Days before the first cleaning are left out. */
export function byClock(rows: readonly UnitDay[], scope: string, level: number): Review['by_clock'] {
  const atRisk = rows.filter((row) => row.at_risk === 1 && row.chamber_clock_days !== null);
  if (atRisk.length === 0) return [];
  return CLOCK_CLASSES.map((from_day, index) => {
    const next = CLOCK_CLASSES[index + 1];
    const days = atRisk.filter(
      (row) => row.chamber_clock_days! >= from_day && (next === undefined || row.chamber_clock_days! < next),
    );
    const failed = days.filter((row) => row.failed === 1).length;
    const aborts = days.reduce((sum, row) => sum + row.cleanliness_aborts, 0);
    const cycles = days.reduce((sum, row) => sum + row.production_cycles, 0);
    return {
      scope,
      from_day,
      to_day: next === undefined ? null : next - 1,
      failed_days: proportion(failed, days.length, level),
      aborts: eventRate(aborts, cycles, level),
    };
  });
}
