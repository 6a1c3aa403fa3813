/** Numbers in as few bytes as hold them all exactly: each is its value times the step over the scale, and `none` stands for no number. */
export interface NarrowNumbers {
  values: Int8Array | Int16Array | Int32Array | Float64Array;
  step: number;
  scale: number;
  none: number;
}

const INTEGERS = [
  [Int8Array, 2 ** 7],
  [Int16Array, 2 ** 15],
  [Int32Array, 2 ** 31],
] as const;

/** Steps and scales that are tried in turn: whole numbers, instants in whole minutes or seconds, decimal fractions. */
const UNITS = [
  [1, 1],
  [60_000, 1],
  [1000, 1],
  ...[10, 100, 1e3, 1e4, 1e5, 1e6].map((scale) => [1, scale] as const),
] as const;

/**
 * The same values in the narrowest numbers that hold them: whole numbers, or instants and decimal fractions as whole numbers of a step, where each is got back exactly; elsewhere they stay
 * as they are. NaN stands for no number.
 */
export function narrowNumbers(values: Float64Array): NarrowNumbers {
  for (const [step, scale] of UNITS) {
    const most = largestWhole(values, step, scale);
    if (most === undefined) continue;
    const type = INTEGERS.find(([, bound]) => most < bound);
    // What is too large as it is may do in minutes or seconds; in finer steps it only grows.
    if (!type && scale > 1) break;
    if (!type) continue;
    const [Integers, bound] = type;
    const whole = values.map((value) => (Number.isNaN(value) ? -bound : Math.round((value * scale) / step)));
    return { values: new Integers(whole), step, scale, none: -bound };
  }
  return { values, step: 1, scale: 1, none: Number.NaN };
}

/** The number at a place; NaN where there is none. */
export function numberAt({ values, step, scale, none }: NarrowNumbers, index: number): number {
  const value = values[index]!;
  if (value === none) return Number.NaN;
  return scale === 1 ? value * step : value / scale;
}

/** All of them. */
export const numbersOf = (narrow: NarrowNumbers): number[] =>
  Array.from(narrow.values, (_, index) => numberAt(narrow, index));

/** The largest of the whole numbers that stand for the values; undefined where one of them is not got back from its own. */
function largestWhole(values: Float64Array, step: number, scale: number): number | undefined {
  let most = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    const whole = Math.round((value * scale) / step);
    if ((whole * step) / scale !== value || Object.is(value, -0)) return undefined;
    most = Math.max(most, Math.abs(whole));
  }
  return most;
}
