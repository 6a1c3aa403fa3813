import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { DayValue } from './day-values.ts';
import { PROBE_META, type Probe } from './probes.ts';
import { median } from './robust.ts';

/** A level that the probe should not reach, in its measure. */
export interface ProbeLimit {
  value: number;
  source: 'configured' | 'alarm_time' | 'failed_before';
  /** Records that it rests on. */
  seen: number;
}

/** The leak limit in force: that of the last leak test that states one, else the site's. */
export function configuredLimit(
  history: UnitHistory,
  probe: Probe,
  until: Day,
  siteLimit: number,
): ProbeLimit | null {
  if (probe !== 'leak_rate') return null;
  const stated = history.leak_tests.filter((test) => test.day < until && test.limit_kpa_min !== undefined);
  return { value: stated.at(-1)?.limit_kpa_min ?? siteLimit, source: 'configured', seen: stated.length };
}

const LEAST_ALARMS = 2;
const ALARM_SPREAD = 0.05;

/**
 * The time at which the control gives up, where its own aborts show it: at least two aborts of the probe's class with a recorded time, within 5 % of one another, since the
 * last change of the control; and no completed cycle of any kind took longer.
 */
export function alarmLimit(history: UnitHistory, probe: Probe, until: Day): ProbeLimit | null {
  const alarm = PROBE_META[probe].alarm_class;
  const field = FIELD[probe];
  if (alarm === null || field === undefined) return null;
  const control = history.eras.findLast((era) => era.from < until && era.opened_by === 'controller_replaced');
  const since = control?.from ?? Number.NEGATIVE_INFINITY;
  const times: number[] = [];
  let longest = 0;
  for (const cycle of history.cycles) {
    const time = cycle[field];
    if (time === undefined || cycle.day < since || cycle.day >= until) continue;
    if (cycle.standing === 'completed') longest = Math.max(longest, time);
    else if (cycle.abort_class === alarm) times.push(time);
  }
  if (times.length < LEAST_ALARMS) return null;
  const [low, high] = [Math.min(...times), Math.max(...times)];
  if (low <= 0 || high > low * (1 + ALARM_SPREAD) || longest > high) return null;
  return { value: low, source: 'alarm_time', seen: times.length };
}

const FIELD: Partial<Record<Probe, 'evacuation_s' | 'heat_up_s' | 'exhaust_s'>> = {
  evacuation_time: 'evacuation_s',
  heat_up_time: 'heat_up_s',
  exhaust_time: 'exhaust_s',
};

const LEAST_BEFORE = 10;
const OLDER_DAYS = 60;
const NEAR_DAYS = 7;
const NEAR_VALUES = 3;
const LEAST_MOVE = 3;

/**
 * How far a probe had moved when the unit failed, on the probe's scale relative to the level two months before: one number for each failure episode that it had moved
 * for by at least three noise standard deviations. Relative, since a repair that followed has opened another era with another level.
 *
 * @param values the adjusted series of the era in which the episodes lie, in order of day
 */
export function movesBeforeFailure(
  values: readonly DayValue[],
  episodes: readonly { from: Day }[],
  spread: number,
): number[] {
  const levels = Float64Array.from(values, ({ y }) => y);
  const upTo = (day: Day): number => firstFrom(values, (of) => of.day >= day);
  return episodes.flatMap(({ from }) => {
    const before = levels.subarray(0, upTo(from - OLDER_DAYS));
    const end = upTo(from + 1);
    const near = levels.subarray(Math.max(upTo(from - NEAR_DAYS), end - NEAR_VALUES), end);
    if (before.length < LEAST_BEFORE || near.length < NEAR_VALUES) return [];
    const move = median(near)! - median(before)!;
    return Math.abs(move) >= LEAST_MOVE * spread ? [move] : [];
  });
}
