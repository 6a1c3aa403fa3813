import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { powerLawRefit } from '../../statistics/recurrent/power-law-refit.ts';
import { cellsOf } from './clock-cells.ts';
import type { Intensities, Intensity } from './expected.ts';
import type { Fitted } from './shape-fit.ts';

/** What the bootstrap drew: units between resets of their baseline where there are enough of them, else spells inside each. */
export type Drawn = 'unit_eras' | 'spells';

/** Fewest unit eras that are drawn as wholes; with fewer, spells are drawn inside each (our choice). */
export const LEAST_UNIT_ERAS = 10;

export interface Bootstrap {
  drawn: Drawn;
  samples: Intensities[];
}

const NONE: Intensity = { shape: 1, rate: 0 };

/**
 * Bootstrap of both intensities: whole unit eras drawn with replacement, so that bad spells and bad units stay together; failures and aborts of one sample
 * come from the same draw. With fewer than ten unit eras their spells are drawn inside each instead. The spread of the frailties is
 * held at its estimate.
 *
 * Source: A. C. Davison & D. V. Hinkley, Bootstrap Methods and their Application (1997) section 3.8 (drawing at the highest level alone).
 */
export function bootstrapIntensities(
  fitted: Record<'failures' | 'aborts', Fitted>,
  spread: Record<'failures' | 'aborts', number>,
  options: { draws: number; seed: number },
): Bootstrap {
  const { clusters } = fitted.failures;
  const drawn: Drawn = clusters.length >= LEAST_UNIT_ERAS ? 'unit_eras' : 'spells';
  const groups = clusters.map((of) => (drawn === 'unit_eras' ? [of] : of.spells));
  const blocks = groups.flat();
  const refit = ({ clock, outcome, cells }: Fitted, ofOutcome: number) =>
    powerLawRefit(
      drawn === 'unit_eras'
        ? cells
        : clusters.flatMap((of) => of.spells.map((spell) => cellsOf([spell.days], clock, outcome))),
      ofOutcome,
    );
  const failures = refit(fitted.failures, spread.failures);
  const aborts = refit(fitted.aborts, spread.aborts);
  const firstOf: number[] = [];
  let next = 0;
  for (const group of groups) {
    firstOf.push(next);
    next += group.length;
  }
  const generator = xoroshiro128plus(options.seed);
  const pick = (of: number) => Math.min(of - 1, Math.floor(uniformFloat64(generator) * of));
  const samples = Array.from({ length: options.draws }, () => {
    const sample =
      drawn === 'unit_eras'
        ? blocks.map(() => [pick(blocks.length)])
        : groups.map((group, index) => group.map(() => firstOf[index]! + pick(group.length)));
    return { failures: failures(sample) ?? NONE, aborts: aborts(sample) ?? NONE };
  });
  return { drawn, samples };
}

/** Percentile interval of values of the samples, which may be Infinity; null where there are none. */
export function percentiles(
  values: readonly number[],
  level: number,
): { low: number | null; high: number | null } {
  if (values.length === 0) return { low: null, high: null };
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number) => {
    const place = share * (sorted.length - 1);
    const below = Math.floor(place);
    const [from, to] = [sorted[below]!, sorted[Math.min(sorted.length - 1, below + 1)]!];
    return from === to || place === below ? from : from + (place - below) * (to - from);
  };
  return { low: at((1 - level) / 2), high: at((1 + level) / 2) };
}
