import { firstFrom } from '../../first-from.ts';
import type { ClassedCycle } from '../../transform/cycles/class-cycles.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** Stamps are rounded to the minute on both sides. */
const SLACK = 2 * MINUTE;
/** Work stands near the cycle log where a cycle follows it, or came before it, within this time (our choice). */
const NEAR = 30 * MINUTE;
/** A record with no cycle within this time of it lies in a gap of the log, where it would fit at every offset. */
const LOG_WITHIN = 24 * HOUR;

/**
 * The cycle log of one unit, as arrays of instants, ms, since those of all units of a site are held at once. Drain purges and what looks like one are part of the work: they follow it, and no pause
 * ends with them.
 */
export interface PauseLog {
  /** Starts of all cycles, in order. */
  starts: Float64Array;
  /** Cycles during which nobody can clean, in order of start: when each started, and when it ended. */
  began: Float64Array;
  ended: Float64Array;
}

/** Stretch of stated work, ms, and the log beside which it is set. */
export interface Stretch {
  begin: number;
  end: number;
  log: PauseLog;
}

/** How well a record stands beside the log: 0, a cycle ran; 1, it lies in a pause; 2, in a pause and a cycle follows or came before within 30 minutes. */
export type Fit = 0 | 1 | 2;

export function pauseLog(cycles: readonly ClassedCycle[]): PauseLog {
  const starts = new Float64Array(cycles.length);
  const began = new Float64Array(cycles.length);
  const ended = new Float64Array(cycles.length);
  let ran = 0;
  for (let at = 0; at < cycles.length; at++) {
    const { start, end, standing } = cycles[at]!;
    starts[at] = start;
    if (end === undefined || (standing !== 'completed' && standing !== 'abort')) continue;
    began[ran] = start;
    ended[ran++] = end;
  }
  return { starts, began: began.subarray(0, ran), ended: ended.subarray(0, ran) };
}

/** Whether the log has cycles with an end about the time of a record. */
export function logCovers({ end, log }: Stretch): boolean {
  const at = firstFrom(log.began, (start) => start >= end);
  const before = log.began[at - 1];
  const after = log.began[at];
  return (
    (before !== undefined && end - before <= LOG_WITHIN) || (after !== undefined && after - end <= LOG_WITHIN)
  );
}

/** @param offset how far the clock of the record runs ahead of the log's, minutes; taken off its times */
export function fitAt({ begin, end, log }: Stretch, offset: number): Fit {
  const from = begin - offset * MINUTE;
  const to = end - offset * MINUTE;
  const before = log.ended[firstFrom(log.began, (start) => start >= to - SLACK) - 1];
  if (before !== undefined && before > from + SLACK) return 0;
  const next = log.starts[firstFrom(log.starts, (start) => start >= to - SLACK)];
  const follows = next !== undefined && next - to <= NEAR;
  const followed = before !== undefined && from - before <= NEAR;
  return follows || followed ? 2 : 1;
}
