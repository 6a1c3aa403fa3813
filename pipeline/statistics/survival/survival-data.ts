/** Times to an event, possibly cut short, possibly watched only from some time on. */
export interface SurvivalData {
  /** Time from the start of the clock to the event or to the end of watching, any unit. */
  durations: readonly number[];
  /** 1 where the event happened at that time, 0 where watching ended without it (censored). */
  observed: readonly (0 | 1)[];
  /** Time on the clock from which the subject was watched (left truncation); default 0 for all. */
  entry?: readonly number[];
}

/**
 * Shared checks. A subject is at risk at t where entry < t <= duration, so that one censored at t still
 * counts at t.
 *
 * @throws RangeError if lengths differ, a flag isn't 0 or 1, a duration is negative or not finite, or an
 * entry is negative or not before its duration
 */
export function checkSurvivalData(caller: string, data: SurvivalData): void {
  const { durations, observed, entry } = data;
  if (observed.length !== durations.length || (entry !== undefined && entry.length !== durations.length)) {
    throw new RangeError(
      `${caller}: durations, observed and entry must have the same length, found ${durations.length}, ${observed.length} and ${entry?.length ?? 'none'}.`,
    );
  }
  for (const [i, duration] of durations.entries()) {
    if (!Number.isFinite(duration) || duration < 0) {
      throw new RangeError(`${caller}: durations[${i}] must be a number of 0 or more, found ${duration}.`);
    }
    if (observed[i] !== 0 && observed[i] !== 1) {
      throw new RangeError(`${caller}: observed[${i}] must be 0 or 1, found ${observed[i]}.`);
    }
    const from = entry?.[i];
    if (from !== undefined && from !== 0 && !(from > 0 && from < duration)) {
      throw new RangeError(
        `${caller}: entry[${i}] must be 0 or more and before its duration ${duration}, found ${from}.`,
      );
    }
  }
}

export interface RiskRow {
  time: number;
  atRisk: number;
  events: number;
}

/**
 * One row per time with an event, in rising order. An entry of 0 counts from the very start, so that an event
 * at time 0 has its risk set.
 */
export function riskTable(data: SurvivalData): RiskRow[] {
  const { durations, observed, entry } = data;
  const events = new Map<number, number>();
  for (const [i, duration] of durations.entries()) {
    if (observed[i] === 1) events.set(duration, (events.get(duration) ?? 0) + 1);
  }
  const ends = Float64Array.from(durations).sort();
  const entries = Float64Array.from((entry ?? []).filter((from) => from > 0)).sort();
  let left = 0;
  let entered = 0;
  return [...events]
    .sort((a, b) => a[0] - b[0])
    .map(([time, count]) => {
      while (left < ends.length && ends[left]! < time) left += 1;
      while (entered < entries.length && entries[entered]! < time) entered += 1;
      return { time, atRisk: durations.length - left - (entries.length - entered), events: count };
    });
}
