import type { RunRule, Signal, ZSeries } from './signal.ts';

export interface NamedSignal<Name extends string> extends Signal {
  rule: Name;
}

/**
 * Applies several run rules to one series and returns every firing, by position and then in the order in
 * which the rules are given.
 *
 * Rules go on after a signal (no restart). Each rule added shortens the in-control run length;
 * `runRuleRunLength` says by how much. The rates behind that hold for independent normal points: with
 * autocorrelation the run rules fire far more often.
 *
 * @param z distances from the centre line in standard deviations, in time order; null where a period has no
 * point (skipped: windows reach across it)
 * @param rules rules by name, for instance `westernElectricRules` or a subset of it
 * @returns firings with 0-based positions of the newest (`index`) and oldest (`from`) point
 * @throws RangeError if a value is NaN
 *
 * @example
 * applyRules([0.1, 3.2, 2.1], westernElectricRules);
 * // [{ rule: 'beyond-three-sigma', index: 1, from: 1, side: 'high' },
 * //  { rule: 'two-of-three-beyond-two', index: 2, from: 1, side: 'high' }]
 */
export function applyRules<Name extends string>(
  z: ZSeries,
  rules: Readonly<Record<Name, RunRule>>,
): NamedSignal<Name>[] {
  const names = Object.keys(rules) as Name[];
  const signals = names.flatMap((rule) => rules[rule](z).map((signal) => ({ rule, ...signal })));
  // Array.prototype.sort is stable, so rules of one position keep their order.
  return signals.sort((a, b) => a.index - b.index);
}
