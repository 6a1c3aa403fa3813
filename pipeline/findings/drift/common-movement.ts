import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Day } from '../../site/day.ts';
import { zeros } from '../../statistics/regression/solve.ts';
import type { DayValue } from './day-values.ts';
import { robustSpread } from './robust.ts';

/** What moved all units of a site on a day, on the probe's scale; 0 is the usual day. */
export interface CommonMovement {
  /** Days on which enough units gave a value. */
  days: { day: Day; effect: number; units: number }[];
  /** Effect of a day, read between neighbouring days where the day itself has none; undefined where none is near. */
  at(day: Day): number | undefined;
}

interface Cell {
  list: number;
  y: number;
}
interface Row {
  day: Day;
  units: number;
  cells: Cell[];
  /** One weight for each cell. */
  weights: number[];
  effect: number;
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
  series: readonly (readonly DayValue[])[],
  unitOf: readonly string[],
  leastUnits: number,
): CommonMovement {
  const rows = rowsOf(series, unitOf, leastUnits);
  if (rows.length === 0) return { days: [], at: () => undefined };
  let levels = new Array<number>(series.length).fill(0);
  for (let round = 0; round < ROUNDS; round++) {
    levels = solveLevels(rows, series.length);
    const rest: number[] = [];
    for (const row of rows) {
      row.effect = effectOf(row, levels);
      for (const cell of row.cells) rest.push(cell.y - levels[cell.list]! - row.effect);
    }
    const bound = FULL_WEIGHT * (robustSpread(rest, 0) ?? 0);
    let at = 0;
    for (const row of rows) {
      for (let i = 0; i < row.cells.length; i++) {
        const off = Math.abs(rest[at++]!);
        row.weights[i] = off <= bound ? 1 : bound / off;
      }
    }
  }
  const days = rows.map(({ day, effect, units }) => ({ day, effect, units }));
  return { days, at: (day) => between(days, day) };
}

function rowsOf(
  series: readonly (readonly DayValue[])[],
  unitOf: readonly string[],
  leastUnits: number,
): Row[] {
  const byDay = new Map<Day, Cell[]>();
  for (const [list, values] of series.entries()) {
    for (const { day, y } of values) {
      const cells = byDay.get(day);
      if (cells) cells.push({ list, y });
      else byDay.set(day, [{ list, y }]);
    }
  }
  return [...byDay]
    .map(([day, cells]) => ({
      day,
      cells,
      units: new Set(cells.map((cell) => unitOf[cell.list])).size,
      weights: cells.map(() => 1),
      effect: 0,
    }))
    .filter((row) => row.units >= leastUnits)
    .sort((a, b) => a.day - b.day);
}

/** Levels that minimise the weighted squares with the days' effects taken out of the equations; centred so that effects are about 0 on average. */
function solveLevels(rows: readonly Row[], lists: number): number[] {
  const matrix = zeros(lists);
  const right = new Array<number>(lists).fill(0);
  const sums = new Array<number>(lists).fill(0);
  const weights = new Array<number>(lists).fill(0);
  for (const { cells, weights: w } of rows) {
    let total = DAY_PENALTY;
    let y = 0;
    for (const [i, cell] of cells.entries()) {
      total += w[i]!;
      y += w[i]! * cell.y;
    }
    for (const [i, a] of cells.entries()) {
      matrix[a.list]![a.list]! += w[i]!;
      right[a.list]! += w[i]! * (a.y - y / total);
      sums[a.list]! += w[i]! * a.y;
      weights[a.list]! += w[i]!;
      for (const [j, b] of cells.entries()) matrix[a.list]![b.list]! -= (w[i]! * w[j]!) / total;
    }
  }
  for (let i = 0; i < lists; i++) {
    const penalty = LEVEL_PENALTY * weights[i]!;
    // A list without values has a level of 0.
    matrix[i]![i]! += penalty || 1;
    right[i]! += weights[i]! > 0 ? (penalty * sums[i]!) / weights[i]! : 0;
  }
  return new CholeskyDecomposition(new Matrix(matrix)).solve(Matrix.columnVector(right)).to1DArray();
}

function effectOf(row: Row, levels: readonly number[]): number {
  let [sum, total] = [0, DAY_PENALTY];
  for (const [i, cell] of row.cells.entries()) {
    sum += row.weights[i]! * (cell.y - levels[cell.list]!);
    total += row.weights[i]!;
  }
  return sum / total;
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
