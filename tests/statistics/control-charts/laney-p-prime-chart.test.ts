import { describe, expect, it } from 'vitest';
import { laneyPPrimeChart } from '../../../pipeline/statistics/control-charts/laney-p-prime-chart.ts';
import { pChart } from '../../../pipeline/statistics/control-charts/p-chart.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

// Weekly emergency attendances seen within four hours: Mohammed, Panesar, Laney and Wilson, BMJ Quality and
// Safety 22 (2013) 362-368, also `nhs_accidents` in R package qicharts2. Values computed with R 4.2.2 from
// the definitions in Laney, Quality Engineering 14 (2002) 531-537.
const seen = [
  266501, 264225, 276532, 281461, 269071, 261215, 270409, 279778, 270483, 270320, 267923, 271478, 255353,
  256820, 261835, 259144, 255910, 260863, 264465, 260989,
];
const attended = [
  280443, 276823, 291681, 296155, 282343, 275888, 283867, 295251, 284468, 282529, 279618, 283932, 266629,
  268091, 276803, 271578, 266005, 273520, 278574, 273772,
];

describe("Laney's p' chart of the weekly attendances", () => {
  const plain = computedOrFail(pChart({ counts: seen, denominators: attended }));
  const laney = computedOrFail(laneyPPrimeChart({ counts: seen, denominators: attended }));

  it('has sigma_z by moving range over 1.128', () => {
    expect(laney.sigmaZ).toBeCloseTo(10.64042186, 7);
    expect(laney.movingRanges).toBe(19);
    expect(laney.centre).toBeCloseTo(0.9528997113, 10);
  });

  it('puts 16 of 20 weeks outside plain limits and none outside its own', () => {
    expect(plain.points.filter((p) => Math.abs(p.z!) > 3)).toHaveLength(16);
    expect(laney.points.filter((p) => Math.abs(p.z!) > 3)).toHaveLength(0);
  });

  it('has the limits of weeks 1 and 17 (printed to eight decimals)', () => {
    expect(plain.points[0]!.z).toBeCloseTo(-6.53398502, 7);
    expect(plain.points[16]!.z).toBeCloseTo(22.27535533, 7);
    expect(plain.points[0]!.lower).toBeCloseTo(0.95169956, 7);
    expect(plain.points[0]!.upper).toBeCloseTo(0.95409986, 7);
    expect(laney.points[0]!.lower).toBeCloseTo(0.94012964, 7);
    expect(laney.points[0]!.upper).toBeCloseTo(0.96566978, 7);
    expect(laney.points[16]!.lower).toBeCloseTo(0.93978766, 7);
    expect(laney.points[16]!.upper).toBeCloseTo(0.96601176, 7);
    expect(laney.points[0]!.z).toBeCloseTo(plain.points[0]!.z! / laney.sigmaZ!, 12);
  });
});

describe("Laney's p' chart at the edges", () => {
  it('is not floored at the binomial width', () => {
    const chart = computedOrFail(
      laneyPPrimeChart({ counts: [50, 51, 50, 51], denominators: [100, 100, 100, 100] }),
    );
    expect(chart.sigmaZ).toBeLessThan(1);
  });

  it('states a series that never moves', () => {
    expect(reasonOrFail(laneyPPrimeChart({ counts: [5, 5, 5], denominators: [10, 10, 10] }))).toMatch(
      /never differ/,
    );
  });

  it('states a baseline without two neighbours', () => {
    const chart = laneyPPrimeChart({ counts: [5, 0, 6, 0], denominators: [10, 0, 10, 0] });
    expect(reasonOrFail(chart)).toMatch(/neighbouring/);
  });

  it('takes no moving range across a missing period', () => {
    const gap = computedOrFail(
      laneyPPrimeChart({ counts: [5, 6, 0, 1, 2], denominators: [10, 10, 0, 10, 10] }),
    );
    expect(gap.movingRanges).toBe(2);
  });
});
