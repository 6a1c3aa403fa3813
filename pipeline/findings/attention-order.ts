import type { AttentionCode, AttentionReason } from './review-schema.ts';

/**
 * Kinds of reasons in the order of need, our choice, as a department would take them up: what touches loads that have run, then tests, then what is overdue, then what the
 * record shows, then what moves. Several failed test days stand before one. The same order stands in the words under the table of the first page.
 */
const KINDS: readonly (AttentionCode | 'failed_again')[] = [
  'ran_after_failure',
  'episode_open',
  'leak_over_limit',
  'return_incomplete',
  'requalification_incomplete',
  'ran_after_failure_perhaps',
  'failed_again',
  'failed_test',
  'test_missing',
  'test_late',
  'chamber_overdue_now',
  'comparison_shown',
  'drift_near_limit',
  'drift_moving',
  'records_contradicted',
  'leak_near_limit',
  'task_outstanding',
  'heat_up_out_of_range',
  'drift_stepped',
  'abort_rate_signal',
  'strainers_missed',
  'early_stops',
];
const LEVELS: readonly AttentionReason['level'][] = ['act', 'decide', 'look'];

type Reason = Pick<AttentionReason, 'code' | 'level' | 'numbers'>;

/** Level, kind, and within a kind the amount that tells units apart: all smaller where the need is greater. */
function needOf({ code, level, numbers }: Reason): [number, number, number] {
  const number = (key: string) => (typeof numbers[key] === 'number' ? numbers[key] : 0);
  const again = code === 'failed_test' && number('failures') > 1;
  const amounts: Partial<Record<AttentionCode, number>> = {
    ran_after_failure: number('cycles'),
    ran_after_failure_perhaps: number('cycles'),
    failed_test: again ? number('failures') / number('day_results') : 0,
    test_missing: number('missing'),
    test_late: number('late'),
  };
  return [LEVELS.indexOf(level), KINDS.indexOf(again ? 'failed_again' : code), -(amounts[code] ?? 0)];
}

/** Below 0 where the first reason is the more pressing. */
export function byNeed(a: Reason, b: Reason): number {
  const [left, right] = [needOf(a), needOf(b)];
  return left[0] - right[0] || left[1] - right[1] || left[2] - right[2];
}

/**
 * Units with a reason, by their most pressing reason (level, kind, amount: the share of failed test days where several failed, the number of cycles or days where production ran without
 * a pass); where that is alike by the next one, and so on; one with more reasons before one with fewer; then in the order in which they came. How many reasons of a level a unit has does not count
 * by itself: many small ones are no greater need.
 */
export function attentionOrder(units: readonly { unit: string; attention: readonly Reason[] }[]): string[] {
  return units
    .filter((unit) => unit.attention.length > 0)
    .map(({ unit, attention }) => ({ unit, reasons: attention.toSorted(byNeed) }))
    .toSorted((a, b) => {
      for (const [index, reason] of a.reasons.entries()) {
        const other = b.reasons[index];
        const difference = other === undefined ? -1 : byNeed(reason, other);
        if (difference !== 0) return difference;
      }
      return b.reasons.length - a.reasons.length;
    })
    .map(({ unit }) => unit);
}
