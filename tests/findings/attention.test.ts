import { describe, expect, it } from 'vitest';
import { type AttentionInput, attentionReasons } from '../../pipeline/findings/attention.ts';
import { monthSpan } from '../../pipeline/site/day.ts';
import { comparisonOf, unitOf } from '../report/fixtures/review-of.ts';

// What is for which level is the project's own choice, written down with the order of need.

const { attention: _, ...unit } = unitOf('A1');
const nothing: AttentionInput = {
  unit,
  history: { episodes: [], due: [] } as unknown as AttentionInput['history'],
  comparisons: [],
  cleaning: [],
  outstanding: [],
  withoutPass: [],
  incompleteReturns: [],
  requalifications: [],
  contradicted: [],
  drift: { units: [], probes: [], heat_up_passes: [] },
  aborts: [],
  done: [],
  period: { month: '2026-03', ...monthSpan('2026-03')! },
};
const codes = (parts: Partial<AttentionInput>) =>
  attentionReasons({ ...nothing, ...parts }).map(({ code, level }) => [code, level]);
const ran = (certain: boolean): AttentionInput['withoutPass'][number]['cycles'][number] => ({
  started: '2026-03-19 07:18',
  date: '2026-03-19',
  cycle_number: 7,
  kind: 'production',
  standing: 'completed',
  certain,
  file: 'cycles.csv',
  row: 3,
});
const list = (
  why: AttentionInput['withoutPass'][number]['why'],
  ...cycles: AttentionInput['withoutPass'][number]['cycles']
): AttentionInput['withoutPass'][number] => ({
  unit: 'A1',
  why,
  date: '2026-03-19',
  failed: why === 'after_failure' ? '2026-03-19 07:08' : null,
  failed_by_date: false,
  ended: null,
  ended_by_date: false,
  cycles,
});
const outstanding = (
  task: 'professional' | 'drain_flush' | 'chamber',
): AttentionInput['outstanding'][number] => ({
  unit: 'A1',
  task,
  date: '2026-04-01',
  state: 'outstanding',
  due: '2026-01-12',
  after: 'interval',
  last_done: null,
});

describe('reasons for attention', () => {
  it('are none where nothing is on record', () => {
    expect(codes({})).toEqual([]);
  });

  it('are first to act where a cycle ran after a failed test, and for this review where that is not sure', () => {
    expect(codes({ withoutPass: [list('after_failure', ran(true), ran(false))] })).toEqual([
      ['ran_after_failure', 'act'],
    ]);
    expect(codes({ withoutPass: [list('after_failure', ran(false))] })).toEqual([
      ['ran_after_failure_perhaps', 'decide'],
    ]);
    expect(codes({ withoutPass: [{ ...list('after_failure', ran(true)), unit: 'A2' }] })).toEqual([]);
  });

  it('take a late test as seriously as a missing one, with the cycles that ran', () => {
    const tests = unit.tests.map((of) => ({ ...of, missing: 1, late: 1, production_days: 20 }));
    const found = attentionReasons({
      ...nothing,
      unit: { ...unit, tests },
      withoutPass: [list('no_test', ran(true), ran(true)), list('before_late_test', ran(true))],
    });
    expect(found).toMatchObject([
      { code: 'test_missing', level: 'decide', numbers: { cycles: 2 } },
      { code: 'test_late', level: 'decide', numbers: { cycles: 1 } },
    ]);
  });

  it('are what is shown, and never what is suggested alone', () => {
    const comparison = (verdict: 'shown' | 'suggested') => comparisonOf({ unit: 'A1', verdict });
    expect(codes({ comparisons: [comparison('suggested')] })).toEqual([]);
    expect(codes({ comparisons: [comparison('suggested'), comparison('shown')] })).toEqual([
      ['comparison_shown', 'decide'],
    ]);
  });

  it('are each task that is outstanding, for soon; the chamber where its days past due are not known', () => {
    // 12 January to 1 April 2026: 79 days.
    expect(attentionReasons({ ...nothing, outstanding: [outstanding('professional')] })).toMatchObject([
      { code: 'task_outstanding', level: 'look', numbers: { task: 'professional', days_past_due: 79 } },
    ]);
    expect(codes({ outstanding: [outstanding('drain_flush'), outstanding('professional')] })).toHaveLength(2);
    const chamber = (days_past_due: number | null) =>
      codes({
        unit: { ...unit, chamber: { ...unit.chamber, days_past_due } },
        outstanding: [outstanding('chamber')],
      });
    expect(chamber(null)).toEqual([['task_outstanding', 'look']]);
    expect(chamber(0)).toEqual([]);
    expect(chamber(9)).toEqual([['chamber_overdue_now', 'decide']]);
  });

  it('are none of a task that the site’s rule takes as done', () => {
    const history = {
      episodes: [],
      due: [{ task: 'professional', state: 'done' }],
    } as unknown as AttentionInput['history'];
    expect(codes({ history, outstanding: [outstanding('professional')] })).toEqual([]);
  });
});
