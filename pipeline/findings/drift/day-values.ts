import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { CycleKind } from '../../site/vocabulary.ts';
import { disagreeingCycles } from './disagreeing-cycles.ts';
import type { ProbeValue } from './probe-values.ts';
import { type Probe, toScale } from './probes.ts';
import { median, robustSpread } from './robust.ts';

/** One value of an operating day, on the probe's scale and at the level of the reference kind of cycle. */
export interface DayValue {
  day: Day;
  at: number;
  y: number;
  /** Precision relative to a usual day: 1 where all the usual cycles gave a value, less where some are lacking. */
  weight: number;
}

const LEAST_PAIRS = 5;

/**
 * Puts the values of a day's cycles together: each kind is shifted by its typical distance from the reference kind (median over days with both), and the kinds are
 * averaged by the precision that their day-to-day changes show. Two or three cycles a day carry less noise than one, and show where one of them is off: it is left out of its day.
 *
 * The reference is the air-removal test where it gives at least half as many values as any other kind, else the kind with most. A kind that
 * shares fewer than five days with it is left out.
 */
export function dayValues(probe: Probe, values: readonly ProbeValue[]): DayValue[] {
  const byKind = [...groupBy(values, (of) => of.kind)].map(
    ([kind, ofKind]) => [kind, new Map(ofKind.map((of) => [of.day, toScale(probe, of.value)]))] as const,
  );
  if (byKind.length === 0) return [];
  const most = Math.max(...byKind.map(([, days]) => days.size));
  const tests = byKind.find(([kind, days]) => kind === 'air_removal_test' && 2 * days.size >= most);
  const reference = tests ?? byKind.find(([, days]) => days.size === most)!;
  const used = byKind.flatMap(([kind, days]) => {
    if (kind === reference[0]) return [{ kind, days, precision: precisionOf(days) }];
    const apart = [...days].flatMap(([day, y]) => {
      const other = reference[1].get(day);
      return other === undefined ? [] : [y - other];
    });
    if (apart.length < LEAST_PAIRS) return [];
    const shift = median(apart)!;
    const levelled = new Map([...days].map(([day, y]) => [day, y - shift]));
    return [{ kind, days: levelled, precision: precisionOf(days) }];
  });
  const off = new Map<CycleKind, Set<Day>>(used.map((of) => [of.kind, new Set()]));
  for (const { kind, days } of used) {
    if (kind === reference[0]) continue;
    const found = disagreeingCycles(reference[1], days);
    for (const day of found.other) off.get(kind)!.add(day);
    for (const day of found.reference) off.get(reference[0])!.add(day);
  }
  const best = Math.max(...used.map((of) => of.precision));
  // A kind that looks four times as precise as another only looks so; and one that never changes has no precision that can be known.
  const weightOf = new Map<CycleKind, number>(
    used.map((of) => [of.kind, best > 0 ? Math.max(of.precision, best / 4) : 1]),
  );
  const start = new Map<Day, number>();
  for (const of of values) if (!start.has(of.day)) start.set(of.day, of.at);
  const days = [...start.keys()].sort((a, b) => a - b);
  const rows = days.flatMap((day) => {
    let sum = 0;
    let weight = 0;
    for (const { kind, days: ofKind } of used) {
      const y = ofKind.get(day);
      if (y === undefined || off.get(kind)!.has(day)) continue;
      sum += weightOf.get(kind)! * y;
      weight += weightOf.get(kind)!;
    }
    return weight === 0 ? [] : [{ day, at: start.get(day)!, y: sum / weight, weight }];
  });
  const usual = median(rows.map((row) => row.weight)) ?? 1;
  return rows.map((row) => ({ ...row, weight: row.weight / usual }));
}

/** One over the variance of a kind's values around their slow movement, from changes between neighbouring days. */
function precisionOf(days: ReadonlyMap<Day, number>): number {
  const ys = [...days.values()];
  const spread =
    robustSpread(
      ys.slice(1).map((y, i) => y - ys[i]!),
      0,
    ) ?? 0;
  return spread > 0 ? 2 / (spread * spread) : 0;
}
