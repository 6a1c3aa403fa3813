/** Distances from the centre line in standard deviations, in time order; null where a period has no point. */
export type ZSeries = readonly (number | null)[];

/** One firing of a rule. Positions are 0-based in the input series. */
export interface Signal {
  /** Newest point of the pattern: where the rule fires. */
  index: number;
  /** Oldest plotted point of the pattern. */
  from: number;
  side: 'high' | 'low' | 'both';
}

/**
 * A rule reads the series and returns every firing, in time order; it goes on after a signal and never
 * restarts.
 */
export type RunRule = (z: ZSeries) => Signal[];

interface PlottedPoint {
  index: number;
  z: number;
}

/**
 * The plotted points with their positions. A null is no point: windows and runs count plotted points and
 * reach across it.
 *
 * @throws RangeError if a value is neither a number nor null (NaN included)
 */
export function plottedPoints(z: ZSeries): PlottedPoint[] {
  const points: PlottedPoint[] = [];
  for (const [index, value] of z.entries()) {
    if (value === null) continue;
    if (typeof value !== 'number' || Number.isNaN(value)) {
      throw new RangeError(`run rules: z[${index}] must be a number or null, found ${value}.`);
    }
    points.push({ index, z: value });
  }
  return points;
}
