import { median } from '../trend/check-series.ts';

export interface Fit {
  /** Sum of the absolute residuals. */
  cost: number;
  residuals: number[];
}

/** The constant that fits best in absolute deviation: the median. */
export function fitLevel(values: readonly number[]): Fit & { level: number } {
  const level = median(values);
  return { level, ...residualsFrom(values, () => level) };
}

/**
 * The line that fits best in absolute deviation, times strictly rising. Its cost is convex in the slope (with
 * the best intercept for each), so a golden-section search finds it.
 */
export function fitLine(
  times: readonly number[],
  values: readonly number[],
): Fit & { slope: number; intercept: number } {
  const centre = median(times);
  const interceptFor = (slope: number) => median(values.map((v, i) => v - slope * (times[i]! - centre)));
  const costOf = (slope: number) => {
    const intercept = interceptFor(slope);
    return values.reduce((sum, v, i) => sum + Math.abs(v - intercept - slope * (times[i]! - centre)), 0);
  };
  const bound = steepest(times, values);
  const slope = goldenSection(costOf, -bound, bound);
  const intercept = interceptFor(slope) - slope * centre;
  return { slope, intercept, ...residualsFrom(values, (i) => intercept + slope * times[i]!) };
}

/**
 * The two levels and the place of a single step that fit best in absolute deviation, with at least `fewest`
 * values on each side.
 */
export function fitStep(
  values: readonly number[],
  fewest: number,
): Fit & { lastBefore: number; before: number; after: number } {
  const upTo = costsUpTo(values);
  const from = costsUpTo(values.toReversed()).reverse();
  let lastBefore = fewest - 1;
  for (let at = fewest; at < values.length - fewest; at += 1) {
    if (upTo[at]! + from[at + 1]! < upTo[lastBefore]! + from[lastBefore + 1]!) lastBefore = at;
  }
  const before = median(values.slice(0, lastBefore + 1));
  const after = median(values.slice(lastBefore + 1));
  return { lastBefore, before, after, ...residualsFrom(values, (i) => (i <= lastBefore ? before : after)) };
}

function residualsFrom(values: readonly number[], fitted: (i: number) => number): Fit {
  const residuals = values.map((value, i) => value - fitted(i));
  return { residuals, cost: residuals.reduce((sum, r) => sum + Math.abs(r), 0) };
}

/**
 * Cost of the median for the first 1, 2, 3, ... values: upper half less lower half of a sorted list that
 * grows.
 */
function costsUpTo(values: readonly number[]): number[] {
  const sorted: number[] = [];
  return values.map((value) => {
    let at = sorted.length;
    while (at > 0 && sorted[at - 1]! > value) at -= 1;
    sorted.splice(at, 0, value);
    const half = sorted.length >> 1;
    let cost = 0;
    for (let i = 0; i < half; i += 1) cost += sorted[sorted.length - 1 - i]! - sorted[i]!;
    return cost;
  });
}

/**
 * A best line passes through two of the points, and no pair is steeper than the whole range over the smallest
 * gap in time.
 */
function steepest(times: readonly number[], values: readonly number[]): number {
  let gap = Number.POSITIVE_INFINITY;
  for (let i = 1; i < times.length; i += 1) gap = Math.min(gap, times[i]! - times[i - 1]!);
  return (Math.max(...values) - Math.min(...values)) / gap;
}

function goldenSection(f: (x: number) => number, low: number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [x, y] = [b - share * (b - a), a + share * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  for (let i = 0; i < 80; i += 1) {
    if (fx <= fy) {
      [b, y, fy] = [y, x, fx];
      x = b - share * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + share * (b - a);
      fy = f(y);
    }
  }
  return fx <= fy ? x : y;
}
