import { intervalArgument } from '../../words/en/interval.ts';
import { intervalEvidence } from '../../words/en/interval-evidence.ts';
import { intervalInputWords } from '../../words/en/interval-inputs.ts';
import { intervalPlan } from '../../words/en/interval-plan.ts';

/** All words of the case in English: the page, the command and the calendar file. Another language is another object of the same type. */
export const intervalWords = {
  argument: intervalArgument,
  evidence: intervalEvidence,
  inputs: intervalInputWords,
  plan: intervalPlan,
};
export type IntervalWords = typeof intervalWords;
