import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../../../pipeline/statistics/run-length/gauss-legendre.ts';

describe('Gauss-Legendre rule', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), Table 25.4, n = 5.
  it('has the tabled nodes and weights', () => {
    const { nodes, weights } = gaussLegendre(5, -1, 1);
    expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
    expect(nodes[3]).toBeCloseTo(0.538469310105683, 14);
    expect(nodes[2]).toBe(0);
    expect(weights[4]).toBeCloseTo(0.236926885056189, 14);
    expect(weights[3]).toBeCloseTo(0.478628670499366, 14);
    expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
  });

  it.each([1, 2, 7, 64, 201])('with %i points integrates x^(2n-1) + 1 over [0, 1] exactly', (n) => {
    const { nodes, weights } = gaussLegendre(n, 0, 1);
    const integral = nodes.reduce((sum, x, i) => sum + weights[i]! * (x ** (2 * n - 1) + 1), 0);
    expect(integral).toBeCloseTo(1 + 1 / (2 * n), 12);
    expect([...nodes]).toEqual([...nodes].sort((a, b) => a - b));
  });
});
