import { formatDay, monthOf, monthSpan } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { UnitCourse } from '../../transform/unit-history.ts';
import type { Period } from '../period.ts';
import type { AttentionCode, Review } from '../review-schema.ts';
import { expectedUse, USE_WEEKS } from './expected-use.ts';
import type { MissingData, NextMonth } from './next-month-schema.ts';
import { tasksAhead } from './tasks-ahead.ts';

/** Reasons for attention that do not end with the month. */
const TO_WATCH: readonly AttentionCode[] = [
  'episode_open',
  'requalification_incomplete',
  'leak_over_limit',
  'leak_near_limit',
  'drift_near_limit',
  'drift_moving',
  'drift_stepped',
  'heat_up_out_of_range',
  'abort_rate_signal',
  'comparison_shown',
  'comparison_suggested',
];

/**
 * What the month after the one under review will bring if nothing changes.
 *
 * @param missing data that the next review will miss, see `missingData`
 */
export function nextMonth(
  site: Site,
  histories: readonly UnitCourse[],
  units: readonly Pick<Review['units'][number], 'unit' | 'attention'>[],
  order: readonly string[],
  missing: readonly MissingData[],
  period: Period,
): NextMonth {
  const month = monthOf(period.until);
  const { from, until } = monthSpan(month)!;
  const expected = histories.map((history) => ({ history, days: expectedUse(history, from, until) }));
  const attention = new Map(units.map((unit) => [unit.unit, unit.attention]));
  return {
    month,
    from: formatDay(from),
    to: formatDay(until - 1),
    weeks: USE_WEEKS,
    expected_use: expected.map(({ history, days }) => ({
      unit: history.unit,
      days: days.map((use) => formatDay(use.day)),
    })),
    tasks: expected.flatMap(({ history, days }) => tasksAhead(site, history, days, from)),
    watch: order.flatMap((unit) =>
      (attention.get(unit) ?? []).flatMap(({ code }, reason) =>
        TO_WATCH.includes(code) ? [{ unit, code, reason }] : [],
      ),
    ),
    missing: [
      ...missing,
      ...expected
        .filter(({ history, days }) => days.length === 0 && history.use_days.length > 0)
        .map(({ history }) => ({
          code: 'no_use_expected' as const,
          unit: history.unit,
          site: history.site,
          source: null,
          since: formatDay(history.use_days.at(-1)!.day),
          count: null,
          of: null,
        })),
    ],
  };
}
