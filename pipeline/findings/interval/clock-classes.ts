import { groupBy } from '../../group-by.ts';
import { chiSquareTail } from '../../statistics/distributions/gamma.ts';
import { eventRate, proportion } from '../summaries/rate.ts';
import { type Clock, type ClockOutcome, cellsOf } from './clock-cells.ts';
import type { Intensity } from './expected.ts';
import type { ClockClass, IntervalCase } from './interval-schema.ts';
import { countOf } from './levels.ts';
import type { Spell, SpellDay } from './spells.ts';

/** Most classes; the last is open. */
const MOST_CLASSES = 8;

/** First clocks of the classes: steps of a week, or of several where the clock runs far. */
export function classStarts(days: readonly SpellDay[], clock: Clock, ticksPerWeek: number): number[] {
  const reached = days.map((day) => day[clock]).sort((a, b) => a - b);
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

/** Failures and aborts by classes of the clock, with exact intervals and what the fits expect, for the fleet, each site and each unit. */
export function classesByClock(
  spells: readonly Spell[],
  clock: Clock,
  starts: readonly number[],
  fits: Record<ClockOutcome, LevelledFit | null>,
  level: number,
): ClockClass[] {
  const rows = (of: readonly Spell[], scopeLevel: ClockClass['level'], scope: string): ClockClass[] =>
    starts.map((from, index) => {
      const next = starts[index + 1];
      const inside = (day: SpellDay) => day[clock] >= from && (next === undefined || day[clock] < next);
      const cut = of.map((spell) => ({ ...spell, days: spell.days.filter(inside) }));
      const days = cut.flatMap((spell) => spell.days);
      const failures = countOf(days, 'failed_test');
      const aborts = countOf(days, 'cleanliness_abort');
      return {
        level: scopeLevel,
        scope,
        from,
        to: next === undefined ? null : next - 1,
        failures: proportion(failures.events, failures.chances, level),
        aborts: eventRate(aborts.events, aborts.chances, level),
        fitted_failures: fittedEvents(cut, clock, 'failed_test', fits.failed_test),
        fitted_aborts: fittedEvents(cut, clock, 'cleanliness_abort', fits.cleanliness_abort),
      };
    });
  return [
    ...rows(spells, 'fleet', 'fleet'),
    ...[...groupBy(spells, (spell) => spell.site)].flatMap(([site, of]) => rows(of, 'site', site)),
    ...[...groupBy(spells, (spell) => spell.unit)].flatMap(([unit, of]) => rows(of, 'unit', unit)),
  ];
}

function fittedEvents(
  spells: readonly Spell[],
  clock: Clock,
  outcome: ClockOutcome,
  fit: LevelledFit | null,
): number | null {
  if (fit === null) return null;
  const { shape, rate } = fit.intensity;
  return spells.reduce(
    (sum, spell) =>
      sum +
      fit.frailtyOf(spell) *
        cellsOf([spell], clock, outcome).reduce(
          (of, cell) => of + rate * cell.weight * (cell.exit ** shape - cell.entry ** shape),
          0,
        ),
    0,
  );
}

/** Fewest expected failures in a class of the check; neighbours are taken together until they hold so many (Cochran's rule of five). */
const LEAST_EXPECTED = 5;

/**
 * Pearson's chi-square of observed against fitted failures over classes of the clock, with two degrees of freedom taken for shape and rate.
 *
 * Source: W. G. Cochran, Biometrics 10 (1954) 417-451, for the least expectation.
 */
export function checkOfFit(classes: readonly ClockClass[]): IntervalCase['fit_check'] {
  const none = (not_computable: string) => ({ chi_square: null, degrees: null, p: null, not_computable });
  const fleet = classes.filter((row) => row.level === 'fleet');
  if (fleet.length === 0 || fleet.some((row) => row.fitted_failures === null))
    return none('There is no fit.');
  const groups: { observed: number; expected: number }[] = [];
  let open = { observed: 0, expected: 0 };
  for (const row of fleet) {
    open = { observed: open.observed + row.failures.events, expected: open.expected + row.fitted_failures! };
    if (open.expected >= LEAST_EXPECTED) {
      groups.push(open);
      open = { observed: 0, expected: 0 };
    }
  }
  const last = groups.at(-1);
  if (last) {
    last.observed += open.observed;
    last.expected += open.expected;
  }
  const degrees = groups.length - 2;
  if (degrees < 1) return none('Fewer than three classes of the clock have five expected failures.');
  const chi_square = groups.reduce(
    (sum, { observed, expected }) => sum + (observed - expected) ** 2 / expected,
    0,
  );
  return { chi_square, degrees, p: chiSquareTail(chi_square, degrees, 'upper'), not_computable: null };
}
