import type { ShiftDesign, ShiftSegment } from './shift-segment.ts';

/**
 * Mantel-Haenszel excess and its null variance for each shift of one segment; entry 0 is the record as it
 * stands.
 */
export interface ShiftScores {
  excess: Float64Array;
  variance: Float64Array;
}

/**
 * Scores of all shifts of one segment: exposure moved later by 0 .. n - 1 steps, wrapping round.
 *
 * In a stratum with N trials and m events, with S1 and S2 the sums over trials of exposure and its square:
 * expected = m S1 / N; variance = m (N - m) / (N (N - 1)) (S2 - S1^2 / N) for events of trials
 * (hypergeometric where exposure is 0 or 1), m (S2 / N - (S1 / N)^2) for events over time. Sums run over
 * spells of constant exposure by prefix sums, and only over strata with events.
 *
 * @returns undefined where the segment has no events or a constant exposure: nothing changes with a shift
 */
export function shiftScores(segment: ShiftSegment, design: ShiftDesign): ShiftScores | undefined {
  checkSegment(segment, design);
  const n = segment.exposure.length;
  const spells = spellsOf(segment.exposure);
  if (spells.length === 0 || (spells.length === 1 && spells[0]!.end - spells[0]!.start === n))
    return undefined;
  const strata = strataWithEvents(segment);
  if (strata.length === 0) return undefined;
  const events = prefixTwice(segment.events);
  const excess = new Float64Array(n);
  const variance = new Float64Array(n);
  for (const stratum of strata) {
    const { trials: all, events: m, prefix } = stratum;
    const spread =
      design === 'events-over-time' ? m / all : all > 1 ? (m * (all - m)) / (all * (all - 1)) : 0;
    for (let shift = 0; shift < n; shift++) {
      let [first, second] = [0, 0];
      for (const { start, end, dose } of spells) {
        const trials = prefix[end + shift]! - prefix[start + shift]!;
        first += dose * trials;
        second += dose * dose * trials;
      }
      excess[shift]! -= (m * first) / all;
      variance[shift]! += spread * Math.max(0, second - (first * first) / all);
    }
  }
  for (let shift = 0; shift < n; shift++) {
    for (const { start, end, dose } of spells) {
      excess[shift]! += dose * (events[end + shift]! - events[start + shift]!);
    }
  }
  return { excess, variance };
}

interface Spell {
  start: number;
  /** First step after the spell. */
  end: number;
  dose: number;
}

/** Spells of constant exposure above 0, in order. */
function spellsOf(exposure: ArrayLike<number>): Spell[] {
  const spells: Spell[] = [];
  for (let i = 0; i < exposure.length; i++) {
    const dose = exposure[i]!;
    const last = spells.at(-1);
    if (dose === 0) continue;
    if (last !== undefined && last.end === i && last.dose === dose) last.end = i + 1;
    else spells.push({ start: i, end: i + 1, dose });
  }
  return spells;
}

/**
 * Sums of the first k values of the series written down twice, so that a spell that wraps round stays one
 * stretch.
 */
function prefixTwice(values: ArrayLike<number>): Float64Array {
  const n = values.length;
  const prefix = new Float64Array(2 * n + 1);
  for (let i = 0; i < n; i++) prefix[i + 1] = prefix[i]! + values[i]!;
  for (let i = 0; i < n; i++) prefix[n + i + 1] = prefix[n + i]! + values[i]!;
  return prefix;
}

function strataWithEvents({ events, trials, stratum }: ShiftSegment) {
  const found = new Map<number, { trials: number; events: number; own: Float64Array }>();
  for (let i = 0; i < events.length; i++) {
    const name = stratum?.[i] ?? 0;
    const sums = found.get(name) ?? { trials: 0, events: 0, own: new Float64Array(events.length) };
    sums.trials += trials[i]!;
    sums.events += events[i]!;
    sums.own[i] = trials[i]!;
    found.set(name, sums);
  }
  return [...found.values()]
    .filter((sums) => sums.events > 0)
    .map(({ own, ...sums }) => ({ ...sums, prefix: prefixTwice(own) }));
}

function checkSegment(segment: ShiftSegment, design: ShiftDesign): void {
  const n = segment.exposure.length;
  for (const name of ['exposure', 'events', 'trials', 'stratum'] as const) {
    const values = segment[name];
    if (values === undefined) continue;
    if (values.length !== n) {
      throw new RangeError(
        `circularShiftTest: ${name} must have ${n} entries like exposure, found ${values.length}`,
      );
    }
    for (let i = 0; i < n; i++) {
      if (!(values[i]! >= 0 && values[i]! < Number.POSITIVE_INFINITY)) {
        throw new RangeError(
          `circularShiftTest: ${name} must be finite and at least 0, found ${values[i]} at ${i}`,
        );
      }
    }
  }
  for (let i = 0; i < n; i++) {
    const [events, trials] = [segment.events[i]!, segment.trials[i]!];
    if (design === 'events-of-trials' ? events > trials : events > 0 && trials === 0) {
      throw new RangeError(`circularShiftTest: found ${events} events in ${trials} trials at ${i}`);
    }
  }
}
