/** Range of points that set the centre line and the limits: 0-based positions, both ends included. */
export interface BaselineRange {
  first: number;
  last: number;
}

/** What the limits rest on, so that a chart can print it. */
export interface BaselineUsed extends BaselineRange {
  /**
   * True where the caller named the range; false where all points were used, so that a signal also moved its
   * own limits.
   */
  frozen: boolean;
  /** Points of the range that had a value. */
  points: number;
}

/** One plotted point. Limits are clipped to what the quantity can be. */
export interface ChartPoint {
  /** 0-based position in the input. */
  index: number;
  /** Null where the input had nothing to plot; `missing` then says why. */
  value: number | null;
  centre: number;
  lower: number | null;
  upper: number | null;
  /**
   * Standard deviation of the plotted value in control (so that limits before clipping are centre +- 3
   * sigma).
   */
  sigma: number | null;
  /** (value - centre) / sigma: what the run rules read. */
  z: number | null;
  missing?: string;
}

/**
 * Checks a baseline range against the length of the series; without one the whole series is the baseline.
 *
 * @throws RangeError if the range isn't made of whole positions inside the series, in order.
 */
export function resolveBaseline(
  caller: string,
  length: number,
  baseline: BaselineRange | undefined,
): BaselineRange & { frozen: boolean } {
  if (baseline === undefined) return { first: 0, last: length - 1, frozen: false };
  const { first, last } = baseline;
  if (!Number.isInteger(first) || !Number.isInteger(last) || first < 0 || last < first || last >= length) {
    throw new RangeError(
      `${caller}: baseline must be whole positions 0 <= first <= last < ${length}, found ${first} to ${last}.`,
    );
  }
  return { first, last, frozen: true };
}

/**
 * Divisor that turns a mean moving range of two into a standard deviation (E of the range of two normal
 * values; ASTM table value, three decimals).
 */
export const D2_OF_TWO = 1.128;

/**
 * Mean absolute difference between neighbouring values from `first` to `last`. A missing value breaks the
 * chain: no range is taken across it.
 */
export function meanMovingRange(
  values: readonly (number | null)[],
  first: number,
  last: number,
): { mean: number | null; ranges: number } {
  let sum = 0;
  let ranges = 0;
  for (let i = first + 1; i <= last; i += 1) {
    const now = values[i] ?? null;
    const before = values[i - 1] ?? null;
    if (now === null || before === null) continue;
    sum += Math.abs(now - before);
    ranges += 1;
  }
  return { mean: ranges === 0 ? null : sum / ranges, ranges };
}
