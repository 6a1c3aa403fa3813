import { describe, expect, it } from 'vitest';
import {
  DEFAULT_MEASURES,
  leakRateIn,
  measureNames,
  temperatureDifferenceIn,
} from '../../../pipeline/report/measures/measures.ts';
import { inMeasures } from '../../../pipeline/report/measures/review-in-measures.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';

const F = { pressure: 'psi', temperature: 'F' } as const;

describe('leak rates', () => {
  // NIST Special Publication 811 (2008), appendix B.8: 1 psi = 6.894757 kPa, 1 mbar = 0.1 kPa, 1 bar = 100 kPa, each given to seven digits.
  it.each([
    ['psi', 6.894757],
    ['mbar', 0.1],
    ['bar', 100],
    ['kPa', 1],
  ] as const)('in %s a minute are those in kPa by the published factor', (pressure, kilopascal) => {
    const convert = leakRateIn({ ...DEFAULT_MEASURES, pressure });
    expect(convert(kilopascal)).toBeCloseTo(1, 6);
    expect(convert(0)).toBe(0);
    expect(convert(-2 * kilopascal)).toBeCloseTo(-2, 6);
  });

  it('of decimal units leave no tail: 0.13 kPa/min is the 1.3 mbar/min of EN 285', () => {
    expect(leakRateIn({ ...DEFAULT_MEASURES, pressure: 'mbar' })(0.13)).toBe(1.3);
    expect(leakRateIn({ ...DEFAULT_MEASURES, pressure: 'bar' })(0.13)).toBe(0.0013);
  });
});

describe('differences of temperature', () => {
  // NIST Special Publication 811 (2008), appendix B.9: degree Fahrenheit to degree Celsius, t = (f - 32) / 1.8; interval: 1 degree Fahrenheit = 0.5555556 K.
  const fahrenheit = (celsius: number) => celsius * 1.8 + 32;
  const convert = temperatureDifferenceIn(F);

  it('are the differences of readings: no 32 in them', () => {
    for (const [one, other] of [
      [134, 137],
      [121.1, 120.4],
      [0, 0],
    ] as const)
      expect(convert(other - one)).toBeCloseTo(fahrenheit(other) - fahrenheit(one), 9);
    expect(convert(0)).toBe(0);
    expect(convert(0.5555556)).toBeCloseTo(1, 6);
  });

  it('stay in kelvin where the site has degrees Celsius', () => {
    expect(temperatureDifferenceIn(DEFAULT_MEASURES)(1.25)).toBe(1.25);
    expect(measureNames(DEFAULT_MEASURES)).toEqual({ leakRate: 'kPa/min', temperatureDifference: 'K' });
    expect(measureNames(F)).toEqual({ leakRate: 'psi/min', temperatureDifference: '°F' });
  });
});

describe('review in measures', () => {
  const { review } = fleetInput(3, { drift: driftOf('A1', 'north') });

  it('has every number as it is where the site says nothing', () => {
    const made = inMeasures(review, DEFAULT_MEASURES);
    expect(made.drift).toEqual(review.drift);
    expect(made.units.map((unit) => unit.leak)).toEqual(review.units.map((unit) => unit.leak));
  });

  it('converts leak rates and differences, and neither times, days nor counts', () => {
    const made = inMeasures(review, F);
    expect(review.drift.probes.map((probe) => probe.measure)).toContain('s');
    for (const [index, probe] of review.drift.probes.entries()) {
      const converted = made.drift.probes[index]!;
      const factor = { s: 1, 'kPa/min': 1 / 6.894757293168, K: 1.8 }[probe.measure];
      expect(converted.measure as string).toBe({ s: 's', 'kPa/min': 'psi/min', K: '°F' }[probe.measure]);
      for (const [at, value] of probe.series.value.entries())
        expect(converted.series.value[at]).toBeCloseTo(value * factor, 9);
      if (probe.limit) expect(converted.limit!.value).toBeCloseTo(probe.limit.value * factor, 9);
      expect(converted.days_to_limit).toEqual(probe.days_to_limit);
      expect(converted.series.day).toEqual(probe.series.day);
    }
    for (const [index, { leak }] of review.units.entries()) {
      expect(made.units[index]!.leak.limit).toBeCloseTo(leak.limit / 6.894757293168, 9);
      expect(made.units[index]!.leak.tests_in_month).toBe(leak.tests_in_month);
    }
  });

  it('converts the numbers of reasons with their measure, and says it', () => {
    const reason = (code: string) =>
      [review, inMeasures(review, F)].map(
        (of) => of.units.flatMap((unit) => unit.attention).find((found) => found.code === code)!.numbers,
      ) as [Record<string, number>, Record<string, number | string>];
    const [before, after] = reason('leak_over_limit');
    expect(after.measure).toBe('psi/min');
    expect(after.last).toBeCloseTo(before.last! / 6.894757293168, 9);
    expect(after.at).toBe(before.at);
  });

  it('leaves the review itself as it was', () => {
    const kept = structuredClone(review);
    inMeasures(review, F);
    expect(review).toEqual(kept);
  });
});
