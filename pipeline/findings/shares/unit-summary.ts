import { formatDay } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { unitEvents } from '../lists/unit-events.ts';
import type { Period } from '../period.ts';
import type { Review } from '../review-schema.ts';
import { chamberSummary } from '../summaries/chamber.ts';
import { cycleCounts } from '../summaries/cycle-counts.ts';
import { leakSummary } from '../summaries/leak.ts';
import { testCounts } from '../summaries/test-counts.ts';

/** What a review says of a unit by itself; why it needs attention is said beside the others. */
export type UnitSummary = Omit<Review['units'][number], 'attention'>;

/** @param rows of the panel of the unit */
export function unitSummary(
  site: Site,
  history: UnitHistory,
  rows: readonly UnitDay[],
  { from, until }: Period,
): UnitSummary {
  const { rules } = site;
  const { level } = rules.comparison;
  const declared = site.declared.units?.find((unit) => unit.id === history.unit);
  return {
    unit: history.unit,
    site: history.site,
    name: declared?.name ?? '',
    liquids: declared?.liquids ?? false,
    first_day: rows[0]?.date ?? null,
    last_day: rows.at(-1)?.date ?? null,
    days_of_use: rows.length,
    days_of_use_in_month: rows.filter((row) => row.day >= from).length,
    eras: erasOf(history),
    events: unitEvents(history, rules.contradicted_counts_as_done),
    tests: [
      testCounts(history, rows, 'month', from, until, level),
      testCounts(history, rows, 'record', Number.NEGATIVE_INFINITY, until, level),
    ],
    cycles: [
      cycleCounts(history, 'month', from, until, level),
      cycleCounts(history, 'record', Number.NEGATIVE_INFINITY, until, level),
    ],
    chamber: chamberSummary(site, history, until),
    leak: leakSummary(history, from, rules),
  };
}

function erasOf(history: UnitHistory): UnitSummary['eras'] {
  const first = history.use_days[0]?.day;
  const last = history.use_days.at(-1)?.day;
  if (first === undefined || last === undefined) return [];
  return history.eras
    .filter((era) => era.to >= first && era.from <= last)
    .map((era) => ({
      from: formatDay(Math.max(era.from, first)),
      to: formatDay(Math.min(era.to, last)),
      opened_by: era.opened_by,
    }));
}
