import type { Day } from '../../site/day.ts';
import type { DayValue } from './day-values.ts';
import { median } from './robust.ts';

/** What moved all units of a site on a day, on the probe's scale; 0 is the usual day. */
export interface CommonMovement {
  /** Days on which enough units gave a value. */
  days: { day: Day; effect: number; units: number }[];
  /** Effect of a day, read between neighbouring days where the day itself has none; undefined where none is near. */
  at(day: Day): number | undefined;
}

const ROUNDS = 6;
const FARTHEST_DAYS = 10;

/**
 * Takes apart units and days of a site by median polish: each value is a unit's level in its era, plus what the day did to all units, plus noise. Medians,
 * so that one unit that drifts or fails does not move the others.
 *
 * @param series one list for each unit and era (a unit's level starts anew with the era)
 * @param unitOf unit of each list, for counting units
 * @param leastUnits fewest units with a value on a day; a day with fewer has no effect of its own
 *
 * Source: median polish: Tukey, Exploratory Data Analysis (1977), chapter 11.
 */
export function commonMovement(
  series: readonly (readonly DayValue[])[],
  unitOf: readonly string[],
  leastUnits: number,
): CommonMovement {
  const byDay = new Map<Day, { list: number; y: number }[]>();
  for (const [list, values] of series.entries()) {
    for (const { day, y } of values) {
      const row = byDay.get(day);
      if (row) row.push({ list, y });
      else byDay.set(day, [{ list, y }]);
    }
  }
  const days = [...byDay]
    .filter(([, row]) => new Set(row.map((cell) => unitOf[cell.list])).size >= leastUnits)
    .sort(([a], [b]) => a - b);
  if (days.length === 0) return { days: [], at: () => undefined };

  const levels = series.map((values) => median(values.map((of) => of.y)) ?? 0);
  const effects = new Map<Day, number>();
  for (let round = 0; round < ROUNDS; round++) {
    for (const [day, row] of days) effects.set(day, median(row.map((cell) => cell.y - levels[cell.list]!))!);
    const centre = median([...effects.values()])!;
    for (const [day, effect] of effects) effects.set(day, effect - centre);
    let most = 0;
    for (const [list, values] of series.entries()) {
      const own = values.filter((of) => effects.has(of.day)).map((of) => of.y - effects.get(of.day)!);
      const level = median(own);
      if (level === undefined) continue;
      most = Math.max(most, Math.abs(level - levels[list]!));
      levels[list] = level;
    }
    if (most < 1e-6) break;
  }
  const known = days.map(([day, row]) => ({
    day,
    effect: effects.get(day)!,
    units: new Set(row.map((cell) => unitOf[cell.list])).size,
  }));
  return { days: known, at: (day) => between(known, day) };
}

function between(known: CommonMovement['days'], day: Day): number | undefined {
  let low = 0;
  let high = known.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (known[middle]!.day < day) low = middle + 1;
    else high = middle;
  }
  const [after, before] = [known[low], known[low - 1]];
  if (after?.day === day) return after.effect;
  const near = [before, after].filter((of) => of !== undefined && Math.abs(of.day - day) <= FARTHEST_DAYS);
  if (near.length === 2) {
    const share = (day - before!.day) / (after!.day - before!.day);
    return before!.effect + share * (after!.effect - before!.effect);
  }
  return near[0]?.effect;
}
