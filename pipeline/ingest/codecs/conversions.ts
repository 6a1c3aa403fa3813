import type { Measure } from '../../site/measures.ts';

/**
 * kPa in one of each unit of pressure, as multiplier and divisor so that decimal units lose no digit.
 * Source: NIST Special Publication 811 (2008), appendix B.8: pound-force per square inch 6.894757 kPa (from 0.45359237 kg x 9.80665 m/s2 /
 * 0.0254^2 m2), conventional millimetre of mercury 0.1333224 kPa and inch of mercury 3.386389 kPa, here with all their digits.
 */
const PRESSURE_UNITS: Readonly<Record<string, readonly [number, number]>> = {
  kPa: [1, 1],
  bar: [100, 1],
  mbar: [1, 10],
  psi: [6.894757293168, 1],
  mmHg: [0.133322387415, 1],
  inHg: [3.386388640341, 1],
};

/** Converted values are rounded to twelve significant digits: 1.1 mbar is 0.11 kPa, not 0.11000000000000001. */
export const rounded = (value: number): number => Number(value.toPrecision(12));

/** Degrees Celsius of a reading in C or F. */
export function toCelsius(measure: Measure): (value: number) => number {
  return measure === 'F' ? (value) => rounded(((value - 32) * 5) / 9) : (value) => value;
}

/**
 * Absolute kPa of a pressure reading; undefined where a reading of vacuum is negative, since then it isn't told what it is counted from.
 *
 * @param barometricKpa mean barometric pressure of the site, kPa: added to gauge readings; vacuum readings are taken from it
 */
export function toKilopascal(measure: Measure, barometricKpa: number): (value: number) => number | undefined {
  const [unit = '', from] = measure.split(' ');
  const [times, by] = PRESSURE_UNITS[unit]!;
  if (from === 'gauge') return (value) => rounded(barometricKpa + (value * times) / by);
  if (from === 'vacuum')
    return (value) => (value < 0 ? undefined : rounded(barometricKpa - (value * times) / by));
  if (times === 1 && by === 1) return (value) => value;
  return (value) => rounded((value * times) / by);
}

/** kPa/min of a leak rate. A rise given over ten minutes is divided by ten. */
export function toKilopascalPerMinute(measure: Measure): (value: number) => number {
  const [unit = ''] = measure.split(' ');
  const [times, by] = PRESSURE_UNITS[unit]!;
  const minutes = measure.endsWith('per 10 min') ? 10 : 1;
  if (times === 1 && by * minutes === 1) return (value) => value;
  return (value) => rounded((value * times) / (by * minutes));
}
