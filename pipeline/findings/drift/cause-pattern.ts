import type { Probe } from './probes.ts';

/** Causes in the words of the table of drifting variables. */
export const CAUSES = [
  'clogged strainer or drain',
  'door gasket or valve leak',
  'pump or ejector wear, or warm or weak water',
  'chamber or jacket scale',
  'poor steam (wet or with gases)',
] as const;
export type Cause = (typeof CAUSES)[number];

export type ProbeMove = 'up' | 'down' | 'still';

/** What a cause does to a probe: its sign, and how telling it is (1 usual, 2 the key sign, 0.5 slight). 0: the probe stays. */
type Effects = Readonly<Record<Probe, number>>;

/** Common practice and physics, no single source: the same table stands in the methods section. */
const TABLE: Readonly<Record<Cause, Effects>> = {
  'clogged strainer or drain': {
    evacuation_time: 1.5,
    heat_up_time: 1,
    exhaust_time: 2,
    leak_rate: 0,
    exposure_spread: 1,
    saturation_residual: -1,
  },
  'door gasket or valve leak': {
    evacuation_time: 1,
    heat_up_time: 0.5,
    exhaust_time: 0,
    leak_rate: 2,
    exposure_spread: 0.5,
    saturation_residual: -1,
  },
  'pump or ejector wear, or warm or weak water': {
    evacuation_time: 2,
    heat_up_time: 0,
    exhaust_time: 0.5,
    leak_rate: 0,
    exposure_spread: 0,
    saturation_residual: -1,
  },
  'chamber or jacket scale': {
    evacuation_time: 0,
    heat_up_time: 2,
    exhaust_time: 0,
    leak_rate: 0.5,
    exposure_spread: 1,
    saturation_residual: -0.5,
  },
  'poor steam (wet or with gases)': {
    evacuation_time: 0.5,
    heat_up_time: 1.5,
    exhaust_time: 0,
    leak_rate: 0,
    exposure_spread: 1,
    saturation_residual: -1.5,
  },
};

const LEAST_MOVING = 2;
/** Two causes whose fits differ by less are both named. */
const MARGIN = 0.5;

/**
 * The cause whose pattern fits the moving probes best: a hint and no diagnosis. Null where fewer than two probes move, or none fits.
 *
 * Each probe that moves as the cause says counts for it by how telling it is; one that moves the other way, or that should stay, counts 1 against it; a key sign
 * that stays away counts 1 against it. Probes without a judgement count nothing.
 */
export function causePattern(moves: ReadonlyMap<Probe, ProbeMove>): { fits_best: Cause[] } | null {
  const moving = [...moves].filter(([, move]) => move !== 'still');
  if (moving.length < LEAST_MOVING) return null;
  const fits = CAUSES.map((cause) => {
    let fit = 0;
    for (const [probe, move] of moves) {
      const effect = TABLE[cause][probe];
      if (move === 'still') fit -= Math.abs(effect) >= 2 ? 1 : 0;
      else fit += Math.sign(effect) === (move === 'up' ? 1 : -1) ? Math.abs(effect) : -1;
    }
    return { cause, fit };
  }).sort((a, b) => b.fit - a.fit);
  const best = fits[0]!;
  if (best.fit <= 0) return null;
  return {
    fits_best: fits
      .filter((of) => best.fit - of.fit < MARGIN)
      .slice(0, 2)
      .map((of) => of.cause),
  };
}

/** Whether a cause moves a probe the way it moves (sign of its slope). */
export const movesAs = (cause: Cause, probe: Probe, slope: number): boolean =>
  slope !== 0 && Math.sign(TABLE[cause][probe]) === Math.sign(slope);
