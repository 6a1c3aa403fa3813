/**
 * Maximum of a smooth function of one variable with a single peak, near a start: steps out until the peak is
 * enclosed, then golden-section search.
 *
 * Returns null where the function still rises after `reach` steps: for our purposes the peak lies at
 * infinity.
 */
export function maximiseNear(
  f: (x: number) => number,
  start: number,
  step: number,
  tolerance = 1e-9,
  reach = 60,
): { at: number; value: number } | null {
  let [low, middle, high] = [start - step, start, start + step];
  let [fLow, fMiddle, fHigh] = [f(low), f(middle), f(high)];
  for (let i = 0; fHigh > fMiddle || fLow > fMiddle; i += 1) {
    if (i === reach) return null;
    if (fHigh > fMiddle) {
      [low, fLow, middle, fMiddle] = [middle, fMiddle, high, fHigh];
      high += step;
      fHigh = f(high);
    } else {
      [high, fHigh, middle, fMiddle] = [middle, fMiddle, low, fLow];
      low -= step;
      fLow = f(low);
    }
  }
  const share = (Math.sqrt(5) - 1) / 2;
  let [x, y] = [high - share * (high - low), low + share * (high - low)];
  let [fx, fy] = [f(x), f(y)];
  while (high - low > tolerance) {
    if (fx >= fy) {
      [high, y, fy] = [y, x, fx];
      x = high - share * (high - low);
      fx = f(x);
    } else {
      [low, x, fx] = [x, y, fy];
      y = low + share * (high - low);
      fy = f(y);
    }
  }
  return fx >= fy ? { at: x, value: fx } : { at: y, value: fy };
}
