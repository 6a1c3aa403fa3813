import { describe, expect, it } from 'vitest';
import { laneyUPrimeChart } from '../../../pipeline/statistics/control-charts/laney-u-prime-chart.ts';
import { uChart } from '../../../pipeline/statistics/control-charts/u-chart.ts';
import { computedOrFail } from '../computed-or-fail.ts';

describe("Laney's u' chart", () => {
  // By hand, from the definition in Laney, Quality Engineering 14 (2002) 531-537: u-bar = 20 / 16 = 1.25,
  // sigma_i = sqrt(1.25 / 4), z = (u - 1.25) / sigma_i for u = 0.5, 2, 0.25, 2.25; moving ranges 1.5, 1.75, 2
  // over sigma_i; mean 1.75 / sigma_i.
  it('agrees with the hand calculation', () => {
    const chart = computedOrFail(laneyUPrimeChart({ counts: [2, 8, 1, 9], denominators: [4, 4, 4, 4] }));
    const sigma = Math.sqrt(1.25 / 4);
    expect(chart.centre).toBe(1.25);
    expect(chart.sigmaZ).toBeCloseTo(1.75 / sigma / 1.128, 12);
    expect(chart.points[0]!.upper).toBeCloseTo(1.25 + (3 * 1.75) / 1.128, 12);
    expect(chart.points[0]!.lower).toBe(0);
    expect(chart.points[3]!.z).toBeCloseTo((1 * 1.128) / 1.75, 12);
  });

  it('widens the plain chart by sigma_z and nothing else', () => {
    const input = { counts: [14, 12, 20, 11, 7, 10], denominators: [10, 8, 13, 10, 9.5, 10] };
    const plain = computedOrFail(uChart(input));
    const laney = computedOrFail(laneyUPrimeChart(input));
    for (const [i, point] of laney.points.entries()) {
      expect(point.sigma).toBeCloseTo(plain.points[i]!.sigma! * laney.sigmaZ!, 12);
      expect(point.value).toBe(plain.points[i]!.value);
    }
  });
});
