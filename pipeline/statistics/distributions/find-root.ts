/**
 * Root of a continuous function between two points of opposite sign, by Chandrupatla's method (bisection and
 * inverse quadratic interpolation, whichever is safe). It converges from any bracket, and never leaves it.
 *
 * Edges: an end that is a root is returned as it is. Infinite function values are allowed at the ends (they
 * count by sign).
 *
 * @param f - the function; must return a number for each point of the bracket
 * @param low - one end of the bracket, finite
 * @param high - the other end, finite
 * @param tolerance - stop when the bracket is narrower than this times max(1, |root|); default 1e-14
 * @throws RangeError if the ends have the same sign or a value is NaN: a fault of the caller, not of the data
 *
 * Source: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
 * function without using derivatives", Advances in Engineering Software 28 (1997) 145-149,
 * doi:10.1016/S0965-9978(96)00051-8.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-14): number {
  let [b, a] = [low, high];
  let [fb, fa] = [f(b), f(a)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new RangeError(`findRoot: no change of sign between ${low} and ${high}`);
  let [c, fc] = [b, fb];
  let step = 0.5;
  for (let i = 0; i < 500; i++) {
    const x = b + step * (a - b);
    const fx = f(x);
    if (Number.isNaN(fx)) throw new RangeError(`findRoot: not a number at ${x}`);
    if (Math.sign(fx) === Math.sign(fb)) {
      [c, fc] = [b, fb];
    } else {
      [c, fc] = [a, fa];
      [a, fa] = [b, fb];
    }
    [b, fb] = [x, fx];
    const best = Math.abs(fb) < Math.abs(fa) ? b : a;
    if (fb === 0) return b;
    const width = Math.abs(a - b);
    const margin = tolerance * Math.max(1, Math.abs(best));
    if (width <= margin) return best;
    // Interpolate only where the function is near enough to a parabola seen from the side, else bisect.
    const xi = (b - a) / (c - a);
    const phi = (fb - fa) / (fc - fa);
    const interpolated =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fb / (fb - fa)) * (fc / (fc - fa)) - ((c - b) / (a - b)) * (fb / (fc - fb)) * (fa / (fa - fc))
        : 0.5;
    const smallest = margin / (2 * width);
    step = Number.isFinite(interpolated) ? Math.min(1 - smallest, Math.max(smallest, interpolated)) : 0.5;
  }
  return Math.abs(fb) < Math.abs(fa) ? b : a;
}
