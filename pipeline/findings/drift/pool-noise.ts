import type { AdjustedSeries } from './adjusted-series.ts';
import { slowAutocorrelation } from './noise.ts';
import { median } from './robust.ts';

/** Noise of a series after it has borrowed from the other units of its site. */
export interface PooledNoise {
  spread: number;
  autocorrelation: number;
}

/** Values of its own from which a series counts as much as its site in these matters. */
const AUTOCORRELATION_WEIGHT = 150;
const SPREAD_WEIGHT = 10;
const LEAST_VALUES = 10;

/**
 * Noise of each series of one probe at one site, partly borrowed from the others: an autocorrelation from a few dozen values is hardly known, and a spread from ten is not
 * known well.
 *
 * The autocorrelation is the weighted mean of the series' own and that of all series together (weight 150 values). The spread is drawn up towards the site's median
 * spread (weight 10 values) and never down: a unit that is calmer than the others by chance must not alarm by chance.
 *
 * Source: shrinkage of variances towards a common one: Smyth, Statistical Applications in Genetics and Molecular Biology 3 (2004) 3; one-sided here.
 */
export function poolNoise(series: readonly AdjustedSeries[]): PooledNoise[] {
  const usable = series.filter((of) => of.noise.values >= LEAST_VALUES);
  const together = slowAutocorrelation(usable.map((of) => of.noise));
  const usual = median(usable.map((of) => of.noise.spread)) ?? 0;
  return series.map(({ noise }) => {
    const n = noise.values;
    const own = n >= LEAST_VALUES ? slowAutocorrelation([noise]) : together;
    const drawn = Math.sqrt(
      (SPREAD_WEIGHT * usual * usual + n * noise.spread * noise.spread) / (SPREAD_WEIGHT + n),
    );
    return {
      autocorrelation: (n * own + AUTOCORRELATION_WEIGHT * together) / (n + AUTOCORRELATION_WEIGHT),
      spread: Math.max(noise.spread, drawn, 1e-9),
    };
  });
}
