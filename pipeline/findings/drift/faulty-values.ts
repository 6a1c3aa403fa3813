import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { ProbeValue } from './probe-values.ts';
import type { Probe } from './probes.ts';
import { PROBE_META } from './probes.ts';
import { median } from './robust.ts';

/** A probe's values of one era, without those that say nothing, and what was found wrong with them. */
export interface CheckedValues {
  /** Values in one measure: those since the last change of measure, where there was one. */
  values: ProbeValue[];
  measure_changed: { day: Day; factor: number | null } | null;
  /** First day of the values that stand still and reach to the last cycle. */
  stuck_since: Day | null;
  stuck_values: ProbeValue[];
  whole_minutes: boolean;
  /** Typical distance between neighbouring different values, in the measure: the finest thing that the record can show. */
  resolution: number;
}

/** Factors between units of measure that exports mix up: tens, minutes and seconds, psi, mmHg, inHg, mbar against one another. */
const FACTORS = [10, 60, 100, 1000, 6.895, 7.501, 14.5, 33.86, 51.71, 25.4];
const FACTOR_TOLERANCE = Math.log(1.2);
const LEAST_FACTOR = Math.log(4);
/** No chamber in saturated steam, nor any error of a sensor in use, is so far from saturation; another unit of pressure is. */
const IMPLAUSIBLE_RESIDUAL_K = 10;
const NEIGHBOURS = 7;
const LEAST_AFTER_CHANGE = 3;
/** A run of one value is a stuck sensor where chance would make it less often than this, given how often neighbours are equal elsewhere. */
const STUCK_CHANCE = 1e-6;
const SHORTEST_STUCK = 10;

/**
 * Sets aside what a probe's values can't say: another unit of measure, a sensor that stands still; and notes whole minutes.
 *
 * A changed measure is a lasting change of level by a factor near one between units of measure; a lasting change by more than 4 with no such factor
 * is a jump and stays. For the saturation residual it is a run of values that no steam can have.
 */
export function checkValues(probe: Probe, values: readonly ProbeValue[]): CheckedValues {
  const change = probe === 'saturation_residual' ? implausibleSince(values) : factorChange(probe, values);
  const usable =
    probe === 'saturation_residual'
      ? values.filter((of) => Math.abs(of.value) <= IMPLAUSIBLE_RESIDUAL_K)
      : values;
  const index = change ? usable.findIndex((of) => of.day >= change.day) : 0;
  const own = change ? (index < 0 ? [] : usable.slice(index)) : [...usable];
  const minutes =
    PROBE_META[probe].measure === 's' && own.length >= 10 && own.every((of) => of.value % 60 === 0);
  const stuck = stuckValues(own, minutes);
  const left = own.filter((of) => !stuck.has(of));
  const last = own.at(-1);
  return {
    values: left,
    measure_changed: change,
    stuck_since: last && stuck.has(last) ? firstOfLastRun(own, stuck) : null,
    stuck_values: [...stuck],
    whole_minutes: minutes,
    resolution: resolutionOf(left),
  };
}

function factorChange(probe: Probe, values: readonly ProbeValue[]): CheckedValues['measure_changed'] {
  if (probe === 'exposure_spread') return null;
  const levels = values.map((of) => of.value);
  let found: CheckedValues['measure_changed'] = null;
  for (let i = LEAST_AFTER_CHANGE; i <= levels.length - LEAST_AFTER_CHANGE; i++) {
    const [last, now] = [levels[i - 1]!, levels[i]!];
    if (last <= 0 || now <= 0 || Math.abs(Math.log(now / last)) < LEAST_FACTOR) continue;
    const before = levels.slice(Math.max(0, i - NEIGHBOURS), i);
    const after = levels.slice(i, i + NEIGHBOURS);
    const [low, high] = [median(before)!, median(after)!];
    if (low <= 0 || high <= 0) continue;
    const ratio = Math.log(high / low);
    const apart =
      ratio > 0 ? Math.max(...before) < Math.min(...after) : Math.min(...before) > Math.max(...after);
    const factor = FACTORS.find((of) => Math.abs(Math.abs(ratio) - Math.log(of)) < FACTOR_TOLERANCE);
    if (apart && factor !== undefined)
      found = { day: values[i]!.day, factor: ratio > 0 ? factor : 1 / factor };
  }
  return found;
}

function implausibleSince(values: readonly ProbeValue[]): CheckedValues['measure_changed'] {
  const last = values.findLastIndex((of) => Math.abs(of.value) <= IMPLAUSIBLE_RESIDUAL_K);
  const first = values[last + 1];
  return values.length - 1 - last >= LEAST_AFTER_CHANGE ? { day: first!.day, factor: null } : null;
}

/** Members of runs of one value that are too long for chance. Runs are looked for within a kind of cycle: kinds have levels of their own. */
function stuckValues(values: readonly ProbeValue[], minutes: boolean): Set<ProbeValue> {
  const stuck = new Set<ProbeValue>();
  for (const ofKind of groupBy(values, (of) => of.kind).values()) {
    const runs: ProbeValue[][] = [];
    for (const of of ofKind) {
      const run = runs.at(-1);
      if (run && run[0]!.value === of.value) run.push(of);
      else runs.push([of]);
    }
    const pairs = ofKind.length - 1;
    const equal = pairs - (runs.length - 1);
    for (const run of runs) {
      if (run.length < SHORTEST_STUCK) continue;
      const otherPairs = pairs - (run.length - 1);
      if (minutes && otherPairs < SHORTEST_STUCK) continue;
      const share = (equal - (run.length - 1) + 1) / (otherPairs + 2);
      if ((run.length - 1) * Math.log(share) < Math.log(STUCK_CHANCE)) for (const of of run) stuck.add(of);
    }
  }
  return stuck;
}

function firstOfLastRun(values: readonly ProbeValue[], stuck: ReadonlySet<ProbeValue>): Day {
  const lastMoving = values.findLastIndex((of) => !stuck.has(of));
  return values[lastMoving + 1]!.day;
}

function resolutionOf(values: readonly ProbeValue[]): number {
  const steps = [...groupBy(values, (of) => of.kind).values()].flatMap((ofKind) => {
    const distinct = [...new Set(ofKind.map((of) => of.value))].sort((a, b) => a - b);
    const gap = median(distinct.slice(1).map((value, i) => value - distinct[i]!));
    return gap === undefined ? [] : [gap];
  });
  return steps.length === 0 ? 0 : Math.min(...steps);
}
