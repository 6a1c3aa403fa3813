import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Endless independent standard normal values from a seed: the same seed gives the same values.
 *
 * Source: Marsaglia and Bray, SIAM Review 6 (1964) 260-264 (polar method).
 */
export function normalStream(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    let u: number;
    let v: number;
    let s: number;
    do {
      u = 2 * uniformFloat64(generator) - 1;
      v = 2 * uniformFloat64(generator) - 1;
      s = u * u + v * v;
    } while (s >= 1 || s === 0);
    const factor = Math.sqrt((-2 * Math.log(s)) / s);
    spare = v * factor;
    return u * factor;
  };
}

/**
 * Endless stationary AR(1) values with mean 0, standard deviation 1 and this correlation of neighbours. Each
 * call of the result starts a new, independent series.
 */
export function autoregressiveSeries(normal: () => number, autocorrelation: number): () => () => number {
  const step = Math.sqrt(1 - autocorrelation * autocorrelation);
  return () => {
    let value: number | null = null;
    return () => {
      value = value === null ? normal() : autocorrelation * value + step * normal();
      return value;
    };
  };
}
