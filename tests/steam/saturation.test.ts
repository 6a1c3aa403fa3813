import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  saturationCelsius,
  saturationKilopascals,
  saturationPressure,
  saturationTemperature,
} from '../../pipeline/steam/saturation.ts';
import { saturationResidual } from '../../pipeline/steam/saturation-residual.ts';
import { holds } from '../statistics/properties.ts';
import { physicalOrFail } from './physical-or-fail.ts';

describe('saturation line', () => {
  // IAPWS R7-97(2012), Table 35: nine significant digits.
  it.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])('pressure at %f K is the check value of Table 35', (kelvin, megapascals) => {
    expect(physicalOrFail(saturationPressure(kelvin)).megapascals / megapascals).toBeCloseTo(1, 8);
  });

  // IAPWS R7-97(2012), Table 36: nine significant digits.
  it.each([
    [0.1, 0.372755919e3],
    [1, 0.453035632e3],
    [10, 0.584149488e3],
  ])('temperature at %f MPa is the check value of Table 36', (megapascals, kelvin) => {
    expect(physicalOrFail(saturationTemperature(megapascals)).kelvin / kelvin).toBeCloseTo(1, 8);
  });

  // Boiling point at one standard atmosphere 99.974 C: widely published with IAPWS-95 and IF97 (from memory),
  // three decimals.
  it('water boils at 99.974 C at one atmosphere', () => {
    expect(physicalOrFail(saturationCelsius(101.325)).celsius).toBeCloseTo(99.974, 3);
  });

  // Computed with a second implementation of the same formula (no published value with these digits).
  it.each([
    [121.1, 205.685275],
    [134, 304.198883],
  ])('pressure at %f C', (celsius, kilopascals) => {
    expect(physicalOrFail(saturationKilopascals(celsius)).kilopascals).toBeCloseTo(kilopascals, 5);
  });

  it('states what lies outside the range of the formula, at both ends and for NaN', () => {
    for (const kelvin of [273.14, 647.1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(saturationPressure(kelvin)).toMatchObject({
        computable: false,
        reason: expect.stringContaining('273.15'),
      });
    }
    for (const megapascals of [0.0006112, 22.065, -1, Number.NaN]) {
      expect(saturationTemperature(megapascals)).toMatchObject({ computable: false });
    }
    expect(saturationPressure(273.15).computable).toBe(true);
    expect(saturationPressure(647.096).computable).toBe(true);
    expect(saturationTemperature(22.064).computable).toBe(true);
  });

  it('goes back to where it came from, and rises', () => {
    holds(
      fc.property(fc.double({ min: 273.2, max: 647, noNaN: true }), (kelvin) => {
        const { megapascals } = physicalOrFail(saturationPressure(kelvin));
        expect(physicalOrFail(saturationTemperature(megapascals)).kelvin).toBeCloseTo(kelvin, 6);
        const higher = physicalOrFail(saturationPressure(kelvin + 0.05));
        expect(higher.megapascals).toBeGreaterThan(megapascals);
      }),
    );
  });
});

describe('saturation residual', () => {
  it('is 0 on the line, negative with air, positive with superheat', () => {
    const { kilopascals } = physicalOrFail(saturationKilopascals(134));
    expect(physicalOrFail(saturationResidual(134, kilopascals)).kelvin).toBeCloseTo(0, 9);
    // 4.4 kPa of air at 134 C lower the vapour temperature by 0.5 K (Dalton, derived from the formula).
    expect(physicalOrFail(saturationResidual(134, kilopascals + 4.4)).kelvin).toBeCloseTo(-0.5, 1);
    expect(physicalOrFail(saturationResidual(136, kilopascals)).kelvin).toBeCloseTo(2, 9);
  });

  it('runs the example of the docstring', () => {
    const result = physicalOrFail(saturationResidual(134, 310));
    expect(result.saturationCelsius).toBeCloseTo(134.65, 2);
    expect(result.kelvin).toBeCloseTo(-0.65, 2);
  });

  it('states a gauge reading below the range and a missing temperature', () => {
    expect(saturationResidual(134, 0).computable).toBe(false);
    expect(saturationResidual(Number.NaN, 310).computable).toBe(false);
  });
});
