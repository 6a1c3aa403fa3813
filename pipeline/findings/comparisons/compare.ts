import type { Rules } from '../../site/rules.ts';
import { dataNeededForRatio } from '../../statistics/stratified/data-needed-for-ratio.ts';
import { detectableRatio } from '../../statistics/stratified/detectable-ratio.ts';
import { finiteOrNull } from '../finite-or-null.ts';
import type { Comparison, Exposure, OutcomeName } from '../review-schema.ts';
import { homogeneityOfUnits } from './homogeneity.ts';
import { designOf, measure } from './measure.ts';
import type { CountedOutcome, Stratified, Stratum } from './strata.ts';

/** What is compared: the days of one unit or of the fleet. */
export interface Question {
  scope: 'unit' | 'fleet';
  unit: string | null;
  exposure: Exposure;
  outcome: OutcomeName;
  /** Their strata, for the outcome and for the control. */
  stratified: (outcome: CountedOutcome) => Stratified;
  unitNotComparableDays: number;
}

/** A comparison before p is adjusted and the verdict given. */
export type Measured = Omit<
  Comparison,
  'adjusted_p' | 'beside' | 'verdict' | 'because' | 'verdict_all_records'
>;

/**
 * Measures one comparison: counts, ratio, interval, shift test, power, and the control outcome on the same days.
 *
 * Each stratum's exposure is shifted by itself against its events. That keeps every stratum's margins as they are, so that test and ratio
 * condition on the same things, and it leaves more arrangements than shifting whole eras.
 *
 * @param control see {@link controlOf}; given where it is known from another outcome of the same days
 */
export function compare(
  question: Question,
  rules: Rules['comparison'],
  control: Measured['control'] = controlOf(question, rules),
): Measured {
  const { scope, unit, exposure, outcome, stratified } = question;
  const main = measure(stratified(outcome), outcome, scope, rules);
  const inflation = Math.max(1, main.varianceInflation ?? 1);
  const power = powerOf(main.stratified.strata, outcome, inflation, rules);
  return {
    id: `${unit ?? 'fleet'}/${exposure}/${outcome}`,
    scope,
    unit,
    exposure,
    outcome,
    exposed: main.exposed,
    unexposed: main.unexposed,
    days_left_out: {
      not_at_risk: main.stratified.notAtRisk,
      exposure_unknown: main.stratified.exposureUnknown,
      unit_not_comparable: question.unitNotComparableDays,
    },
    strata: main.stratified.strata.filter(speaks).length,
    ratio: finiteOrNull(main.ratio.ratio),
    ratio_kind: main.ratio.kind,
    low: main.ratio.low,
    high: finiteOrNull(main.ratio.high),
    method: main.ratio.method,
    p: main.p,
    shifts: main.shifts,
    p_conditional: main.ratio.p,
    homogeneity: scope === 'fleet' ? homogeneityOfUnits(main.stratified.strata, outcome) : null,
    variance_inflation: main.varianceInflation,
    smallest_detectable_ratio: power.smallest,
    data_needed_factor: power.growth,
    control,
  };
}

/** The control outcome on the days of a question, which are the same for all its outcomes. */
export function controlOf(
  { scope, stratified }: Pick<Question, 'scope' | 'stratified'>,
  rules: Rules['comparison'],
): Measured['control'] {
  const { ratio, p, exposed, unexposed } = measure(
    stratified('unrelated_abort'),
    'unrelated_abort',
    scope,
    rules,
  );
  return {
    ratio: finiteOrNull(ratio.ratio),
    low: ratio.low,
    high: finiteOrNull(ratio.high),
    p,
    moved: p !== null && p <= rules.alpha,
    exposed,
    unexposed,
  };
}

function powerOf(
  strata: readonly Stratum[],
  outcome: OutcomeName,
  varianceInflation: number,
  rules: Rules['comparison'],
) {
  const margins = strata.map(({ exposed, unexposed }) => ({
    exposed: exposed.trials,
    unexposed: unexposed.trials,
    events: exposed.events + unexposed.events,
  }));
  const options = { design: designOf(outcome), alpha: rules.alpha, power: rules.power, varianceInflation };
  const smallest = detectableRatio(margins, options);
  const needed = dataNeededForRatio(margins, rules.ratio_of_interest, options);
  return {
    smallest: smallest.computable ? smallest.ratio : null,
    growth: needed.computable ? needed.growth : null,
  };
}

const speaks = ({ exposed, unexposed }: Stratum): boolean =>
  exposed.trials > 0 && unexposed.trials > 0 && exposed.events + unexposed.events > 0;
