import { firstFrom } from '../../first-from.ts';
import type { Cleaning, Cycle } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { WallClock } from '../../site/wall-clock.ts';

const HOUR = 3_600_000;
/** Work after which rinse water stands in the chamber or the drain. */
const WET_WORK = new Set(['chamber', 'drain_flush', 'professional']);

/**
 * Whether a cycle looks like one that was started only to open the drain: stopped by the operator with no alarm, short, before exposure.
 * A cycle without an end can't be called short.
 *
 * @param operatorStop whether the abort's text says that the operator stopped it, with no alarm
 */
export function looksLikePurge(cycle: Cycle, operatorStop: boolean, rule: Rules['purge']): boolean {
  if (cycle.outcome !== 'aborted' || cycle.end === undefined) return false;
  const short = cycle.end - cycle.start < rule.under_minutes * 60_000;
  const beforeExposure = !cycle.exposure_s && cycle.exposure_temperature_min_c === undefined;
  return short && (!rule.before_exposure || beforeExposure) && (!rule.stopped_by_operator || operatorStop);
}

/**
 * Spans in which such a cycle is a drain purge: from the work's start (its stated time where no start is given) to some hours after it, and
 * on to the next warm-up, for as long as that operating day lasts: a unit that was cleaned stands cold until it is warmed up. Any cycle that ran to its end is taken for one,
 * since it heated the chamber, and not every log tells warm-ups apart. The span of a record with a date only is that operating day.
 *
 * @param cycles the unit's cycles in order of time
 * @returns spans in order of time; they may overlap
 */
export function purgeSpans(
  cleanings: readonly Cleaning[],
  cycles: readonly Cycle[],
  rule: Rules['purge'],
  clock: Pick<WallClock, 'operatingDay' | 'opensAt'>,
): { from: number; to: number }[] {
  const ran = cycles.filter((cycle) => cycle.outcome === 'completed');
  return cleanings
    .filter((cleaning) => WET_WORK.has(cleaning.task) && (cleaning.state ?? 'done') === 'done')
    .map((cleaning) => {
      const from = cleaning.start ?? cleaning.time;
      const dayEnds = clock.opensAt(clock.operatingDay(cleaning.time) + 1) - 1;
      if (cleaning.time_mark === 'day') return { from, to: dayEnds };
      const soon = cleaning.time + rule.within_hours_after_cleaning * HOUR;
      if (!rule.until_next_warm_up) return { from, to: soon };
      const warm = ran[firstFrom(ran, (cycle) => cycle.start > cleaning.time)];
      return { from, to: Math.max(soon, Math.min(warm?.start ?? dayEnds, dayEnds)) };
    });
}
