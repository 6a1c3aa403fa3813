import { describe, expect, it } from 'vitest';
import { attentionOrder } from '../../pipeline/findings/attention-order.ts';
import { ATTENTION_CODES, type AttentionReason } from '../../pipeline/findings/review-schema.ts';

type Reason = Pick<AttentionReason, 'code' | 'level' | 'numbers'>;
const reason = (
  code: AttentionReason['code'],
  level: AttentionReason['level'],
  numbers: AttentionReason['numbers'] = {},
): Reason => ({ code, level, numbers });
const failed = (failures: number, day_results: number) =>
  reason('failed_test', 'decide', { failures, day_results });
const moving = reason('drift_moving', 'decide');
const order = (units: Record<string, Reason[]>) =>
  attentionOrder(Object.entries(units).map(([unit, attention]) => ({ unit, attention })));

// The order is the project's own choice, written down in the docstring and in the report.
describe('the order of need', () => {
  it('goes by the most pressing reason and not by how many there are', () => {
    expect(
      order({ A: [moving, moving, moving], B: [failed(4, 21)], C: [reason('ran_after_failure', 'act')] }),
    ).toEqual(['C', 'B', 'A']);
  });

  it('sets several failed test days before one, by their share, and one alike whatever the days', () => {
    const one = { A: [failed(1, 24)], B: [failed(1, 29)], C: [failed(4, 30)], D: [failed(4, 21)] };
    expect(order(one)).toEqual(['D', 'C', 'A', 'B']);
  });

  it('goes on to the next reason where the first is alike, however the reasons came', () => {
    const shown = reason('comparison_shown', 'decide');
    const overdue = reason('chamber_overdue_now', 'decide');
    expect(
      order({ A: [failed(1, 24)], B: [shown, failed(1, 29)], C: [shown, overdue, failed(1, 20)] }),
    ).toEqual(['C', 'B', 'A']);
  });

  it('keeps the order of the units where all is alike, and leaves out those with no reason', () => {
    expect(order({ B: [moving], A: [moving], C: [] })).toEqual(['B', 'A']);
  });

  it('knows a place for each kind of reason: none stands before production after a failed test', () => {
    const first = reason('ran_after_failure', 'act', { cycles: 1 });
    for (const code of ATTENTION_CODES.filter((of) => of !== 'ran_after_failure'))
      expect(order({ A: [reason(code, 'act')], B: [first] }), code).toEqual(['B', 'A']);
  });
});
