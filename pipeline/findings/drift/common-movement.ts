import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { DayValue } from './day-values.ts';
import { MAD_FACTOR, median } from './robust.ts';

/** What moved all units of a site on a day, on the probe's scale; 0 is the usual day. */
export interface CommonMovement {
  /** Days on which enough units gave a value. */
  days: { day: Day; effect: number; units: number }[];
  /** Fewest units with a value on such a day. */
  leastUnits: number;
  /** Effect of a day, read between neighbouring days where the day itself has none; undefined where none is near. */
  at(day: Day): number | undefined;
}

/** All values of the days with enough units, day after day in flat arrays: the cells of day i are those from `start[i]` to `start[i + 1]`. */
interface Cells {
  days: Day[];
  start: number[];
  units: number[];
  list: Int32Array;
  y: Float64Array;
  weight: Float64Array;
  effect: Float64Array;
}

const ROUNDS = 5;
/** Distance from the fit, in standard deviations, to which a value counts in full. */
const FULL_WEIGHT = 1.5;
/** A day's effect is drawn to 0 with the weight of so many values, so that levels of eras that hardly overlap can't wander off together. */
const DAY_PENALTY = 0.02;
/** Keeps the equations solvable where all units began a new era on one day. */
const LEVEL_PENALTY = 1e-6;
const FARTHEST_DAYS = 10;

/**
 * Takes apart units and days of a site: each value is a unit's level in its era, plus what the day did to all units, plus noise. Weighted least squares with Huber weights, so
 * that one unit that drifts or fails hardly moves the others; solved for the levels at once, since levels of eras that overlap in a chain converge too slowly
 * when levels and days are worked out in turn.
 *
 * @param series one list for each unit and era (a unit's level starts anew with the era)
 * @param unitOf unit of each list, for counting units
 * @param leastUnits fewest units with a value on a day; a day with fewer has no effect of its own
 *
 * Source: Huber, Annals of Mathematical Statistics 35 (1964) 73-101 (weights); two-way layout as in any text on analysis of variance.
 */
export function commonMovement(
  series: readonly (readonly Pick<DayValue, 'day' | 'y'>[])[],
  unitOf: readonly string[],
  leastUnits: number,
): CommonMovement {
  const cells = cellsOf(series, unitOf, leastUnits);
  if (cells.days.length === 0) return { days: [], leastUnits, at: () => undefined };
  const { list, y, weight, effect, start } = cells;
  const off = new Float64Array(y.length);
  for (let round = 0; round < ROUNDS; round++) {
    const levels = solveLevels(cells, series.length);
    for (let row = 0; row < cells.days.length; row++) {
      effect[row] = effectOf(cells, row, levels);
      for (let i = start[row]!; i < start[row + 1]!; i++)
        off[i] = Math.abs(y[i]! - levels[list[i]!]! - effect[row]!);
    }
    const bound = FULL_WEIGHT * MAD_FACTOR * (median(off) ?? 0);
    for (let i = 0; i < y.length; i++) weight[i] = off[i]! <= bound ? 1 : bound / off[i]!;
  }
  const days = cells.days.map((day, row) => ({ day, effect: effect[row]!, units: cells.units[row]! }));
  return { days, leastUnits, at: (day) => between(days, day) };
}

function cellsOf(
  series: readonly (readonly Pick<DayValue, 'day' | 'y'>[])[],
  unitOf: readonly string[],
  leastUnits: number,
): Cells {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const values of series) {
    for (const { day } of values) {
      if (day < first) first = day;
      if (day > last) last = day;
    }
  }
  const span = Math.max(0, last - first + 1);
  const count = new Int32Array(span);
  const units = new Int32Array(span);
  const seen = new Map<string, Int32Array>();
  for (const [index, values] of series.entries()) {
    const unit = unitOf[index]!;
    const days = seen.get(unit) ?? new Int32Array(span);
    seen.set(unit, days);
    for (const { day } of values) {
      count[day - first]!++;
      if (days[day - first] === 0) units[day - first]!++;
      days[day - first] = 1;
    }
  }
  const cells = { days: [] as Day[], start: [0], units: [] as number[] };
  const next = new Int32Array(span).fill(-1);
  let total = 0;
  for (let i = 0; i < span; i++) {
    if (count[i] === 0 || units[i]! < leastUnits) continue;
    next[i] = total;
    total += count[i]!;
    cells.days.push(first + i);
    cells.units.push(units[i]!);
    cells.start.push(total);
  }
  const list = new Int32Array(total);
  const y = new Float64Array(total);
  for (const [index, values] of series.entries()) {
    for (const value of values) {
      const at = next[value.day - first]!;
      if (at < 0) continue;
      next[value.day - first]!++;
      list[at] = index;
      y[at] = value.y;
    }
  }
  return {
    ...cells,
    list,
    y,
    weight: new Float64Array(total).fill(1),
    effect: new Float64Array(cells.days.length),
  };
}

/** Levels that minimise the weighted squares with the days' effects taken out of the equations; centred so that effects are about 0 on average. */
function solveLevels({ days, start, list, y, weight }: Cells, lists: number): number[] {
  // The lower triangle alone, row after row: lists stand in order within a day, each once.
  const lower = new Float64Array(lists * lists);
  const right = new Float64Array(lists);
  const sums = new Float64Array(lists);
  const weights = new Float64Array(lists);
  for (let row = 0; row < days.length; row++) {
    const end = start[row + 1]!;
    let total = DAY_PENALTY;
    let sum = 0;
    for (let i = start[row]!; i < end; i++) {
      total += weight[i]!;
      sum += weight[i]! * y[i]!;
    }
    for (let i = start[row]!; i < end; i++) {
      const a = list[i]!;
      const line = a * lists;
      lower[line + a]! += weight[i]!;
      right[a]! += weight[i]! * (y[i]! - sum / total);
      sums[a]! += weight[i]! * y[i]!;
      weights[a]! += weight[i]!;
      const share = weight[i]! / total;
      for (let j = start[row]!; j <= i; j++) lower[line + list[j]!]! -= share * weight[j]!;
    }
  }
  for (let i = 0; i < lists; i++) {
    const penalty = LEVEL_PENALTY * weights[i]!;
    // A list without values has a level of 0.
    lower[i * lists + i]! += penalty || 1;
    right[i]! += weights[i]! > 0 ? (penalty * sums[i]!) / weights[i]! : 0;
  }
  const matrix = new Matrix(lists, lists);
  for (let i = 0; i < lists; i++)
    for (let j = 0; j < lists; j++) matrix.set(i, j, lower[Math.max(i, j) * lists + Math.min(i, j)]!);
  return new CholeskyDecomposition(matrix).solve(Matrix.columnVector(right)).to1DArray();
}

function effectOf({ start, list, y, weight }: Cells, row: number, levels: readonly number[]): number {
  let [sum, total] = [0, DAY_PENALTY];
  for (let i = start[row]!; i < start[row + 1]!; i++) {
    sum += weight[i]! * (y[i]! - levels[list[i]!]!);
    total += weight[i]!;
  }
  return sum / total;
}

function between(known: CommonMovement['days'], day: Day): number | undefined {
  const next = firstFrom(known, (of) => of.day >= day);
  const [after, before] = [known[next], known[next - 1]];
  if (after?.day === day) return after.effect;
  const near = [before, after].filter((of) => of !== undefined && Math.abs(of.day - day) <= FARTHEST_DAYS);
  if (near.length === 2) {
    const share = (day - before!.day) / (after!.day - before!.day);
    return before!.effect + share * (after!.effect - before!.effect);
  }
  return near[0]?.effect;
}
