import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import { isSupported, isUnjudged } from '../../transform/cleaning/support.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';

/**
 * Chamber cleaning of a unit over the record: how it stands at the end of the period, as the panel would say of the day after, and what the cycle log says of the
 * records. Days past due are null where the panel would not know them.
 */
export function chamberSummary(
  site: Site,
  history: UnitHistory,
  until: Day,
): Review['units'][number]['chamber'] {
  const policy = site.policyOf(history.unit, 'chamber');
  const records = history.cleanings.filter((cleaning) => cleaning.task === 'chamber' && cleaning.done);
  const counted = records.filter((record) => countsAsDone(record, site.rules.contradicted_counts_as_done));
  const last = counted.at(-1)?.day ?? null;
  const supports = records.map((record) => record.support!);
  return {
    interval: policy ? `${policy.every} ${policy.counted_in}` : null,
    clock_days: last === null ? null : until - last,
    days_past_due: history.cleaning.chamberAtEnd?.days_past_due ?? null,
    records: records.length,
    reactive: records.filter((record) => record.reactive).length,
    running: supports.filter((support) => support.running).length,
    hot: supports.filter((support) => support.hot).length,
    no_return: supports.filter((support) => support.no_return).length,
    supported: supports.filter(isSupported).length,
    not_judged: supports.filter(isUnjudged).length,
  };
}
