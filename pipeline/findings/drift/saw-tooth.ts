import type { CleaningTask } from '../../site/vocabulary.ts';
import type { DayValue } from './day-values.ts';
import { robustSpread } from './robust.ts';

export interface SawTooth {
  task: CleaningTask;
  /** Climb per day between cleanings, on the probe's scale; negative where the teeth hang down. */
  slope: number;
  slopeError: number;
  falls: number;
  /** Mean change at a cleaning. */
  fall: number;
  /** Days since the last cleaning of the task, by position of the value; null before the first. */
  since: (number | null)[];
}

const DAY_MS = 86_400_000;
const LEAST_FALLS = 4;
const SAME_SIGN = 0.75;
const LEAST_T = 4;
/** Smallest mean fall, in noise standard deviations. */
const LEAST_FALL = 1.2;
const SHORTEST_TOOTH_DAYS = 3;
const NEAR_DAYS = 7;
const NEAR_VALUES = 2;

/**
 * Recognises a series that climbs between cleanings and falls back at them, which argues for cleaning (and its interval), where a drift argues for a repair.
 *
 * For each task that was done at least five times in the era: the change at each cleaning (means of the two values on either side) must be large against its own
 * scatter and the noise, of one sign at three in four cleanings or more, and the values between cleanings must climb the other way. Of several tasks the one with the
 * clearest falls is named. A task that is done nearly each day leaves no teeth, so that only the cleanings after three days or more without one are asked.
 */
export function findSawTooth(
  values: readonly DayValue[],
  cleanings: ReadonlyMap<CleaningTask, readonly number[]>,
): SawTooth | null {
  const steps = values.slice(1).map((of, i) => of.y - values[i]!.y);
  const noise = (robustSpread(steps, 0) ?? 0) / Math.SQRT2;
  if (!(noise > 0)) return null;
  let best: { tooth: SawTooth; t: number } | null = null;
  for (const [task, times] of cleanings) {
    if (times.length <= LEAST_FALLS) continue;
    const found = teethOf(values, times, noise);
    if (found && (!best || found.t > best.t))
      best = { t: found.t, tooth: { task, ...found.tooth, since: daysSince(values, times) } };
  }
  return best?.tooth ?? null;
}

function teethOf(
  values: readonly DayValue[],
  times: readonly number[],
  noise: number,
): { tooth: Omit<SawTooth, 'task' | 'since'>; t: number } | null {
  const falls: number[] = [];
  let [sxx, sxy] = [0, 0];
  let index = values.findIndex((of) => of.at >= times[0]!);
  if (index < 0) return null;
  for (let i = 1; i <= times.length; i++) {
    const end = times[i] ?? Number.POSITIVE_INFINITY;
    const first = index;
    while (index < values.length && values[index]!.at < end) index++;
    if (index === first) continue;
    const start = times[i - 1]!;
    let [mx, my] = [0, 0];
    for (let j = first; j < index; j++) {
      mx += (values[j]!.at - start) / DAY_MS;
      my += values[j]!.y;
    }
    mx /= index - first;
    my /= index - first;
    for (let j = first; j < index; j++) {
      const x = (values[j]!.at - start) / DAY_MS - mx;
      sxx += x ** 2;
      sxy += x * (values[j]!.y - my);
    }
    if (end - times[i - 1]! < SHORTEST_TOOTH_DAYS * DAY_MS) continue;
    const next = times[i + 1] ?? Number.POSITIVE_INFINITY;
    const near = NEAR_DAYS * DAY_MS;
    const before = values
      .slice(Math.max(first, index - NEAR_VALUES), index)
      .filter((of) => end - of.at <= near);
    const after = values
      .slice(index, index + NEAR_VALUES)
      .filter((of) => of.at - end <= near && of.at < next);
    if (before.length > 0 && after.length > 0)
      falls.push(mean(after.map((of) => of.y)) - mean(before.map((of) => of.y)));
  }
  if (falls.length < LEAST_FALLS || !(sxx > 0)) return null;
  const fall = mean(falls);
  const scatter = Math.sqrt(falls.reduce((sum, of) => sum + (of - fall) ** 2, 0) / (falls.length - 1));
  const t = Math.abs(fall) / (Math.max(scatter, noise) / Math.sqrt(falls.length));
  const sameSign = falls.filter((of) => Math.sign(of) === Math.sign(fall)).length / falls.length;
  const slope = sxy / sxx;
  const climbs = Math.abs(slope) * Math.sqrt(sxx) >= LEAST_T * noise && Math.sign(slope) === -Math.sign(fall);
  const clear = t >= LEAST_T && sameSign >= SAME_SIGN && Math.abs(fall) >= LEAST_FALL * noise;
  return climbs && clear
    ? { tooth: { slope, slopeError: noise / Math.sqrt(sxx), falls: falls.length, fall }, t }
    : null;
}

function daysSince(values: readonly DayValue[], times: readonly number[]): (number | null)[] {
  let last = -1;
  return values.map((of) => {
    while (last + 1 < times.length && times[last + 1]! <= of.at) last++;
    return last < 0 ? null : (of.at - times[last]!) / DAY_MS;
  });
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
