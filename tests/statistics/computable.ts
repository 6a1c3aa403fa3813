import { expect } from 'vitest';
import type { NotComputable } from '../../pipeline/statistics/result.ts';

/** The computed result, or a failed test with the stated reason. */
export function value<T extends { computable: true }>(outcome: T | NotComputable): T {
  if (!outcome.computable) throw new Error(`not computable: ${outcome.reason}`);
  return outcome;
}

/** Holds if the numbers agree to this relative difference; 0 and Infinity must agree exactly. */
export function expectNear(found: number, expected: number, relative = 1e-9, label = ''): void {
  if (expected === 0 || !Number.isFinite(expected)) expect(found, label).toBe(expected);
  else
    expect(Math.abs(found / expected - 1), `${label} found ${found}, expected ${expected}`).toBeLessThan(
      relative,
    );
}
