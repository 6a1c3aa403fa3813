import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pettitt } from '../../../pipeline/statistics/change-point/pettitt.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

describe('Pettitt change point', () => {
  // Page's data in Pettitt, Applied Statistics 28 (1979) 126-135: K 232, change after the 17th value, p 0.014
  // (cut, not rounded); more digits by reference/change-point.R, R 4.2.2.
  it("agrees with the paper on Page's data", () => {
    const values = [
      -1.05, 0.96, 1.22, 0.58, -0.98, -0.03, -1.54, -0.71, -0.35, 0.66, 0.44, 0.91, -0.02, -1.42, 1.26, -1.02,
      -0.81, 1.66, 1.05, 0.97, 2.14, 1.22, -0.24, 1.6, 0.72, -0.12, 0.44, 0.03, 0.66, 0.56, 1.37, 1.66, 0.1,
      0.8, 1.29, 0.49, -0.07, 1.18, 3.29, 1.84,
    ];
    const change = computedOrFail(pettitt({ values }));
    expect(change).toMatchObject({ k: 232, u: -232, lastBefore: 16, n: 40 });
    expect(change.pValue).toBeCloseTo(0.01455559754, 10);
    expect(Math.trunc(change.pValue * 1000)).toBe(14);
    expect(change.medianBefore).toBe(-0.03);
    expect(change.medianAfter).toBe(0.97);
  });

  it('states too few values and a constant series', () => {
    expect(reasonOrFail(pettitt({ values: [1, 2, 3] }))).toMatch(/too few/);
    expect(reasonOrFail(pettitt({ values: [2, 2, 2, 2] }))).toMatch(/equal/);
    expect(() => pettitt({ values: [1, 2, 3, Number.NaN] })).toThrow(RangeError);
  });

  it('has U by ranks equal to U by signs (its definition), also with ties, and mirrors', () => {
    holds(
      fc.property(fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 4, maxLength: 30 }), (values) => {
        const change = pettitt({ values });
        expect(numbersIn(change).every(Number.isFinite)).toBe(true);
        if (!change.computable) return;
        const t = change.lastBefore;
        let u = 0;
        for (const before of values.slice(0, t + 1)) {
          for (const after of values.slice(t + 1)) u += Math.sign(before - after);
        }
        expect(change.u).toBe(u);
        expect(computedOrFail(pettitt({ values: values.map((v) => -v) })).u).toBe(0 - u);
      }),
    );
  });
});
