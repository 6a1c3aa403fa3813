import { medianSorted } from 'simple-statistics';

/** @throws RangeError if a value isn't finite; `caller` and `name` are named in the message */
export function checkFinite(caller: string, name: string, values: readonly number[]): void {
  for (const [i, value] of values.entries()) {
    if (!Number.isFinite(value))
      throw new RangeError(`${caller}: ${name}[${i}] must be a finite number, found ${value}.`);
  }
}

/** @throws RangeError if the two series differ in length or a number isn't finite */
export function checkTimesAndValues(
  caller: string,
  times: readonly number[],
  values: readonly number[],
): void {
  if (times.length !== values.length) {
    throw new RangeError(
      `${caller}: times and values must have the same length, found ${times.length} and ${values.length}.`,
    );
  }
  checkFinite(caller, 'times', times);
  checkFinite(caller, 'values', values);
}

/** Median of a non-empty list: the mean of the middle two where their number is even. Sorted as numbers of one type, which is faster than as a list. */
export function median(values: ArrayLike<number>): number {
  return medianOfSorted(Float64Array.from(values).sort());
}

/** Median of a non-empty list in rising order. */
export function medianOfSorted(sorted: ArrayLike<number>): number {
  return medianSorted(sorted as number[]);
}
