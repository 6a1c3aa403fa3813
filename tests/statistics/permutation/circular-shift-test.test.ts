import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalTail } from '../../../pipeline/statistics/distributions/normal.ts';
import { circularShiftTest } from '../../../pipeline/statistics/permutation/circular-shift-test.ts';
import { shiftScores } from '../../../pipeline/statistics/permutation/shift-scores.ts';
import type { ShiftSegment } from '../../../pipeline/statistics/permutation/shift-segment.ts';
import { mantelHaenszelOddsRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { mantelHaenszelRateRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-rate-ratio.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { randomUniform, simulatedUnit } from '../reference/shift-statistic.ts';

const digits = (text: string) => [...text].map(Number);
const segment = (exposure: string, events: string, more: Partial<ShiftSegment> = {}): ShiftSegment => ({
  exposure: digits(exposure),
  events: digits(events),
  trials: digits(exposure).fill(1),
  stratum: digits(exposure).fill(0),
  ...more,
});

describe('by hand', () => {
  // Ten days, three exposed, five events; T = sum of exposure times events over the shifts 0 to 9: 3 4 2 1 0
  // 1 1 1 0 2.
  const ten = segment('0011100000', '0002110001');
  it('all ten shifts: p = 2 / 10 upwards, 9 / 10 downwards', () => {
    const result = value(circularShiftTest([ten], { design: 'events-over-time' }));
    expect(result).toMatchObject({ shifts: 9, coverage: 'all', pGreater: 0.2, pLess: 0.9, pValue: 0.4 });
    expect(result.excess).toBeCloseTo(3 - 1.5, 14);
    expect(result.nullVariance).toBeCloseTo(5 * 0.3 * 0.7, 14);
  });
  it('the scores themselves', () => {
    const { excess, variance } = shiftScores(ten, 'events-over-time')!;
    expect([...excess].map((x) => Math.round((x + 1.5) * 1e9) / 1e9)).toEqual([3, 4, 2, 1, 0, 1, 1, 1, 0, 2]);
    for (const v of variance) expect(v).toBeCloseTo(1.05, 14);
  });
  it('a segment without strata is one stratum', () => {
    const { exposure, events, trials } = segment('0011100000', '0001110001');
    const one = shiftScores({ exposure, events, trials, stratum: digits('7777777777') }, 'events-of-trials');
    expect(shiftScores({ exposure, events, trials }, 'events-of-trials')).toEqual(one);
    expect(one).toBeDefined();
  });
  it('variance inflation: variance of the nine other values over the null variance', () => {
    const others = [4, 2, 1, 0, 1, 1, 1, 0, 2];
    const mean = others.reduce((a, b) => a + b) / 9;
    const variance = others.reduce((sum, t) => sum + (t - mean) ** 2, 0) / 9;
    expectNear(
      value(circularShiftTest([ten], { design: 'events-over-time' })).varianceInflation,
      variance / 1.05,
      1e-12,
    );
  });
  it('two segments of four days: all 16 combinations', () => {
    // Each segment alone: T = 2 at shift 0, then 1, 0, 1. The sum reaches 4 in 1 of 16, so p = (1 + 0) / (1 +
    // 15).
    const pair = segment('1100', '1100');
    const result = value(circularShiftTest([pair, pair], { design: 'events-of-trials' }));
    expect(result).toMatchObject({ shifts: 15, coverage: 'all', pGreater: 1 / 16, segmentsUsed: 2 });
  });
});

/** Random segment: spells of exposure, three strata, some steps without trials. */
const segments = fc.array(
  fc.integer({ min: 5, max: 60 }).chain((n) =>
    fc
      .record({
        exposure: fc.array(fc.constantFrom(0, 0, 1), { minLength: n, maxLength: n }),
        trials: fc.array(fc.constantFrom(0, 1, 1, 3), { minLength: n, maxLength: n }),
        hits: fc.array(fc.constantFrom(0, 0, 0, 1), { minLength: n, maxLength: n }),
        stratum: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: n, maxLength: n }),
      })
      .map(({ hits, ...rest }) => ({ ...rest, events: hits.map((h, i) => Math.min(h, rest.trials[i]!)) })),
  ),
  { minLength: 1, maxLength: 3 },
);

/** Sums of the strata of the record as it stands, or shifted, counted one step after the other. */
function strataOf(
  s: { exposure: number[]; trials: number[]; events: number[]; stratum: number[] },
  shift: number,
) {
  const n = s.exposure.length;
  return [0, 1, 2].map((stratum) => {
    const sums = { exposedEvents: 0, exposedTotal: 0, unexposedEvents: 0, unexposedTotal: 0 };
    for (let i = 0; i < n; i++) {
      if (s.stratum[i] !== stratum) continue;
      const exposed = s.exposure[(i - shift + n) % n] === 1;
      sums[exposed ? 'exposedEvents' : 'unexposedEvents'] += s.events[i]!;
      sums[exposed ? 'exposedTotal' : 'unexposedTotal'] += s.trials[i]!;
    }
    return sums;
  });
}

describe('properties', () => {
  it('squared excess over null variance is the Mantel-Haenszel chi-square of the strata, trials or time', () => {
    holds(
      fc.property(segments, (all) => {
        const strata = all.flatMap((s) => strataOf(s, 0));
        const odds = mantelHaenszelOddsRatio(strata);
        const trials = circularShiftTest(all, { design: 'events-of-trials', maxShifts: 999 });
        if (odds.computable && trials.computable && trials.nullVariance > 0)
          expect(trials.excess ** 2 / trials.nullVariance).toBeCloseTo(odds.chiSquare, 9);
        const rate = mantelHaenszelRateRatio(
          strata.map((s) => ({
            exposedEvents: s.exposedEvents,
            exposedTime: s.exposedTotal,
            unexposedEvents: s.unexposedEvents,
            unexposedTime: s.unexposedTotal,
          })),
        );
        const time = circularShiftTest(all, { design: 'events-over-time', maxShifts: 999 });
        if (rate.computable && time.computable && time.nullVariance > 0)
          expect(time.excess ** 2 / time.nullVariance).toBeCloseTo(rate.chiSquare, 9);
      }),
    );
  });
  it('each shift has the score of the shifted record, counted step by step', () => {
    holds(
      fc.property(segments, ([s]) => {
        const scores = shiftScores(s!, 'events-of-trials');
        if (scores === undefined) return;
        for (let shift = 0; shift < s!.exposure.length; shift++) {
          const expected = strataOf(s!, shift).reduce((sum, t) => {
            const total = t.exposedTotal + t.unexposedTotal;
            return total === 0
              ? sum
              : sum + t.exposedEvents - (t.exposedTotal * (t.exposedEvents + t.unexposedEvents)) / total;
          }, 0);
          expect(scores.excess[shift]).toBeCloseTo(expected, 9);
        }
      }),
    );
  });
  it('exposure taken the other way round mirrors the result', () => {
    holds(
      fc.property(segments, (all) => {
        const options = { design: 'events-of-trials', maxShifts: 999 } as const;
        const a = circularShiftTest(all, options);
        const b = circularShiftTest(
          all.map((s) => ({ ...s, exposure: s.exposure.map((x) => 1 - x) })),
          options,
        );
        expect(a.computable).toBe(b.computable);
        if (!a.computable || !b.computable) return;
        expect(a.excess).toBeCloseTo(-b.excess, 9);
        expect(a.pGreater).toBe(b.pLess);
        expect(a.pValue).toBe(b.pValue);
      }),
    );
  });
  it('the same seed gives the same p, another seed a near one', () => {
    const long = (shift: number): ShiftSegment => {
      const n = 400;
      const exposure = Uint8Array.from({ length: n }, (_, i) => ((i + shift) % 23 < 6 ? 1 : 0));
      const events = Uint8Array.from({ length: n }, (_, i) => ((i * i + shift) % 37 < 2 ? 1 : 0));
      return {
        exposure,
        events,
        trials: new Uint8Array(n).fill(1),
        stratum: Uint8Array.from({ length: n }, (_, i) => Math.floor(i / 180)),
      };
    };
    const given = [long(0), long(5), long(11)];
    const p = (seed: number) =>
      value(circularShiftTest(given, { design: 'events-of-trials', seed })).pGreater;
    expect(p(1)).toBe(p(1));
    expect(Math.abs(p(1) - p(2))).toBeLessThan(0.02); // four standard errors of 9999 draws
  });
});

it('keeps its level where both series come in spells, which the test for independent days does not', () => {
  const next = randomUniform(5);
  const runs = 400;
  let [shifted, naive] = [0, 0];
  for (let run = 0; run < runs; run++) {
    const given = simulatedUnit(next, { onset: 0.02, end: 0.05, base: 0.02, ratio: 1, eventsInSpells: true });
    const result = circularShiftTest([given], { design: 'events-of-trials' });
    if (!result.computable) continue;
    if (result.pGreater <= 0.05) shifted++;
    if (normalTail(result.excess / Math.sqrt(result.nullVariance), 'upper') <= 0.05) naive++;
  }
  // Standard error 0.011 at a level of 0.05.
  expect(shifted / runs).toBeLessThan(0.08);
  expect(shifted / runs).toBeGreaterThan(0.02);
  expect(naive).toBeGreaterThan(shifted);
});

describe('edges', () => {
  it('constant exposure, no events, no segment: stated', () => {
    for (const s of [[segment('1111', '0110')], [segment('0000', '0110')], [segment('0110', '0000')], []]) {
      expect(circularShiftTest(s, { design: 'events-of-trials' })).toMatchObject({
        computable: false,
        reason: expect.stringContaining('No segment'),
      });
    }
  });
  it('every trial an event: no shift leaves a variance', () => {
    expect(circularShiftTest([segment('0110', '1111')], { design: 'events-of-trials' })).toMatchObject({
      computable: false,
      reason: expect.stringContaining('No shift'),
    });
  });
  it('segments that say nothing are left out and counted', () => {
    const result = value(
      circularShiftTest([segment('0110', '0110'), segment('0000', '0110')], { design: 'events-of-trials' }),
    );
    expect(result).toMatchObject({ segmentsUsed: 1, segmentsGiven: 2, shifts: 3 });
  });
  it('a dose of 0 and 2 gives the p of 0 and 1', () => {
    const one = value(
      circularShiftTest([segment('0011100000', '0002110001')], { design: 'events-over-time' }),
    );
    const two = value(
      circularShiftTest([segment('0022200000', '0002110001')], { design: 'events-over-time' }),
    );
    expect(two.pGreater).toBe(one.pGreater);
    expect(two.excess).toBeCloseTo(2 * one.excess, 12);
    expectNear(two.varianceInflation, one.varianceInflation, 1e-12);
  });
  it('refuses what cannot be', () => {
    expect(() => circularShiftTest([segment('01', '020')], { design: 'events-of-trials' })).toThrow(
      '2 entries',
    );
    expect(() => circularShiftTest([segment('01', '02')], { design: 'events-of-trials' })).toThrow(
      '2 events in 1 trials',
    );
    expect(() =>
      circularShiftTest([segment('01', '01', { trials: [1, 0] })], { design: 'events-over-time' }),
    ).toThrow('0 trials');
    expect(() =>
      circularShiftTest([segment('01', '01', { exposure: [0, Number.NaN] })], { design: 'events-over-time' }),
    ).toThrow(RangeError);
    expect(() =>
      circularShiftTest([segment('01', '01')], { design: 'events-over-time', maxShifts: 50 }),
    ).toThrow('999');
  });
});
