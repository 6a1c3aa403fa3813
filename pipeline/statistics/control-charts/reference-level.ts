import { type BaselineRange, D2_OF_TWO, meanMovingRange, resolveBaseline } from './chart-result.ts';

/** Values of a series in time order; null where a period has none. */
export type Series = readonly (number | null)[];

export type SigmaBy = 'moving-range' | 'standard-deviation';

/** Centre and standard deviation in control: given by the caller, or estimated on a frozen baseline. */
export type Reference = { centre: number; sigma: number } | { baseline?: BaselineRange; sigmaBy?: SigmaBy };

export interface ReferenceUsed {
  centre: number;
  sigma: number;
  /** Null where the caller gave centre and sigma. */
  baseline: (BaselineRange & { frozen: boolean; points: number }) | null;
  sigmaBy: SigmaBy | 'given';
}

/**
 * Centre (mean) and sigma of a series over its baseline, or as given.
 *
 * `moving-range` is the mean moving range of two / 1.128: blind to slow shifts inside the baseline, and too
 * small under positive autocorrelation. `standard-deviation` has divisor n - 1: right for autocorrelated
 * data, inflated by shifts. Returns a sentence where there is no usable sigma.
 *
 * @throws RangeError if a value isn't finite or null, sigma isn't above 0, or the baseline lies outside
 */
export function resolveReference(
  caller: string,
  values: Series,
  reference: Reference,
  defaultSigma: SigmaBy,
): ReferenceUsed | string {
  for (const [i, value] of values.entries()) {
    if (value !== null && !Number.isFinite(value)) {
      throw new RangeError(`${caller}: values[${i}] must be a finite number or null, found ${value}.`);
    }
  }
  if ('centre' in reference) {
    const { centre, sigma } = reference;
    if (!Number.isFinite(centre) || !(sigma > 0) || !Number.isFinite(sigma)) {
      throw new RangeError(
        `${caller}: centre must be finite and sigma above 0, found ${centre} and ${sigma}.`,
      );
    }
    return { centre, sigma, baseline: null, sigmaBy: 'given' };
  }
  const range = resolveBaseline(caller, values.length, reference.baseline);
  const sigmaBy = reference.sigmaBy ?? defaultSigma;
  const inBaseline = values.slice(range.first, range.last + 1).filter((v) => v !== null);
  const points = inBaseline.length;
  if (points < 2) return `The baseline has ${points} values; at least 2 are needed.`;
  const centre = inBaseline.reduce((a, b) => a + b, 0) / points;
  let sigma: number;
  if (sigmaBy === 'moving-range') {
    const { mean } = meanMovingRange(values, range.first, range.last);
    if (mean === null) return 'No two neighbouring values in the baseline, so there is no moving range.';
    sigma = mean / D2_OF_TWO;
  } else {
    sigma = Math.sqrt(inBaseline.reduce((a, v) => a + (v - centre) ** 2, 0) / (points - 1));
  }
  if (sigma === 0) return 'The values of the baseline never differ, so the limits would have no width.';
  return { centre, sigma, baseline: { ...range, points }, sigmaBy };
}
