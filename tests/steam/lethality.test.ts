import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lethality, lethalRate } from '../../pipeline/steam/lethality.ts';
import { holds } from '../statistics/properties.ts';
import { physicalOrFail } from './physical-or-fail.ts';

describe('lethal rate', () => {
  // Published: 0.077 at 110 C with reference 121.11 C (dairyscience.info, "Calculator for determining the F
  // value of a thermal process").
  it('is the published 0.077 at 110 C', () => {
    expect(lethalRate(110, 121.11)).toBeCloseTo(0.077, 3);
  });

  // Computed from the definition to six decimals (R 4.2.2).
  it.each([
    [100, 0.007762],
    [110, 0.077625],
    [118, 0.489779],
    [121, 0.977237],
    [121.1, 1],
    [124, 1.949845],
    [132, 12.302688],
    [134, 19.498446],
    [137, 38.904514],
  ])('at %f C', (celsius, rate) => {
    expect(Math.abs(lethalRate(celsius) - rate)).toBeLessThan(5e-7);
  });
});

describe('F0', () => {
  // Published worked values, technical note "Fo value": 15 min at constant 111 C with reference 121 C is 1.5,
  // at 121 C is 15.
  it.each([
    [111, 1.5],
    [121, 15],
  ])('of 15 min at %f C, reference 121 C', (celsius, expected) => {
    const f0 = physicalOrFail(
      lethality({ minutes: [0, 15], celsius: [celsius, celsius], referenceCelsius: 121 }),
    );
    expect(f0.minutes).toBeCloseTo(expected, 12);
  });

  it('of three minutes at 134 C (the example of the docstring)', () => {
    expect(physicalOrFail(lethality({ minutes: [0, 3], celsius: [134, 134] })).minutes).toBeCloseTo(
      58.495338,
      6,
    );
  });

  // Computed by hand from the definition: trapezoid 4.504575136, where left rectangles would give
  // 4.496182827.
  it('of a short profile by the trapezoid', () => {
    const f0 = physicalOrFail(
      lethality({
        minutes: [0, 1, 2, 3, 4, 5, 6, 7, 8],
        celsius: [100, 110, 115, 120, 121.1, 121.5, 121.3, 115, 105],
      }),
    );
    expect(f0.minutes).toBeCloseTo(4.504575136, 9);
    expect(f0).toMatchObject({ readings: 9, longestStepMinutes: 1 });
    expect(f0.settings).toEqual({
      referenceCelsius: 121.1,
      zKelvin: 10,
      floorCelsius: null,
      rule: 'trapezoid',
    });
  });

  it('leaves out what is under a floor when one is set', () => {
    const input = { minutes: [0, 1, 2], celsius: [100, 121.1, 121.1] };
    expect(physicalOrFail(lethality({ ...input, floorCelsius: 110 })).minutes).toBeCloseTo(1.5, 12);
  });

  it('states too few readings, readings out of order and missing readings', () => {
    expect(lethality({ minutes: [0], celsius: [121] }).computable).toBe(false);
    expect(lethality({ minutes: [0, 0], celsius: [121, 121] }).computable).toBe(false);
    expect(lethality({ minutes: [0, 1], celsius: [121, Number.NaN] }).computable).toBe(false);
    expect(() => lethality({ minutes: [0, 1], celsius: [121] })).toThrow(RangeError);
  });

  it('adds up over a cut, and grows with temperature', () => {
    const readings = fc.array(fc.double({ min: 90, max: 140, noNaN: true }), { minLength: 3, maxLength: 30 });
    holds(
      fc.property(readings, fc.nat(), (celsius, cut) => {
        const minutes = celsius.map((_, i) => i / 2);
        const at = 1 + (cut % (celsius.length - 2));
        const f0 = (from: number, to: number) =>
          physicalOrFail(lethality({ minutes: minutes.slice(from, to), celsius: celsius.slice(from, to) }))
            .minutes;
        const whole = f0(0, celsius.length);
        expect(f0(0, at + 1) + f0(at, celsius.length)).toBeCloseTo(whole, 9);
        const hotter = physicalOrFail(lethality({ minutes, celsius: celsius.map((c) => c + 10) })).minutes;
        expect(hotter / whole).toBeCloseTo(10, 9);
      }),
    );
  });
});
