import { chiSquareTail } from '../../statistics/distributions/gamma.ts';
import type { ClockClass, IntervalCase } from './interval-schema.ts';

/** Fewest expected failures in a class of the check; neighbours are taken together until they hold so many (Cochran's rule of five). */
const LEAST_EXPECTED = 5;

/**
 * Pearson's chi-square of observed against fitted failures over classes of the clock, with two degrees of freedom taken for shape and rate.
 *
 * Source: W. G. Cochran, Biometrics 10 (1954) 417-451, for the least expectation.
 */
export function checkOfFit(classes: readonly ClockClass[]): IntervalCase['fit_check'] {
  const none = (not_computable: string) => ({ chi_square: null, degrees: null, p: null, not_computable });
  const fleet = classes.filter((row) => row.level === 'fleet');
  if (fleet.length === 0 || fleet.some((row) => row.fitted_failures === null))
    return none('There is no fit.');
  const groups: { observed: number; expected: number }[] = [];
  let open = { observed: 0, expected: 0 };
  for (const row of fleet) {
    open = { observed: open.observed + row.failures.events, expected: open.expected + row.fitted_failures! };
    if (open.expected >= LEAST_EXPECTED) {
      groups.push(open);
      open = { observed: 0, expected: 0 };
    }
  }
  const last = groups.at(-1);
  if (last) {
    last.observed += open.observed;
    last.expected += open.expected;
  }
  const degrees = groups.length - 2;
  if (degrees < 1) return none('Fewer than three classes of the clock have five expected failures.');
  const chi_square = groups.reduce(
    (sum, { observed, expected }) => sum + (observed - expected) ** 2 / expected,
    0,
  );
  return { chi_square, degrees, p: chiSquareTail(chi_square, degrees, 'upper'), not_computable: null };
}
