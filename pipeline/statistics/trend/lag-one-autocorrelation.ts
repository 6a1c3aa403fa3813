import { computed, notComputable, type Outcome } from '../result.ts';
import { countPresent, rankAutocorrelation, type SpacedSeries } from './rank-autocorrelation.ts';

export interface LagOneAutocorrelation {
  /** Corrected for bias, kept within -0.9 and 0.95. */
  autocorrelation: number;
  /** Before the correction. */
  raw: number;
  n: number;
}

const FEWEST = 20;

/**
 * Correlation of neighbouring values of a series, robust to outliers and corrected for its downward bias:
 * what EWMA and CUSUM limits and trend tests need.
 *
 * The lag-one correlation r of the ranks is turned to the scale of normal values, 2 sin(pi r / 6). Estimated
 * on n values it is too low on average, by about (1 + 3 phi)/n where a mean was taken out and (2 + 4 phi)/n
 * where a line was; that is added back. Assumes a stationary AR(1) series around a level or a line: a step or
 * a curve left in the series reads as autocorrelation. Its standard error is about sqrt((1 - phi^2)/n).
 *
 * Edges: fewer than 20 values, fewer than 10 neighbouring pairs, or ranks that don't vary is a stated
 * outcome. The result is kept within -0.9 and 0.95, the range for which limits can be computed.
 *
 * @param input.values evenly spaced, in time order; null where missing (keeps its place)
 * @param input.detrend take out the Theil-Sen line first ('theil-sen', default) or only the level ('none')
 * @throws RangeError if a value is neither finite nor null
 *
 * Source: rank scale: Pearson (1907), as in Hamed and Rao, Journal of Hydrology 204 (1998) 182-196; bias with
 * a mean: Marriott and Pope, Biometrika 41 (1954) 390-402, and Kendall, the same, 403-404; bias with a line:
 * van Giersbergen, Economics Letters 89 (2005) 75-82.
 */
export function lagOneAutocorrelation(input: {
  values: SpacedSeries;
  detrend?: 'none' | 'theil-sen';
}): Outcome<LagOneAutocorrelation> {
  const { values, detrend = 'theil-sen' } = input;
  const method = `lag-one autocorrelation by ranks, corrected for bias, ${detrend === 'none' ? 'level' : 'Theil-Sen line'} taken out`;
  for (const [i, value] of values.entries()) {
    if (value !== null && !Number.isFinite(value)) {
      throw new RangeError(
        `lagOneAutocorrelation: values[${i}] must be a finite number or null, found ${value}.`,
      );
    }
  }
  const n = countPresent(values);
  if (n < FEWEST)
    return notComputable(method, `${n} values are too few for an autocorrelation; ${FEWEST} are needed.`);
  const neighbours = values.filter((value, i) => i > 0 && value !== null && values[i - 1] !== null).length;
  if (neighbours < FEWEST / 2) {
    return notComputable(
      method,
      `Only ${neighbours} values follow directly on another; ${FEWEST / 2} are needed.`,
    );
  }
  const correlation = rankAutocorrelation(values, detrend);
  if (correlation === null) return notComputable(method, 'The values do not vary.');
  const raw = 2 * Math.sin((Math.PI * correlation(1)) / 6);
  const corrected = detrend === 'none' ? (n * raw + 1) / (n - 3) : (n * raw + 2) / (n - 4);
  return computed(method, { autocorrelation: Math.min(0.95, Math.max(-0.9, corrected)), raw, n });
}
