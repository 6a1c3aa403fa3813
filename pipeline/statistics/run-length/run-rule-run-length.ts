import { normalTail } from '../distributions/normal.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { type RunLength, runLengthOfSurvival } from './run-length-of-survival.ts';

/**
 * Rules that look only at the zone (multiples of sigma) of each point; the names are those of the rule sets.
 */
export type ZoneRule =
  | 'beyond-three-sigma'
  | 'two-of-three-beyond-two'
  | 'four-of-five-beyond-one'
  | 'eight-on-one-side'
  | 'nine-on-one-side';

/**
 * What the rules need to remember: the zones of the last four points (newest first, signed: 1 for 0 to 1
 * sigma, ... 4 beyond 3) and the run on one side.
 */
interface Memory {
  zones: readonly number[];
  run: number;
}

const START: Memory = { zones: [], run: 0 };

const fires: Record<ZoneRule, (memory: Memory) => boolean> = {
  'beyond-three-sigma': ({ zones }) => Math.abs(zones[0]!) === 4,
  'two-of-three-beyond-two': ({ zones }) => countBeyond(zones.slice(0, 3), 2) >= 2,
  'four-of-five-beyond-one': ({ zones }) => countBeyond(zones, 1) >= 4,
  'eight-on-one-side': ({ run }) => Math.abs(run) >= 8,
  'nine-on-one-side': ({ run }) => Math.abs(run) >= 9,
};

/**
 * Run length of a Shewhart chart of independent normal points under a set of run rules, by an exact Markov
 * chain, from a start without history.
 *
 * The rules are those of `applyRules` (strictly beyond; the newest point of a k-of-m pattern must itself be
 * beyond). A state is the part of the history that can still matter; its probabilities are carried forward
 * until the hazard is constant. With autocorrelation, skew or estimated limits false alarms come far more
 * often.
 *
 * Edges: an average over 10 million points is a stated outcome.
 *
 * @param input.rules at least one, in any order
 * @param input.shift shift of the mean from the first point on, in sigma; default 0
 * @throws RangeError if no rule is given or shift isn't finite
 *
 * Source: Champ and Woodall, "Exact results for Shewhart control charts with supplementary runs rules",
 * Technometrics 29 (1987) 393-399.
 *
 * @example
 * runRuleRunLength({ rules: ['beyond-three-sigma'] }); // average 370.40
 */
export function runRuleRunLength(input: { rules: readonly ZoneRule[]; shift?: number }): Outcome<RunLength> {
  const { rules, shift = 0 } = input;
  const method = 'run length under run rules, exact Markov chain';
  if (rules.length === 0) throw new RangeError('runRuleRunLength: at least one rule must be given.');
  if (!Number.isFinite(shift))
    throw new RangeError(`runRuleRunLength: shift must be finite, found ${shift}.`);
  const runLength = runLengthOfSurvival(survival(rules, shift));
  if (!(runLength.average < 1e7))
    return notComputable(method, 'The average run length is over 10 million points.');
  return computed(method, runLength);
}

function* survival(rules: readonly ZoneRule[], shift: number): Generator<number> {
  const zones = zoneProbabilities(shift);
  const { steps, size } = reachableStates(rules);
  let mass = new Float64Array(size);
  mass[0] = 1;
  for (;;) {
    const next = new Float64Array(size);
    for (const { from, to, zone } of steps) next[to]! += mass[from]! * zones.get(zone)!;
    mass = next;
    yield mass.reduce((a, b) => a + b, 0);
  }
}

/** All states that can be reached without a signal (the first is the start), and the steps between them. */
function reachableStates(rules: readonly ZoneRule[]): {
  steps: { from: number; to: number; zone: number }[];
  size: number;
} {
  const states = [START];
  const numbers = new Map([[keyOf(START), 0]]);
  const steps: { from: number; to: number; zone: number }[] = [];
  for (let from = 0; from < states.length; from += 1) {
    for (const zone of [-4, -3, -2, -1, 1, 2, 3, 4]) {
      const before = states[from]!;
      const run = Math.sign(before.run) === Math.sign(zone) ? before.run + Math.sign(zone) : Math.sign(zone);
      const full: Memory = { zones: [zone, ...before.zones], run };
      if (rules.some((rule) => fires[rule](full))) continue;
      const next = forget(full, rules);
      const key = keyOf(next);
      let to = numbers.get(key);
      if (to === undefined) {
        to = states.push(next) - 1;
        numbers.set(key, to);
      }
      steps.push({ from, to, zone });
    }
  }
  return { steps, size: states.length };
}

/** Keeps of the history only what these rules can still use, so that equal futures become one state. */
function forget({ zones, run }: Memory, rules: readonly ZoneRule[]): Memory {
  const two = rules.includes('two-of-three-beyond-two');
  const four = rules.includes('four-of-five-beyond-one');
  const sides = rules.includes('eight-on-one-side') || rules.includes('nine-on-one-side');
  const kept = zones.slice(0, four ? 4 : two ? 2 : 0).map((zone, age) => {
    const size = Math.abs(zone);
    if (two && age < 2 && size > 2) return Math.sign(zone) * 3;
    return four && size > 1 ? Math.sign(zone) * 2 : 0;
  });
  return { zones: kept, run: sides ? run : 0 };
}

function keyOf({ zones, run }: Memory): string {
  return `${zones.join(',')};${run}`;
}

/**
 * Points of the window beyond this many sigma on the side of the newest one, which must itself be beyond;
 * else 0.
 */
function countBeyond(zones: readonly number[], sigmas: number): number {
  const side = Math.sign(zones[0]!);
  return zones[0]! * side > sigmas ? zones.filter((zone) => zone * side > sigmas).length : 0;
}

/** Probability of each zone for a point whose mean is shifted by so many sigma. */
function zoneProbabilities(shift: number): Map<number, number> {
  const above = [0, 1, 2, 3, Number.POSITIVE_INFINITY];
  const probabilities = new Map<number, number>();
  for (let size = 1; size <= 4; size += 1) {
    const [low, high] = [above[size - 1]!, above[size]!];
    probabilities.set(size, normalTail(low - shift, 'upper') - normalTail(high - shift, 'upper'));
    probabilities.set(-size, normalTail(low + shift, 'upper') - normalTail(high + shift, 'upper'));
  }
  return probabilities;
}
