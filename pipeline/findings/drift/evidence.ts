/**
 * How much must speak for a change before it is called. Gains are falls in the weighted sum of squares, in units of the variance that a slow movement
 * sees (noise variance x (1 + phi)/(1 - phi)); twice a log likelihood ratio for normal noise. The values come from the calibration
 * (`npm run calibrate:drift`), where they hold the false alarms to the goal; they are no site's taste and can't be set.
 */
export const EVIDENCE = {
  /** Gain of the best slope over a constant level. */
  moving: 17,
  /** ... and over the best step. */
  slopeMargin: 2.5,
  /** Gain of the best step over a constant level, and over the best slope. */
  step: 17,
  stepMargin: 1,
  /** Smallest step and smallest rise, in noise standard deviations of a day's value. */
  leastStep: 1.2,
  leastRise: 1.2,
  valuesAfterChange: 5,
  valuesAfterStep: 10,
  /** A slope may have begun before the first value where the series is so long, days. */
  daysOfWholeSlope: 90,
} as const;
