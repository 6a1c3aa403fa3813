import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  betaQuantile,
  betaTail,
  binomialTail,
  studentTail,
} from '../../../pipeline/statistics/distributions/beta.ts';
import {
  chiSquareQuantile,
  chiSquareTail,
  gammaQuantile,
  gammaTail,
  poissonTail,
} from '../../../pipeline/statistics/distributions/gamma.ts';
import {
  normalQuantile,
  normalTail,
  normalTwoSided,
} from '../../../pipeline/statistics/distributions/normal.ts';
import type { Tail } from '../../../pipeline/statistics/distributions/tail.ts';

interface TailRow {
  name: string;
  a: number;
  b: number;
  x: number;
  lower: number;
  upper: number;
}
interface QuantileRow {
  name: string;
  a: number;
  b: number;
  p: number;
  lower: number;
  upper: number;
}

// R 4.2.2, by tests/statistics/reference/distributions.R.
const read = <T>(name: string): T[] =>
  JSON.parse(readFileSync(new URL(`../reference/${name}.json`, import.meta.url), 'utf8'));

const tails: Record<string, (row: TailRow, tail: Tail) => number> = {
  normal: (r, tail) => normalTail(r.x, tail),
  gamma: (r, tail) => gammaTail(r.x, r.a, tail),
  beta: (r, tail) => betaTail(r.x, r.a, r.b, tail),
  binomial: (r, tail) => binomialTail(r.x, r.a, r.b, tail),
  poisson: (r, tail) => poissonTail(r.x, r.a, tail),
  student: (r, tail) => studentTail(r.x, r.a, tail),
};
const quantiles: Record<string, (row: QuantileRow, tail: Tail) => number> = {
  normal: (r, tail) => normalQuantile(r.p, tail),
  gamma: (r, tail) => gammaQuantile(r.p, r.a, tail),
  beta: (r, tail) => betaQuantile(r.p, r.a, r.b, tail),
};

/** Relative difference, so that a tail of 1e-12 is held to its digits too. */
const relative = (found: number, expected: number) =>
  expected === 0 ? Math.abs(found) : Math.abs(found / expected - 1);

describe('tails of distributions against R 4.2.2', () => {
  for (const name of Object.keys(tails)) {
    it(`${name}: both tails, from the middle to beyond 1e-12`, () => {
      const rows = read<TailRow>('distributions').filter((row) => row.name === name);
      expect(rows.length).toBeGreaterThan(5);
      for (const row of rows) {
        for (const tail of ['lower', 'upper'] as const) {
          // Parameters of a million lose digits in the library's incomplete beta function; 1e-9 is measured
          // there.
          const tolerance = Math.max(row.a, row.b) >= 1e5 ? 1e-9 : 1e-11;
          const error = relative(tails[name]!(row, tail), row[tail]);
          expect(error, `${JSON.stringify(row)} ${tail}`).toBeLessThan(tolerance);
        }
      }
    });
  }
  it('keeps the digits of a far tail that 1 - p would lose', () => {
    expect(relative(normalTail(9, 'upper'), 1.128588405953841e-19)).toBeLessThan(1e-13); // R: pnorm(9, lower.tail = FALSE)
    expect(1 - normalTail(9, 'lower')).toBe(0);
  });
  it('chi-square and two-sided normal agree with the gamma and normal tails', () => {
    // 3.841458820694124 is R's qchisq(0.95, 1).
    expect(chiSquareTail(3.841458820694124, 1, 'upper')).toBeCloseTo(0.05, 14);
    expect(chiSquareQuantile(0.05, 1, 'upper')).toBeCloseTo(3.841458820694124, 12);
    expect(normalTwoSided(-1.959963984540054)).toBeCloseTo(0.05, 14);
    for (const z of [0.3, 2, 7]) {
      expect(relative(chiSquareTail(z * z, 1, 'upper'), normalTwoSided(z))).toBeLessThan(1e-13);
    }
  });
});

describe('quantiles of distributions against R 4.2.2', () => {
  for (const name of Object.keys(quantiles)) {
    it(`${name}: from either tail`, () => {
      const rows = read<QuantileRow>('quantiles').filter((row) => row.name === name);
      expect(rows.length).toBeGreaterThanOrEqual(5);
      for (const row of rows) {
        for (const tail of ['lower', 'upper'] as const) {
          const error = relative(quantiles[name]!(row, tail), row[tail]);
          expect(error, `${JSON.stringify(row)} ${tail}`).toBeLessThan(2e-12 * Math.max(1, Math.sqrt(row.a)));
        }
      }
    });
  }
  it('gives the ends of the range at 0 and 1', () => {
    expect(gammaQuantile(0, 3, 'lower')).toBe(0);
    expect(gammaQuantile(0, 3, 'upper')).toBe(Number.POSITIVE_INFINITY);
    expect(betaQuantile(0, 3, 2, 'upper')).toBe(1);
    expect(betaQuantile(1, 3, 2, 'upper')).toBe(0);
    expect(normalQuantile(0, 'lower')).toBe(Number.NEGATIVE_INFINITY);
  });
});
