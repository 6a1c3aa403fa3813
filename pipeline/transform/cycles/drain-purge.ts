import { firstFrom } from '../../first-from.ts';
import type { Cleaning, Cycle } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';

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
 * on to the next cycle that ran to its end (a warm-up, as a rule). A record with a date only opens its span when that operating day opens.
 *
 * @param cycles the unit's cycles in order of time
 * @returns spans in order of time; they may overlap
 */
export function purgeSpans(
  cleanings: readonly Cleaning[],
  cycles: readonly Cycle[],
  rule: Rules['purge'],
): { from: number; to: number }[] {
  const ran = cycles.filter((cycle) => cycle.outcome === 'completed');
  return cleanings
    .filter((cleaning) => WET_WORK.has(cleaning.task) && (cleaning.state ?? 'done') === 'done')
    .map((cleaning) => {
      const dayOnly = cleaning.time_mark === 'day';
      const hours = dayOnly ? 24 : rule.within_hours_after_cleaning;
      const next =
        rule.until_next_warm_up && !dayOnly
          ? ran[firstFrom(ran, (cycle) => cycle.start > cleaning.time)]?.start
          : undefined;
      return {
        from: cleaning.start ?? cleaning.time,
        to: Math.max(cleaning.time + hours * HOUR, next ?? Number.NEGATIVE_INFINITY),
      };
    });
}
