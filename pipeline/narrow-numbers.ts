/** Numbers in as few bytes as hold them all exactly: each is its value over the scale, and `none` stands for no number. */
export interface NarrowNumbers {
  values: Int8Array | Int16Array | Int32Array | Float64Array;
  scale: number;
  none: number;
}

const INTEGERS = [
  [Int8Array, 2 ** 7],
  [Int16Array, 2 ** 15],
  [Int32Array, 2 ** 31],
] as const;

/** Powers of ten by which decimal fractions are tried as whole numbers. */
const SCALES = [1, 10, 100, 1e3, 1e4, 1e5, 1e6];

/**
 * The same values in the narrowest numbers that hold them: whole numbers, or decimal fractions as whole numbers over a power of ten, where each is got back exactly; elsewhere they stay
 * as they are. NaN stands for no number.
 */
export function narrowNumbers(values: Float64Array): NarrowNumbers {
  for (const scale of SCALES) {
    const most = largestWhole(values, scale);
    if (most === undefined) continue;
    const type = INTEGERS.find(([, bound]) => most < bound);
    if (!type) break;
    const [Integers, bound] = type;
    const whole = values.map((value) => (Number.isNaN(value) ? -bound : Math.round(value * scale)));
    return { values: new Integers(whole), scale, none: -bound };
  }
  return { values, scale: 1, none: Number.NaN };
}

/** The number at a place; NaN where there is none. */
export function numberAt({ values, scale, none }: NarrowNumbers, index: number): number {
  const value = values[index]!;
  if (value === none) return Number.NaN;
  return scale === 1 ? value : value / scale;
}

/** All of them. */
export const numbersOf = (narrow: NarrowNumbers): number[] =>
  Array.from(narrow.values, (_, index) => numberAt(narrow, index));

/** The largest of the whole numbers that are the values over a scale; undefined where one of them is not got back from its own. */
function largestWhole(values: Float64Array, scale: number): number | undefined {
  let most = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    const whole = Math.round(value * scale);
    if (whole / scale !== value || Object.is(value, -0)) return undefined;
    most = Math.max(most, Math.abs(whole));
  }
  return most;
}
