import { describe, expect, it } from 'vitest';
import { gaugeToAbsolute, standardBarometricPressure } from '../../pipeline/steam/pressure.ts';
import { physicalOrFail } from './physical-or-fail.ts';

describe('standard barometric pressure', () => {
  // ISO 2533:1975 and U.S. Standard Atmosphere 1976, by geopotential height (from memory), kPa to two
  // decimals.
  it.each([
    [0, 101.325],
    [500, 95.46],
    [1000, 89.87],
    [2000, 79.5],
    [5000, 54.02],
    [11_000, 22.63],
  ])('at %i m', (metres, kilopascals) => {
    expect(
      Math.abs(physicalOrFail(standardBarometricPressure(metres)).kilopascals - kilopascals),
    ).toBeLessThan(0.006);
  });

  it('runs the example of the docstring', () => {
    expect(physicalOrFail(standardBarometricPressure(1000)).kilopascals).toBeCloseTo(89.875, 3);
  });

  it('states an elevation outside the layer', () => {
    expect(standardBarometricPressure(12_000).computable).toBe(false);
    expect(standardBarometricPressure(Number.NaN).computable).toBe(false);
  });
});

describe('gauge to absolute', () => {
  it('adds the air outside', () => {
    expect(physicalOrFail(gaugeToAbsolute(202.9, 101.325)).kilopascals).toBeCloseTo(304.225, 9);
    expect(physicalOrFail(gaugeToAbsolute(-96, 101.325)).kilopascals).toBeCloseTo(5.325, 9);
  });

  it('states a vacuum deeper than the air pressure allows, and a barometer in other measures', () => {
    expect(gaugeToAbsolute(-101, 83.4)).toMatchObject({
      computable: false,
      reason: expect.stringContaining('under 0'),
    });
    expect(gaugeToAbsolute(200, 1013)).toMatchObject({
      computable: false,
      reason: expect.stringContaining('1013'),
    });
    expect(gaugeToAbsolute(Number.NaN, 101).computable).toBe(false);
  });
});
