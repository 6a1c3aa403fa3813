/** See `EVIDENCE`. */
export interface Evidence {
  moving: number;
  slopeMargin: number;
  slopeShare: number;
  smallStep: number;
  valuesOfSmallStep: number;
  smallMargin: number;
  smallStepMargin: number;
  twoStepsMargin: number;
  step: number;
  stepMargin: number;
  leastStep: number;
  leastRise: number;
  leastRate: number;
  leastRateAlone: number;
  leastMeasured: number;
  profileBound: number;
  valuesAfterKnot: number;
  daysAfterKnot: number;
  valuesAfterStep: number;
  valuesOfNewLevel: number;
  daysOfWholeSlope: number;
}

/**
 * How much must speak for a change before it is called. Gains are falls in the weighted sum of squares, in units of the variance that a slow movement
 * sees (noise variance x (1 + phi)/(1 - phi)); twice a log likelihood ratio for normal noise. The values were chosen
 * on simulated sites with seeds below 200 that were looked at every day or every other day, so that false calls stay under one in twelve unit-years; what is reported (`npm run calibrate:drift`) is measured on
 * others. They are no site's taste and can't be set.
 *
 * What they cost, where they were last chosen (31 sites without drift and 17 with, 357 quiet unit-years, 102 drifts, a look every other day): nearly all false calls were of several probes together. A rise of 1.2
 * instead of 1.6, and a gain together of 20 beyond 3 by chance instead of 22 beyond 2, gave one false call in 13 unit-years instead of one in 19, at the same median lead (54 % of the drift), the same 98
 * drifts found, and the same 7 of 295 steps called a movement. Under earlier thresholds, had all calls
 * to stand for a value (`standing.ts`), the lead would have been 48 instead of 51.5 %; so only what a probe says by itself has to stand, and its slope may then be nearer to a step, 3.5 instead of 5.
 */
export const EVIDENCE: Evidence = {
  /** Gain of the best slope over a constant level. */
  moving: 16,
  /** ... and over the best step, at least, and as a share of the slope's gain. */
  slopeMargin: 3.5,
  slopeShare: 0.03,
  /** A step is small under so many noise standard deviations with so many values after it; margins of a slope over a small step and of a small step over a slope. */
  smallStep: 0,
  valuesOfSmallStep: 6,
  smallMargin: -2,
  smallStepMargin: 8,
  /** Gain of two steps over the best slope, from which on two steps are the better reading. */
  twoStepsMargin: 12,
  /** Gain of the best step over a constant level, and over the best slope. */
  step: 14,
  stepMargin: 3,
  /** Smallest step and smallest rise, in noise standard deviations of a day's value. */
  leastStep: 1.2,
  leastRise: 1.6,
  /** Slowest slope that counts, in noise standard deviations a day: 4 of them in nine months; faster where season and supply are read from one other unit, or can't be taken out. */
  leastRate: 0.015,
  leastRateAlone: 0.025,
  /** Share of the slope that the values as measured must show, before the site's movement was taken out. */
  leastMeasured: 0.4,
  /** What a rate or a crossing may lose against the best and still be in the interval. */
  profileBound: 4.5,
  /** Fewest values on a slope, and days since its beginning; on a new level before it is called one, and before it is judged. */
  valuesAfterKnot: 6,
  daysAfterKnot: 9,
  valuesAfterStep: 5,
  valuesOfNewLevel: 10,
  /** A slope may have begun before the first value where the series is so long, days. */
  daysOfWholeSlope: 90,
};

/**
 * The same for a probe beside which others of the unit move as one of the causes has it: what they gain together counts (`corroboration.ts`), so that its own gain may be small.
 */
export const CORROBORATED: Evidence = {
  ...EVIDENCE,
  moving: 13,
  smallStep: 2.4,
  smallMargin: -3,
  leastMeasured: 0.25,
};

/**
 * For a probe that can't be compared with another unit: season and supply move it as a drift would. Where this was chosen, the usual thresholds gave 1.5 false calls in a unit and
 * year and found 22 of 24 drifts; this one gave one in nine years and found 8. A watch that calls each year what is none is soon ignored.
 */
export const ALONE: Evidence = { ...EVIDENCE, moving: 45 };
