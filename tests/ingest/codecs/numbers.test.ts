import { describe, expect, it } from 'vitest';
import {
  toCelsius,
  toKilopascal,
  toKilopascalPerMinute,
} from '../../../pipeline/ingest/codecs/conversions.ts';
import { decimalReader } from '../../../pipeline/ingest/codecs/decimal.ts';
import { durationReader } from '../../../pipeline/ingest/codecs/duration.ts';
import type { Measure } from '../../../pipeline/site/measures.ts';

describe('decimals', () => {
  it.each([
    ['.', '12', 12],
    ['.', '-0.5', -0.5],
    ['.', '.5', 0.5],
    ['.', '5.', 5],
    ['.', '+3', 3],
    ['.', '\u22123.5', -3.5],
    ['.', '1.5e3', 1500],
    ['.', '1,234.5', 1234.5],
    ['.', '1,234,567', 1234567],
    ['.', "1'234.5", 1234.5],
    ['.', '12 345', 12345],
    [',', '12,5', 12.5],
    [',', '1.234,5', 1234.5],
    [',', '1.234.567', 1234567],
    [',', '1\u202f234,5', 1234.5],
    [',', '1,5E-2', 0.015],
    [',', '007', 7],
  ] as const)('with %s reads %s', (mark, text, value) => {
    expect(decimalReader(mark)(text)).toBe(value);
  });

  it.each([
    ['.', '1,234'],
    [',', '1.234'],
    ['.', '0,13'],
    [',', '0.13'],
    ['.', '1,23,456'],
    ['.', '1 23'],
    ['.', '1.2.3'],
    ['.', '--1'],
    ['.', '<0.1'],
    ['.', '134 C'],
    ['.', 'NaN'],
    ['.', 'Infinity'],
    ['.', '1e999'],
    ['.', '0x10'],
    ['.', ''],
    ['.', '.'],
    ['.', "1'234 567"],
  ] as const)('with %s refuses %s', (mark, text) => {
    expect(decimalReader(mark)(text)).toBeUndefined();
  });
});

describe('conversions', () => {
  // NIST Special Publication 811 (2008), appendix B.8, as printed there with seven digits.
  it.each([
    ['psi absolute', 6.894757],
    ['mmHg absolute', 0.1333224],
    ['inHg absolute', 3.386389],
    ['bar absolute', 100],
    ['mbar absolute', 0.1],
    ['kPa absolute', 1],
  ] as [Measure, number][])('one %s is %f kPa', (measure, kilopascal) => {
    expect(toKilopascal(measure, 101.325)(1)).toBeCloseTo(kilopascal, 6);
  });

  it('adds the barometric pressure to gauge readings and takes vacuum readings from it', () => {
    expect(toKilopascal('bar gauge', 101.325)(2.1)).toBeCloseTo(311.325, 9);
    expect(toKilopascal('kPa gauge', 95)(-80)).toBe(15);
    // 28 inHg of vacuum at the standard atmosphere of 101.325 kPa: 29.9213 - 28 = 1.9213 inHg absolute.
    expect(toKilopascal('inHg vacuum', 101.325)(28)).toBeCloseTo(1.9213 * 3.386389, 3);
    expect(toKilopascal('mbar vacuum', 101.325)(-900)).toBeUndefined();
  });

  // Fixed points by definition: 212 F = 100 C, 32 F = 0 C; 275 F is a usual exposure temperature, 135 C.
  it('converts degrees Fahrenheit', () => {
    expect(toCelsius('F')(212)).toBe(100);
    expect(toCelsius('F')(32)).toBe(0);
    expect(toCelsius('F')(275)).toBe(135);
    expect(toCelsius('C')(134.2)).toBe(134.2);
  });

  // EN 285 limit: 0.13 kPa/min = 1.3 mbar/min = 13 mbar in 10 min; about 0.975 mmHg/min, 0.019 psi/min, 0.038 inHg/min (derived).
  it.each([
    ['kPa per min', 0.13, 12],
    ['mbar per min', 1.3, 12],
    ['mbar per 10 min', 13, 12],
    ['kPa per 10 min', 1.3, 12],
    ['mmHg per min', 0.975, 3],
    ['mmHg per 10 min', 9.75, 3],
    ['psi per min', 0.019, 2],
    ['psi per 10 min', 0.1886, 3],
    ['inHg per min', 0.0384, 3],
    ['inHg per 10 min', 0.384, 3],
  ] as [Measure, number, number][])('reads the leak limit in %s', (measure, value, digits) => {
    expect(toKilopascalPerMinute(measure)(value)).toBeCloseTo(0.13, digits);
  });
});

describe('lengths of time', () => {
  const point = decimalReader('.');
  it.each([
    ['s', '95.5', 95.5],
    ['min', '2.5', 150],
    ['mm:ss', '2:05', 125],
    ['mm:ss', '75:00', 4500],
    ['mm:ss', '02:05.5', 125.5],
    ['hh:mm:ss', '1:02:05', 3725],
    ['hh:mm:ss', '00:00:09', 9],
  ] as [Measure, string, number][])('%s reads %s', (measure, text, seconds) => {
    expect(durationReader(measure, point)(text)).toBe(seconds);
  });

  it.each([
    ['mm:ss', '95'],
    ['mm:ss', '1:02:05'],
    ['mm:ss', '2:60'],
    ['mm:ss', '2:-5'],
    ['hh:mm:ss', '1:60:00'],
    ['hh:mm:ss', '2:05'],
    ['hh:mm:ss', '::'],
    ['min', '2:05'],
  ] as [Measure, string][])('%s refuses %s', (measure, text) => {
    expect(durationReader(measure, point)(text)).toBeUndefined();
  });
});
