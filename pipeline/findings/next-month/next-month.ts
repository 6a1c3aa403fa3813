import { type Day, formatDay, monthOf, monthSpan } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Period } from '../period.ts';
import type { AttentionCode, Review } from '../review-schema.ts';
import { expectedUse, USE_WEEKS } from './expected-use.ts';
import type { MissingData, NextMonth, TaskAhead } from './next-month-schema.ts';
import { tasksAhead } from './tasks-ahead.ts';

/** Reasons for attention that do not end with the month; production after a failed test only where none has passed since. */
const TO_WATCH: readonly AttentionCode[] = [
  'ran_after_failure',
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
];

/** What a unit is expected to do in the month after the one under review. */
export interface UnitAhead {
  unit: string;
  site: string;
  /** Last day of use; null where there is none. */
  last_use: Day | null;
  days: Day[];
  tasks: TaskAhead[];
}

export function unitAhead(site: Site, history: UnitHistory, period: Period): UnitAhead {
  const { from, until } = monthAfter(period);
  const days = expectedUse(history, from, until);
  return {
    unit: history.unit,
    site: history.site,
    last_use: history.use_days.at(-1)?.day ?? null,
    days: days.map((use) => use.day),
    tasks: tasksAhead(site, history, days, from),
  };
}

/**
 * What the month after the one under review will bring if nothing changes.
 *
 * @param ahead of all units, see `unitAhead`
 * @param missing data that the next review will miss, see `missingData`
 */
export function nextMonth(
  ahead: readonly UnitAhead[],
  units: readonly Pick<Review['units'][number], 'unit' | 'attention'>[],
  order: readonly string[],
  missing: readonly MissingData[],
  period: Period,
): NextMonth {
  const { month, from, until } = monthAfter(period);
  const attention = new Map(units.map((unit) => [unit.unit, unit.attention]));
  return {
    month,
    from: formatDay(from),
    to: formatDay(until - 1),
    weeks: USE_WEEKS,
    expected_use: ahead.map(({ unit, days }) => ({ unit, days: days.map(formatDay) })),
    tasks: ahead.flatMap(({ tasks }) => tasks),
    watch: order.flatMap((unit) =>
      (attention.get(unit) ?? []).flatMap(({ code, numbers }, reason) =>
        TO_WATCH.includes(code) && !(code === 'ran_after_failure' && numbers.ended !== null)
          ? [{ unit, code, reason }]
          : [],
      ),
    ),
    missing: [
      ...missing,
      ...ahead.flatMap(({ unit, site, days, last_use }) =>
        days.length === 0 && last_use !== null
          ? [
              {
                code: 'no_use_expected' as const,
                unit,
                site,
                source: null,
                since: formatDay(last_use),
                count: null,
                of: null,
              },
            ]
          : [],
      ),
    ],
  };
}

function monthAfter({ until: first }: Period): Period {
  const month = monthOf(first);
  return { month, ...monthSpan(month)! };
}
