/**
 * One unbroken series: entry i of each array belongs to the same step (day) i. All arrays have one length, of
 * at least 1.
 */
export interface ShiftSegment {
  /** 0 or 1, or a dose of at least 0, which held at this step. */
  exposure: ArrayLike<number>;
  /** Events at this step; at most `trials` in the `events-of-trials` design. */
  events: ArrayLike<number>;
  /**
   * Chances at this step: 1 for a day with a test, the number of cycles for a rate, 0 for a step that doesn't
   * count.
   */
  trials: ArrayLike<number>;
  /**
   * Number of the stratum within this segment, a whole number from 0; events are compared within a stratum. Left out where
   * the segment is one stratum.
   */
  stratum?: ArrayLike<number>;
}

/**
 * `events-of-trials`: each trial has at most one event (hypergeometric variance). `events-over-time`: Poisson
 * events.
 */
export type ShiftDesign = 'events-of-trials' | 'events-over-time';
