import { finiteOrNull } from '../finite-or-null.ts';
import type { Candidate, Expected, ExpectedYear } from './argument-schema.ts';
import { percentiles } from './bootstrap.ts';
import type { Clock } from './clocks.ts';
import type { Intensities, Year } from './expected.ts';
import { type Setting, yearAt } from './interval-grid.ts';

/** Weeks of the default candidates: weekly to quarterly, with four weeks as the usual month (our choice; no source fixes an interval). */
const WEEKS = [1, 2, 3, 4, 6, 8, 12] as const;

/**
 * Intervals to compare: the site's, else the default weeks in what the interval counts, with the interval in force and the longest that the instructions allow.
 *
 * @param ticksPerWeek what passes on the clock in a week, mean over the units in use
 */
export function candidateIntervals(
  own: readonly number[] | undefined,
  clock: Clock,
  ticksPerWeek: number,
  inForce: number | null,
  longestByInstructions: number | null,
): number[] {
  const chosen =
    own ?? WEEKS.map((weeks) => (clock === 'calendar_days' ? weeks * 7 : round(weeks * ticksPerWeek)));
  const all = [...chosen, ...(inForce === null ? [] : [inForce])];
  if (own === undefined && longestByInstructions !== null) all.push(longestByInstructions);
  return [...new Set(all)].filter((interval) => interval >= 1).sort((a, b) => a - b);
}

/** Two significant digits: a candidate is an offer, not a measurement. */
function round(value: number): number {
  if (value < 10) return Math.max(1, Math.round(value));
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.round(value / unit) * unit;
}

/** The candidates with their years, each with its bootstrap interval, and the break-even against the interval in force. */
export function compareCandidates(
  setting: Setting,
  estimate: Intensities,
  samples: readonly Intensities[],
  intervals: readonly number[],
  options: { inForce: number | null; byInstructions: number | null; observed: number; level: number },
): Candidate[] {
  const { inForce, byInstructions, observed, level } = options;
  const reference =
    inForce === null || inForce > observed
      ? null
      : {
          estimate: yearAt(setting, inForce, estimate),
          samples: samples.map((sample) => yearAt(setting, inForce, sample)),
        };
  return intervals.map((interval): Candidate => {
    const base = { interval, in_force: interval === inForce };
    if (byInstructions !== null && interval > byInstructions)
      return { ...base, standing: 'beyond_instructions', year: null, break_even: null };
    if (byInstructions === null && inForce !== null && interval > inForce)
      return { ...base, standing: 'limit_not_given', year: null, break_even: null };
    if (interval > observed) return { ...base, standing: 'beyond_record', year: null, break_even: null };
    const year = yearAt(setting, interval, estimate);
    const drawn = samples.map((sample) => yearAt(setting, interval, sample));
    return {
      ...base,
      standing: 'compared',
      year: withIntervals(year, drawn, setting.objective === 'cost', level),
      break_even:
        reference === null || interval === inForce
          ? null
          : breakEven(reference, { estimate: year, samples: drawn }, setting, level),
    };
  });
}

function withIntervals(year: Year, drawn: readonly Year[], costs: boolean, level: number): ExpectedYear {
  const of = (value: (year: Year) => number): Expected => {
    const spread = percentiles(drawn.map(value), level);
    const estimate = value(year);
    return { estimate, low: spread.low ?? estimate, high: spread.high ?? estimate };
  };
  return {
    cleanings: of((y) => y.cleanings),
    failures: of((y) => y.failures),
    aborts: of((y) => y.aborts),
    hours_cleanings: of((y) => y.hours.cleanings),
    hours_failures: of((y) => y.hours.failures),
    hours_aborts: of((y) => y.hours.aborts),
    hours_total: of((y) => y.hours.total),
    labour_hours: of((y) => y.labour_hours),
    cleaner_litres: of((y) => y.cleaner_litres),
    retests: of((y) => y.retests),
    delayed_loads: of((y) => y.delayed_loads),
    cost_cleanings: costs ? of((y) => y.cost.cleanings) : null,
    cost_failures: costs ? of((y) => y.cost.failures) : null,
    cost_aborts: costs ? of((y) => y.cost.aborts) : null,
    cost_total: costs ? of((y) => y.cost.total) : null,
  };
}

interface Side {
  estimate: Year;
  samples: readonly Year[];
}

/**
 * What a failure must take for the shorter of two intervals to pay: the further hours (cost) of cleaning, less what the aborts avoided save, over the failures avoided.
 * Null where the shorter avoids none. A sample in which it avoids none counts as without end.
 */
function breakEven(inForce: Side, other: Side, setting: Setting, level: number): Candidate['break_even'] {
  // Signs cancel: the same formula holds whichever of the two is the shorter.
  const avoided = (a: Year, b: Year) => a.failures - b.failures;
  const more = (a: Year, b: Year, part: 'hours' | 'cost') =>
    b[part].cleanings + b[part].aborts - a[part].cleanings - a[part].aborts;
  const shorterAvoids = (a: Year, b: Year) =>
    avoided(a, b) !== 0 && Math.sign(avoided(a, b)) === Math.sign(b.cleanings - a.cleanings);
  if (!shorterAvoids(inForce.estimate, other.estimate)) return null;
  const at = (part: 'hours' | 'cost') => {
    const value = more(inForce.estimate, other.estimate, part) / avoided(inForce.estimate, other.estimate);
    const drawn = inForce.samples.map((a, index) => {
      const b = other.samples[index]!;
      return shorterAvoids(a, b) ? more(a, b, part) / avoided(a, b) : Number.POSITIVE_INFINITY;
    });
    const spread = percentiles(drawn, level);
    return { value, low: finiteOrNull(spread.low), high: finiteOrNull(spread.high) };
  };
  const hours = at('hours');
  const cost = setting.objective === 'cost' ? at('cost') : null;
  return {
    failures_avoided: Math.abs(avoided(inForce.estimate, other.estimate)),
    hours: hours.value,
    hours_low: hours.low,
    hours_high: hours.high,
    cost: cost?.value ?? null,
    cost_low: cost?.low ?? null,
    cost_high: cost?.high ?? null,
  };
}
