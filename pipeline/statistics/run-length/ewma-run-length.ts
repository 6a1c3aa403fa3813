import { EwmaVariance } from '../control-charts/ewma-variance.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { gaussLegendre, type Quadrature } from './gauss-legendre.ts';
import { type RunLength, runLengthOfSurvival } from './run-length-of-survival.ts';
import { quadratureSize, SparseKernel } from './sparse-kernel.ts';

export interface EwmaDesign {
  /** Weight of the newest value, in (0, 1]. */
  lambda: number;
  /** Half-width of the limits in standard deviations of the EWMA (L). */
  limit: number;
  /** Shift of the mean from the first value on, in standard deviations of a value; default 0. */
  shift?: number;
  /** Correlation of neighbouring values (AR(1)), from -0.9 to 0.95; default 0. */
  autocorrelation?: number;
  /**
   * Default 'time-varying', as `ewmaChart` draws them; 'asymptotic' are the widest limits from the first
   * value on.
   */
  limits?: 'time-varying' | 'asymptotic';
}

/**
 * Run length of a two-sided EWMA chart of normal values, independent or AR(1), from its start (zero state).
 *
 * The chart starts at the in-control mean; the values are stationary with standard deviation 1 around the
 * shifted mean; limits are `limit` times the exact in-control standard deviation of the EWMA under that
 * autocorrelation. Centre, sigma and autocorrelation are taken as known.
 *
 * Method: Z_i is an AR(2) process, so the pair (Z_i, Z_(i-1)) is Markov with normal steps. Its mass between
 * the limits is carried forward by Gauss-Legendre quadrature (Nyström's method, a product rule without
 * interpolation); what is left is the probability of no signal yet.
 *
 * Edges: an average over 10 million values is a stated outcome.
 *
 * @returns average and median run length, in values
 * @throws RangeError if lambda isn't in (0, 1], limit isn't above 0, autocorrelation isn't in [-0.9, 0.95] or
 * shift isn't finite
 *
 * Source: Crowder, Technometrics 29 (1987) 401-407 (integral equation); Lucas and Saccucci, Technometrics 32
 * (1990) 1-12; Schmid, Frontiers in Statistical Quality Control 5 (1997) 115-137 (AR(1) values, limits by the
 * exact variance).
 *
 * @example
 * ewmaRunLength({ lambda: 0.03, limit: 2.437, limits: 'asymptotic' }); // average 499.86
 */
export function ewmaRunLength(design: EwmaDesign): Outcome<RunLength> {
  const { lambda, limit, shift = 0, autocorrelation = 0, limits = 'time-varying' } = design;
  const method = `EWMA run length by quadrature, zero state, ${limits} limits`;
  if (!(lambda > 0 && lambda <= 1))
    throw new RangeError(`ewmaRunLength: lambda must be in (0, 1], found ${lambda}.`);
  if (!(limit > 0)) throw new RangeError(`ewmaRunLength: limit must be above 0, found ${limit}.`);
  if (!Number.isFinite(shift)) throw new RangeError(`ewmaRunLength: shift must be finite, found ${shift}.`);
  if (!(autocorrelation >= -0.9 && autocorrelation <= 0.95)) {
    throw new RangeError(`ewmaRunLength: autocorrelation must be in [-0.9, 0.95], found ${autocorrelation}.`);
  }
  const settled = { lambda, limit, shift, autocorrelation, limits };
  const runLength = runLengthOfSurvival(ewmaSurvival(settled));
  if (!(runLength.average < 1e7))
    return notComputable(method, 'The average run length is over 10 million values.');
  return computed(method, runLength);
}

/** Probabilities of no signal within 1, 2, 3, ... values. */
function* ewmaSurvival(design: Required<EwmaDesign>): Generator<number> {
  const { lambda, shift, autocorrelation: phi } = design;
  const keep = 1 - lambda;
  const sd = lambda * Math.sqrt(1 - phi * phi);
  const grids = limitGrids(design, sd);
  let before: Float64Array = new Float64Array([0]);
  let now = grids();
  // After one value Z_1 = lambda x_1, and the state before it is the centre.
  let mass: Float64Array = now.nodes.map(
    (z, i) => now.weights[i]! * normalDensity(z / lambda - shift) * (1 / lambda),
  );
  let kernel: SparseKernel | null = null;
  for (;;) {
    yield mass.reduce((a, b) => a + b, 0);
    const next = grids();
    const standing = next === now && now.nodes === before;
    if (kernel === null || !standing) {
      kernel = new SparseKernel({
        next,
        now: now.nodes,
        before,
        mean: (z, w) => (keep + phi) * z - keep * phi * w + lambda * shift * (1 - phi),
        sd,
        value: (z, w) => (z - keep * w) / lambda - shift,
        keepAs: (i) => i,
        kept: now.nodes.length,
      });
    }
    mass = kernel.forward(mass);
    if (!standing) kernel = null;
    before = now.nodes;
    now = next;
  }
}

/**
 * One grid between the limits per value; once the limits have all but settled (1e-5) the same one again and
 * again.
 */
function limitGrids(design: Required<EwmaDesign>, sd: number): () => Quadrature {
  const { lambda, limit, autocorrelation, limits } = design;
  const widest = limit * Math.sqrt(EwmaVariance.limit(lambda, autocorrelation));
  const variance = new EwmaVariance(lambda, autocorrelation);
  const grid = (half: number) => gaussLegendre(quadratureSize(2 * half, sd), -half, half);
  let last: Quadrature | null = limits === 'asymptotic' ? grid(widest) : null;
  return () => {
    if (last !== null) return last;
    const half = limit * Math.sqrt(variance.afterValue());
    if (Math.abs(half / widest - 1) > 1e-5) return grid(half);
    last = grid(widest);
    return last;
  };
}

function normalDensity(u: number): number {
  return Math.exp(-0.5 * u * u) / Math.sqrt(2 * Math.PI);
}
