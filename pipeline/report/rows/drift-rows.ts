import type { Drift, ProbeDrift } from '../../findings/drift/drift-schema.ts';
import type { Probe } from '../../findings/drift/probes.ts';
import { formatDay, parseDay } from '../../site/day.ts';

/** One value of a probe, as the chart draws it. */
export interface DriftRow {
  unit: string;
  probe: Probe;
  era: number;
  day: number;
  date: string;
  value: number;
  /** Without the common movement of the site; null for a value that is shown and not judged. */
  adjusted: number | null;
}

export const DRIFT_COLUMNS = ['unit', 'probe', 'era', 'date', 'value', 'adjusted'] as const;

const dayOf = (date: string): number => parseDay(date)!;

/** All values of one probe, over its eras, in order of day. */
export function driftRows(probes: readonly ProbeDrift[]): DriftRow[] {
  return probes.flatMap(({ unit, probe, era, series }) => {
    const from = dayOf(series.from);
    const { day, value, adjusted, left_out } = series;
    const row = (offset: number, value: number, adjusted: number | null): DriftRow => ({
      unit,
      probe,
      era: era.index,
      day: from + offset,
      date: formatDay(from + offset),
      value,
      adjusted,
    });
    return [
      ...day.map((offset, index) => row(offset, value[index]!, adjusted[index]!)),
      ...left_out.map((of) => row(of.day, of.value, null)),
    ].toSorted((a, b) => a.day - b.day);
  });
}

/** The probes of a unit in order, each with its eras in order. */
export function probesOf(drift: Drift, unit: string): [Probe, ProbeDrift[]][] {
  const own = drift.probes.filter((probe) => probe.unit === unit);
  const names = [...new Set(own.map((probe) => probe.probe))];
  return names.map((name) => [
    name,
    own.filter((probe) => probe.probe === name).toSorted((a, b) => a.era.index - b.era.index),
  ]);
}
