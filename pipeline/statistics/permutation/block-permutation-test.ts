import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { computed, notComputable, type Outcome } from '../result.ts';

export interface BlockPermutationResult {
  /** Sum of exposure times events, as it stands. */
  statistic: number;
  pGreater: number;
  /** Orders compared; with all of them the record as it stands is one. */
  orders: number;
  coverage: 'all' | 'drawn';
  blocks: number;
}

/** All orders are taken where there are no more than this. */
const MOST_ORDERS = 40_320;

/**
 * Test of association between two series that come in spells, by putting blocks of one series in another order.
 *
 * Done: the exposure is cut into blocks of equal length, which are permuted against the events; statistic: sum of exposure times events. p is the
 * share of orders at least as extreme where all are taken (the record itself among them), else (1 + as extreme) / (1 + drawn). Assumed: blocks
 * are exchangeable: the series is stationary and blocks are longer than its memory. p depends on the length of a block, so fix it beforehand.
 *
 * Edges: a length that does not divide the series is refused; a constant exposure, no event, or one block is not computable.
 *
 * @param exposure - 0 or 1, or a dose, per step
 * @param events - events per step, same length
 * @param options - `blockLength` in steps; `draws` where not all orders are taken, default 9999; `seed`, default 1
 * @throws RangeError for series of unequal length or a block length that does not divide it
 *
 * Source: P. Good, Permutation, Parametric and Bootstrap Tests of Hypotheses, 3rd ed. (2005), on exchangeable blocks (from memory); here beside
 * the circular shift as a second look.
 *
 * @example exposure 0011100000, events 0002110001, blocks of 2: pGreater 6 / 120
 */
export function blockPermutationTest(
  exposure: readonly number[],
  events: readonly number[],
  options: { blockLength: number; draws?: number; seed?: number },
): Outcome<BlockPermutationResult> {
  const { blockLength, draws = 9999, seed = 1 } = options;
  const method = `permutation of blocks of ${blockLength}`;
  if (exposure.length !== events.length)
    throw new RangeError(
      `blockPermutationTest: series must have one length, found ${exposure.length} and ${events.length}`,
    );
  if (!(Number.isInteger(blockLength) && blockLength >= 1 && exposure.length % blockLength === 0))
    throw new RangeError(
      `blockPermutationTest: blockLength must divide ${exposure.length}, found ${blockLength}`,
    );
  const blocks = exposure.length / blockLength;
  const constant = exposure.every((value) => value === exposure[0]);
  if (blocks < 2 || constant || events.every((value) => value === 0)) {
    return notComputable(method, 'There must be two blocks or more, an exposure that varies and an event.');
  }
  const sumAt = (from: number, to: number): number => {
    let sum = 0;
    for (let i = 0; i < blockLength; i++)
      sum += exposure[from * blockLength + i]! * events[to * blockLength + i]!;
    return sum;
  };
  const sums = Array.from({ length: blocks }, (_, from) =>
    Array.from({ length: blocks }, (_, to) => sumAt(from, to)),
  );
  const total = (order: readonly number[]): number =>
    order.reduce((sum, from, to) => sum + sums[from]![to]!, 0);
  const identity = Array.from({ length: blocks }, (_, index) => index);
  const statistic = total(identity);
  const orders = identity.reduce((product, index) => product * (index + 1), 1);
  let extreme = 0;
  if (orders <= MOST_ORDERS) {
    for (const order of permutations(identity)) if (total(order) >= statistic - 1e-9) extreme++;
    return computed(method, { statistic, pGreater: extreme / orders, orders, coverage: 'all', blocks });
  }
  const generator = xoroshiro128plus(seed);
  for (let draw = 0; draw < draws; draw++)
    if (total(shuffled(identity, () => generator.next() >>> 0)) >= statistic - 1e-9) extreme++;
  return computed(method, {
    statistic,
    pGreater: (1 + extreme) / (1 + draws),
    orders: draws,
    coverage: 'drawn',
    blocks,
  });
}

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length <= 1) yield [...items];
  for (const [index, first] of items.entries()) {
    if (items.length <= 1) return;
    for (const rest of permutations([...items.slice(0, index), ...items.slice(index + 1)]))
      yield [first, ...rest];
  }
}

/** Fisher-Yates; a remainder of 32 random bits is near enough to even for a few hundred blocks. */
function shuffled(items: readonly number[], bits: () => number): number[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const j = bits() % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
