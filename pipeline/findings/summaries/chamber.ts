import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import { intervalClock } from '../../transform/cleaning/interval-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';

/** Chamber cleaning of a unit over the record: the clock at the end of the period, and what the cycle log says of the records. */
export function chamberSummary(
  site: Site,
  history: UnitHistory,
  until: Day,
): Review['units'][number]['chamber'] {
  const policy = site.policyOf(history.unit, 'chamber');
  const records = history.cleanings.filter((cleaning) => cleaning.task === 'chamber' && cleaning.done);
  const counted = records.filter((record) => countsAsDone(record, site.rules.contradicted_counts_as_done));
  const last = counted.at(-1)?.day ?? null;
  const due = policy && last !== null ? intervalClock(policy, history.use_days).reached(last, 1) : null;
  const today = until - 1;
  const supports = records.map((record) => record.support!);
  return {
    interval: policy ? `${policy.every} ${policy.counted_in}` : null,
    clock_days: last === null ? null : today - last,
    days_past_due:
      due === null ? null : Math.max(0, Number.isFinite(due) ? today - due - (policy?.grace_days ?? 0) : 0),
    records: records.length,
    reactive: records.filter((record) => record.reactive).length,
    running: supports.filter((support) => support.running).length,
    hot: supports.filter((support) => support.hot).length,
    no_return: supports.filter((support) => support.no_return).length,
    supported: supports.filter(
      (support) => support.judged && !support.running && !support.hot && !support.no_return,
    ).length,
    not_judged: supports.filter((support) => !support.judged).length,
  };
}
