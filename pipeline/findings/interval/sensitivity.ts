import type { InputInForce, Sensitivity } from './argument-schema.ts';
import type { Intensities } from './expected.ts';
import type { Inputs } from './inputs-in-force.ts';
import { bestOf, gridUpTo, type Setting, totalOf, yearAt } from './interval-grid.ts';
import type { ShapeFit } from './interval-schema.ts';

/** Inputs whose value the site or the record gives are halved and doubled (our choice): a site seldom knows them better. */
const FACTOR = 2;

/**
 * Best interval when one input alone is changed: each input above 0 halved and doubled, the shape of failures at the ends of its interval with the
 * failures at the middle of the record held, their rate halved and doubled. Sorted by how far the best interval moves.
 */
export function sensitivityOf(
  setting: Setting,
  estimate: Intensities,
  list: readonly InputInForce[],
  failures: ShapeFit,
  options: { longest: number; pivot: number },
): Sensitivity[] {
  const grid = gridUpTo(options.longest);
  const bestAt = (inputs: Inputs, intensities: Intensities): number =>
    bestOf(
      grid,
      grid.map((interval) =>
        totalOf(yearAt({ ...setting, inputs }, interval, intensities), setting.objective),
      ),
      0,
    ).best;
  const rows: Sensitivity[] = [];
  const add = (input: string, low_value: number, high_value: number, low: number, high: number) =>
    rows.push({
      input,
      low_value,
      high_value,
      best_at_low: low,
      best_at_high: high,
      moves: Math.abs(Math.log(high / low)),
    });
  for (const { name, value } of list) {
    if (value === null || value === 0) continue;
    const at = (changed: number) => bestAt({ ...setting.inputs, [name]: changed }, estimate);
    add(name, value / FACTOR, value * FACTOR, at(value / FACTOR), at(value * FACTOR));
  }
  const { rate, shape } = estimate.failures;
  const at = (changed: { rate: number; shape: number }) =>
    bestAt(setting.inputs, { ...estimate, failures: changed });
  if (rate > 0)
    add(
      'failure_rate',
      rate / FACTOR,
      rate * FACTOR,
      at({ shape, rate: rate / FACTOR }),
      at({ shape, rate: rate * FACTOR }),
    );
  if (failures.low !== null && failures.high !== null && rate > 0) {
    const held = (changed: number) => ({
      shape: changed,
      rate: rate * options.pivot ** (shape - changed),
    });
    add('failure_shape', failures.low, failures.high, at(held(failures.low)), at(held(failures.high)));
  }
  return rows.sort((a, b) => b.moves - a.moves);
}
