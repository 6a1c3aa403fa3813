import { eventRate, proportion } from '../summaries/rate.ts';
import { cellsOf } from './clock-cells.ts';
import type { Clock, ClockOutcome } from './clocks.ts';
import type { Intensity } from './expected.ts';
import type { ClockClass } from './interval-schema.ts';
import { countOf, type SpellDays, sortedClocks } from './spell-days.ts';
import type { Spell } from './spells.ts';

/** Most classes; the last is open. */
const MOST_CLASSES = 8;

/** First clocks of the classes: steps of a week, or of several where the clock runs far. */
export function classStarts(days: readonly SpellDays[], clock: Clock, ticksPerWeek: number): number[] {
  const reached = sortedClocks(days, clock);
  const far = reached[Math.floor(0.9 * (reached.length - 1))] ?? 0;
  const week = Math.max(1, clock === 'calendar_days' ? 7 : Math.round(ticksPerWeek));
  const step = week * Math.max(1, Math.ceil(far / week / MOST_CLASSES));
  const classes = Math.max(1, Math.min(MOST_CLASSES, Math.ceil((far + 1) / step)));
  return Array.from({ length: classes }, (_, index) => index * step);
}

/** A fitted intensity with the level of each unit era, to say what it expects of some days. */
export interface LevelledFit {
  intensity: Intensity;
  frailtyOf: (spell: Spell) => number;
}

/** What the days of one class hold. */
interface Tally {
  failed: number;
  days: number;
  aborts: number;
  production: number;
  fitted_failures: number;
  fitted_aborts: number;
}

/** Failures and aborts by classes of the clock, with exact intervals and what the fits expect, for the fleet, each site and each unit. */
export function classesByClock(
  spells: readonly Spell[],
  clock: Clock,
  starts: readonly number[],
  fits: Record<ClockOutcome, LevelledFit | null>,
  level: number,
): ClockClass[] {
  const fleet = noTallies(starts);
  const sites = new Map<string, Tally[]>();
  const units = new Map<string, Tally[]>();
  // Each spell is cut and asked once, for all three levels.
  for (const spell of spells) {
    const own = cut(spell.days, clock, starts).map((days) => tallyOf(spell, days, clock, fits));
    for (const to of [fleet, talliesOf(sites, spell.site, starts), talliesOf(units, spell.unit, starts)])
      for (const [index, tally] of own.entries()) add(to[index]!, tally);
  }
  const rows = (tallies: readonly Tally[], scopeLevel: ClockClass['level'], scope: string): ClockClass[] =>
    tallies.map((of, index) => {
      const next = starts[index + 1];
      return {
        level: scopeLevel,
        scope,
        from: starts[index]!,
        to: next === undefined ? null : next - 1,
        failures: proportion(of.failed, of.days, level),
        aborts: eventRate(of.aborts, of.production, level),
        fitted_failures: fits.failed_test && of.fitted_failures,
        fitted_aborts: fits.cleanliness_abort && of.fitted_aborts,
      };
    });
  return [
    ...rows(fleet, 'fleet', 'fleet'),
    ...[...sites].flatMap(([site, of]) => rows(of, 'site', site)),
    ...[...units].flatMap(([unit, of]) => rows(of, 'unit', unit)),
  ];
}

/** The days of a spell by class: the clock does not fall, so that each class is a range. */
function cut({ columns, from, to }: SpellDays, clock: Clock, starts: readonly number[]): SpellDays[] {
  const clocks = columns[clock];
  let at = from;
  return starts.map((_, index) => {
    const next = starts[index + 1] ?? Number.POSITIVE_INFINITY;
    const begin = at;
    while (at < to && clocks[at]! < next) at++;
    return { columns, from: begin, to: at };
  });
}

function tallyOf(
  spell: Spell,
  days: SpellDays,
  clock: Clock,
  fits: Record<ClockOutcome, LevelledFit | null>,
): Tally {
  const failures = countOf([days], 'failed_test');
  const aborts = countOf([days], 'cleanliness_abort');
  return {
    failed: failures.events,
    days: failures.chances,
    aborts: aborts.events,
    production: aborts.chances,
    fitted_failures: fittedEvents(spell, days, clock, 'failed_test', fits.failed_test),
    fitted_aborts: fittedEvents(spell, days, clock, 'cleanliness_abort', fits.cleanliness_abort),
  };
}

const noTallies = (starts: readonly number[]): Tally[] =>
  starts.map(() => ({
    failed: 0,
    days: 0,
    aborts: 0,
    production: 0,
    fitted_failures: 0,
    fitted_aborts: 0,
  }));

function talliesOf(of: Map<string, Tally[]>, scope: string, starts: readonly number[]): Tally[] {
  const known = of.get(scope) ?? noTallies(starts);
  of.set(scope, known);
  return known;
}

function add(to: Tally, tally: Tally): void {
  to.failed += tally.failed;
  to.days += tally.days;
  to.aborts += tally.aborts;
  to.production += tally.production;
  to.fitted_failures += tally.fitted_failures;
  to.fitted_aborts += tally.fitted_aborts;
}

function fittedEvents(
  spell: Spell,
  days: SpellDays,
  clock: Clock,
  outcome: ClockOutcome,
  fit: LevelledFit | null,
): number {
  if (fit === null) return 0;
  const { shape, rate } = fit.intensity;
  const expected = cellsOf([days], clock, outcome).reduce(
    (sum, cell) => sum + rate * cell.weight * (cell.exit ** shape - cell.entry ** shape),
    0,
  );
  return fit.frailtyOf(spell) * expected;
}
