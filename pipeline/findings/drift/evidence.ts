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
 * on simulated sites with seeds below 100, so that false calls stay under one in twelve unit-years; what is reported (`npm run calibrate:drift`) is measured on others, from
 * seed 2001 on. They are no site's taste and can't be set. Lower thresholds find drifts a little earlier at a high price: where they were chosen (24 sites of each kind), a gain of
 * 14 instead of 18 for several probes together moved the median lead from 47 to 50 % of the drift, and false calls from one in 15 unit-years to one in 7.
 * Thresholds for step against slope moved it by less than one percent.
 */
export const EVIDENCE: Evidence = {
  /** Gain of the best slope over a constant level. */
  moving: 16,
  /** ... and over the best step, at least, and as a share of the slope's gain. */
  slopeMargin: 5,
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
  leastRise: 1.2,
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
  moving: 7,
  smallStep: 2.4,
  smallMargin: -3,
  leastMeasured: 0.25,
};

/**
 * For a probe that can't be compared with another unit: season and supply move it as a drift would. Where this was chosen, the usual thresholds gave 1.5 false calls in a unit and
 * year and found 22 of 24 drifts; this one gave one in nine years and found 8. A watch that calls each year what is none is soon ignored.
 */
export const ALONE: Evidence = { ...EVIDENCE, moving: 45 };
