import type { AbortClass, CycleKind } from '../../site/vocabulary.ts';

/** The measures of the empty daily cycles that are watched, in the order in which they are shown. */
export const PROBES = [
  'evacuation_time',
  'heat_up_time',
  'exhaust_time',
  'leak_rate',
  'exposure_spread',
  'saturation_residual',
] as const;
export type Probe = (typeof PROBES)[number];

export interface ProbeMeta {
  measure: 's' | 'kPa/min' | 'K';
  /** Times are watched as logarithms, since their noise and their drift are a share of the time; the others as they are. */
  scale: 'log' | 'plain';
  /** Cycles that give values. Production cycles are never used: the load decides their times. */
  kinds: readonly CycleKind[];
  /** Where the control gives up over this measure, its aborts are of this class. */
  alarm_class: AbortClass | null;
}

export const PROBE_META: Readonly<Record<Probe, ProbeMeta>> = {
  evacuation_time: {
    measure: 's',
    scale: 'log',
    kinds: ['air_removal_test', 'warm_up', 'leak_test'],
    alarm_class: 'slow_evacuation',
  },
  heat_up_time: {
    measure: 's',
    scale: 'log',
    kinds: ['air_removal_test', 'warm_up'],
    alarm_class: 'come_up_slow',
  },
  exhaust_time: {
    measure: 's',
    scale: 'log',
    kinds: ['air_removal_test', 'warm_up'],
    alarm_class: 'slow_exhaust',
  },
  leak_rate: { measure: 'kPa/min', scale: 'plain', kinds: ['leak_test'], alarm_class: null },
  exposure_spread: {
    measure: 'K',
    scale: 'plain',
    kinds: ['air_removal_test', 'warm_up'],
    alarm_class: null,
  },
  saturation_residual: {
    measure: 'K',
    scale: 'plain',
    kinds: ['air_removal_test', 'warm_up'],
    alarm_class: null,
  },
};

/** Neither season nor supply moves these. */
export const OWN_AFFAIR: ReadonlySet<Probe> = new Set(['leak_rate']);

/** A measured value on the probe's scale of watching. */
export const toScale = (probe: Probe, value: number): number =>
  PROBE_META[probe].scale === 'log' ? Math.log(value) : value;

/** Back from the scale of watching to the measure. */
export const fromScale = (probe: Probe, value: number): number =>
  PROBE_META[probe].scale === 'log' ? Math.exp(value) : value;
