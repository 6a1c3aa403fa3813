import { type NarrowNumbers, narrowNumbers, numbersOf } from '../../narrow-numbers.ts';
import type { ProbeDrift } from './drift-schema.ts';

type Series = ProbeDrift['series'];

/** A series for drawing in a form that is small and quickly handed from thread to thread: its values have four digits. */
export interface PackedSeries extends Pick<Series, 'from' | 'left_out'> {
  day: NarrowNumbers;
  value: NarrowNumbers;
  adjusted: NarrowNumbers;
}

export function packSeries({ from, day, value, adjusted, left_out }: Series): PackedSeries {
  const narrow = (numbers: readonly number[]): NarrowNumbers => narrowNumbers(Float64Array.from(numbers));
  return { from, day: narrow(day), value: narrow(value), adjusted: narrow(adjusted), left_out };
}

/**
 * What {@link packSeries} was given. Each list is made anew whenever it is asked for, so that those of a fleet are never held at once: whoever goes through one asks for it
 * once.
 */
export function unpackSeries({ from, day, value, adjusted, left_out }: PackedSeries): Series {
  return {
    from,
    get day() {
      return numbersOf(day);
    },
    get value() {
      return numbersOf(value);
    },
    get adjusted() {
      return numbersOf(adjusted);
    },
    left_out,
  };
}
