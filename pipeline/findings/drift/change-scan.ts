/** Values of one series in order of time, with weights (1 is usual). */
export interface WeightedSeries {
  /** Days. */
  t: readonly number[];
  y: readonly number[];
  w: readonly number[];
}

/** Level until `at`, then another: the value at position `index` is the first of the new level. */
export interface StepFit {
  index: number;
  before: number;
  after: number;
  sse: number;
}

/** Level until `knot` (days), then a straight line that starts there. */
export interface SlopeFit {
  /** Position of the first value after the knot. */
  index: number;
  knot: number;
  level: number;
  /** Per day. */
  slope: number;
  sse: number;
  /** Variances and covariance of level and slope, in units of the variance of a value of weight 1. */
  levelVariance: number;
  slopeVariance: number;
  covariance: number;
}

export interface ChangeScan {
  constant: { level: number; sse: number };
  /** Best fitting step and slope; null where the series leaves no room for one. */
  step: StepFit | null;
  slope: SlopeFit | null;
  /** All slopes, one for each place of the knot; empty unless asked for. */
  slopes: SlopeFit[];
}

export interface ScanRoom {
  /** Fewest values before a change, after a step and after the knot of a slope; and fewest days since the knot. */
  before: number;
  afterStep: number;
  afterKnot: number;
  daysAfterKnot: number;
  /** Whether a straight line over the whole series counts as a slope that began at or before its first value. */
  wholeSlope: boolean;
}

/**
 * Fits, by weighted least squares, no change, a step at each place and a slope from each place, with the best of each. Level before, size and place of the change are
 * all estimated, so that what is gained in the sum of squares carries the uncertainty of the baseline.
 *
 * @param keepSlopes whether to give the slopes from all places, for intervals
 *
 * Assumes at most one change; cut the series at known ones. A time per fit that does not depend on the length comes from running sums.
 *
 * Source: two-phase regression with a continuous join: Hinkley, Biometrika 56 (1969) 495-504; the search over places as in Bai and Perron, Econometrica 66
 * (1998) 47-78, for one break.
 */
export function scanChanges(series: WeightedSeries, room: ScanRoom, keepSlopes = false): ChangeScan {
  const { t, y, w } = series;
  const n = y.length;
  const end = t[n - 1] ?? 0;
  const shift = y[0] ?? 0;
  let [W, Y, YY] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const value = y[i]! - shift;
    W += w[i]!;
    Y += w[i]! * value;
    YY += w[i]! * value * value;
  }
  const total = YY - (Y * Y) / W;
  const constant = { level: shift + Y / W, sse: Math.max(0, total) };
  let step: StepFit | null = null;
  let slope: SlopeFit | null = null;
  const slopes: SlopeFit[] = [];

  // Sums over the values from position k on, with time counted from the end.
  let [w1, t1, tt, y1, ty] = [0, 0, 0, 0, 0];
  for (let k = n - 1; k >= 0; k--) {
    const time = t[k]! - end;
    const value = y[k]! - shift;
    w1 += w[k]!;
    t1 += w[k]! * time;
    tt += w[k]! * time * time;
    y1 += w[k]! * value;
    ty += w[k]! * time * value;
    const after = n - k;
    if (k >= room.before && after >= room.afterStep) {
      const before = (Y - y1) / (W - w1);
      const sse = YY - (y1 * y1) / w1 - ((Y - y1) * (Y - y1)) / (W - w1);
      if (!step || sse < step.sse)
        step = { index: k, before: shift + before, after: shift + y1 / w1, sse: Math.max(0, sse) };
    }
    // The knot lies at the value before, so that the value at k is the first off the level.
    const whole = k === 0;
    if (after < room.afterKnot) continue;
    if (whole ? !room.wholeSlope : k < room.before) continue;
    const knot = whole ? t[0]! - end : t[k - 1]! - end;
    if (-knot < room.daysAfterKnot) continue;
    const sx = t1 - knot * w1;
    const sxx = tt - 2 * knot * t1 + knot * knot * w1;
    const sxy = ty - knot * y1;
    const spread = sxx - (sx * sx) / W;
    if (!(spread > 1e-9)) continue;
    const rate = (sxy - (sx * Y) / W) / spread;
    const sse = Math.max(0, total - rate * rate * spread);
    if (slope && sse >= slope.sse && !keepSlopes) continue;
    const fit: SlopeFit = {
      index: k,
      knot: knot + end,
      level: shift + (Y - rate * sx) / W,
      slope: rate,
      sse,
      levelVariance: sxx / (W * spread),
      slopeVariance: 1 / spread,
      covariance: -sx / (W * spread),
    };
    if (keepSlopes) slopes.push(fit);
    if (!slope || sse < slope.sse) slope = fit;
  }
  return { constant, step, slope, slopes };
}
