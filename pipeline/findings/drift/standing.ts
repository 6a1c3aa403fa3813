import type { Evidence } from './evidence.ts';
import { type JudgeInput, type Judgement, judgeSeries } from './judge-series.ts';

/** So many values before the last one a movement must have been there already. */
export const VALUES_TO_STAND = 1;

/**
 * Judges a series as `judgeSeries` does and calls a movement only where it stands: where it was called, in the same direction, without the last value as well, without the last two and so
 * on. A watch that looks every day looks at noise every day, and what one value brings another takes away; a drift stays. So less may be asked of a slope against a step. A
 * movement that does not stand yet is undecided.
 *
 * Counted in values, so that a day without cycles does not make a movement stand.
 *
 * Assumes that the site's movement and the noise, as read to the last day, were those of the days before: only the series' own values are taken away.
 *
 * @param values how many last values are taken away, one after the other; 0 asks for nothing
 */
export function judgeStanding(input: JudgeInput, evidence: Evidence, values = VALUES_TO_STAND): Judgement {
  const judgement = judgeSeries(input, evidence);
  for (let taken = 1; taken <= values && judgement.state === 'moving'; taken++) {
    const before = judgeSeries(withoutLast(input, taken), evidence);
    if (directionOf(before) !== directionOf(judgement)) return takenBack(judgement);
  }
  return judgement;
}

/** Direction of a movement that is called; 0 where none is. */
const directionOf = ({ slope }: Judgement): number => Math.sign(slope?.slope ?? 0);

const takenBack = (judgement: Judgement): Judgement => ({
  ...judgement,
  state: judgement.steps.length > 0 ? 'stepped' : 'steady',
  slope: null,
  signal: null,
  undecided: true,
});

function withoutLast(input: JudgeInput, values: number): JudgeInput {
  const cut = (list: readonly number[]) => list.slice(0, -values);
  return { ...input, t: cut(input.t), y: cut(input.y), w: cut(input.w), measured: cut(input.measured) };
}
