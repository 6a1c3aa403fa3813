import { describe, expect, it } from 'vitest';
import { en } from '../../../pipeline/report/words/en.ts';
import { comparisonOf } from '../fixtures/review-of.ts';

const { comparisons } = en;
const settings = { alpha: 0.05, power: 0.8, ratioOfInterest: 2, leastDays: 10, reactiveShare: 0.5 };

describe('words of a comparison', () => {
  it('give the ratio with its interval, and say where it has no end', () => {
    expect(comparisons.ratioCell(comparisonOf())).toBe('1.3 (0.10 to 12)');
    expect(comparisons.ratioCell(comparisonOf({ high: null }))).toBe('1.3 (0.10 or more)');
    expect(comparisons.ratioCell(comparisonOf({ ratio: null, low: 0.9, high: null }))).toBe('0.90 or more');
    expect(comparisons.ratioCell(comparisonOf({ ratio: 0, low: null, high: 5.3 }))).toBe('0 (0 to 5.3)');
    expect(comparisons.ratioCell(comparisonOf({ ratio: null, low: null, high: null }))).toBe('no ratio');
    const none = { days: 9, trials: 9, events: 0 };
    expect(
      comparisons.ratioCell(
        comparisonOf({ ratio: null, low: null, high: null, exposed: none, unexposed: none }),
      ),
    ).toBe('no events');
  });

  it('put the evidence in counts first', () => {
    expect(comparisons.evidence(comparisonOf(), '95%')).toBe(
      '1 of 40 test days with chamber overdue, 3 of 160 with chamber not overdue; odds ratio 1.3, 95% interval 0.10 to 12',
    );
    expect(
      comparisons.evidence(comparisonOf({ outcome: 'cleanliness_abort', ratio: null, high: null }), '90%'),
    ).toBe(
      '1 in 40 production cycles with chamber overdue, 3 in 160 with chamber not overdue; no ratio, as none came without it, 90% interval from 0.10 with no upper end',
    );
  });

  it('have a legend that holds where a sign is shared by aborts of unrelated causes', () => {
    const means = comparisons.verdictMeans(settings, '95%');
    for (const verdict of ['not_shown', 'cannot_tell'] as const)
      expect(means[verdict]).toContain('or one that aborts of unrelated causes or another exposure share');
    expect(
      comparisons.why('All units', 'cannot tell', ['the interval lies above 1', 'too little data']),
    ).toBe('All units, cannot tell: the interval lies above 1; too little data.');
  });

  it('say for each code why, and for a small record how much more is needed', () => {
    const because = (code: string) => comparisons.because(code, comparisonOf(), settings);
    expect(because('too_little_data')).toBe(
      'too little data to see a ratio of 2 (about 5.2 times as much record would do)',
    );
    const codes =
      'interval_above_1 adjusted_p unadjusted_p control_moved points_down carried_by_other not_told_apart power too_little_data mostly_reactive hardly_varies no_exposure_known';
    for (const code of codes.split(' ')) expect(because(code), code).not.toBe(code);
  });
});
