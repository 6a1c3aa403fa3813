import type { Outcome } from '../../pipeline/statistics/result.ts';

/** The computed result, or a failed test that shows the reason. */
export function computedOrFail<T>(outcome: Outcome<T>): T & { computable: true; method: string } {
  if (!outcome.computable) throw new Error(`not computable: ${outcome.reason}`);
  return outcome;
}

/** The stated reason, or a failed test that shows the result. */
export function reasonOrFail<T>(outcome: Outcome<T>): string {
  if (outcome.computable)
    throw new Error(`computed, but a stated outcome was expected: ${JSON.stringify(outcome)}`);
  return outcome.reason;
}

/** Every number inside a result, at any depth, to check that none is NaN. */
export function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(numbersIn);
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(numbersIn);
  return [];
}
