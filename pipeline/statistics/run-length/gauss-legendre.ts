export interface Quadrature {
  nodes: Float64Array;
  weights: Float64Array;
}

const onUnitInterval = new Map<number, Quadrature>();

/**
 * Nodes and weights of the n-point Gauss-Legendre rule on [low, high], exact for polynomials up to degree 2n
 * - 1.
 *
 * Roots of the Legendre polynomial by Newton's method from the usual cosine start. Rules on [-1, 1] are kept,
 * since they depend on n alone.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 25.4.29 and 25.4.30.
 */
export function gaussLegendre(n: number, low: number, high: number): Quadrature {
  const unit = onUnitInterval.get(n) ?? computeOnUnitInterval(n);
  onUnitInterval.set(n, unit);
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  return { nodes: unit.nodes.map((x) => middle + half * x), weights: unit.weights.map((w) => half * w) };
}

function computeOnUnitInterval(n: number): Quadrature {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < Math.ceil(n / 2); i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 100; round += 1) {
      let [before, now] = [1, x];
      for (let k = 2; k <= n; k += 1) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
      slope = (n * (x * now - before)) / (x * x - 1);
      const step = now / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = -x;
    nodes[n - 1 - i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
    weights[n - 1 - i] = weights[i]!;
  }
  if (n % 2 === 1) nodes[(n - 1) / 2] = 0;
  return { nodes, weights };
}
