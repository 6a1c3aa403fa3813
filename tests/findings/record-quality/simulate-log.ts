import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Cleaning, Cycle, Records } from '../../../pipeline/site/records.ts';

const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
/** 2025-01-06 in UTC; in Berlin the day opens at 06:00 or, in summer, an hour later. */
const FIRST = Date.UTC(2025, 0, 6, 5);

export interface LogPlan {
  seed: number;
  /** Days on which each unit is used and its strainer cleaned. */
  days: number;
  units?: number;
  /** Share of the records that stand within a cycle although the clock is right. */
  contradicted?: number;
  /** How far the clock of the log runs ahead, minutes, by day. */
  ahead?: (day: number) => number;
  /** The strainer is cleaned minutes before the first cycle (as a rule), or after the last one. */
  when?: 'before' | 'after';
  /** The time written is that of typing: any minute of the day shift, or one minute at its end for all units. */
  typed?: 'over_the_day' | 'in_a_batch';
}

/**
 * Cycles and strainer records of invented units: warm-up between 05:00 and 05:25 UTC, then nine cycles of 25 to 60 minutes with pauses of 4 to 40; the strainer is done 3 to
 * 25 minutes before the first cycle, or after the last.
 */
export function simulateLog(plan: LogPlan): Pick<Records, 'cycles' | 'cleanings'> {
  const generator = xoroshiro128plus(plan.seed);
  const int = (from: number, to: number) => uniformInt(generator, from, to);
  const cycles: Cycle[] = [];
  const cleanings: Cleaning[] = [];
  const mark = {
    time_mark: 'time' as const,
    origin: { source: 'log', file: 'log.csv', sheet: null, row: 1 },
  };
  for (let day = 0; day < plan.days; day++)
    for (let at = 1; at <= (plan.units ?? 1); at++) {
      const unit = `S${at}`;
      const own: { start: number; end: number }[] = [];
      let start = FIRST + day * DAY + int(0, 25) * MINUTE;
      for (let index = 0; index < 10; index++) {
        const end = start + (index < 2 ? 25 : int(45, 60)) * MINUTE;
        own.push({ start, end });
        start = end + int(4, 40) * MINUTE;
      }
      cycles.push(
        ...own.map(({ start, end }, index) => ({
          unit,
          start,
          end,
          kind: index === 0 ? ('warm_up' as const) : ('production' as const),
          outcome: 'completed' as const,
          ...mark,
        })),
      );
      const running = own[int(0, 9)]!;
      const inCycle = running.start + int(5, 20) * MINUTE;
      const done =
        plan.when === 'after' ? own.at(-1)!.end + int(3, 25) * MINUTE : own[0]!.start - int(3, 25) * MINUTE;
      const typed =
        plan.typed === 'in_a_batch'
          ? FIRST + day * DAY + 480 * MINUTE
          : own[0]!.start + int(10, 480) * MINUTE;
      const right = int(1, 1000) <= 1000 * (plan.contradicted ?? 0) ? inCycle : done;
      cleanings.push({
        unit,
        task: 'drain_strainer',
        time: (plan.typed ? typed : right) + (plan.ahead?.(day) ?? 0) * MINUTE,
        ...mark,
      });
    }
  return { cycles, cleanings };
}
