import fc from 'fast-check';

/** Checks a property on 200 generated inputs, the same in each run, so that a failure can be repeated. */
export function holds(property: fc.IRawProperty<unknown>, numRuns = 200): void {
  fc.assert(property as fc.IProperty<unknown>, { seed: 20240101, numRuns });
}
