import { answers } from './en/answers.ts';
import { attentionWords } from './en/attention.ts';
import { changes } from './en/changes.ts';
import { charts } from './en/charts.ts';
import { cleaning } from './en/cleaning.ts';
import { comparisons } from './en/comparisons.ts';
import { drift } from './en/drift.ts';
import { format } from './en/format.ts';
import { intervalArgument } from './en/interval.ts';
import { intervalEvidence } from './en/interval-evidence.ts';
import { intervalInputWords } from './en/interval-inputs.ts';
import { intervalPlan } from './en/interval-plan.ts';
import { live } from './en/live.ts';
import { meeting } from './en/meeting.ts';
import { methods } from './en/methods.ts';
import { pages } from './en/pages.ts';
import { quality } from './en/quality.ts';
import { methodText, reasonText } from './en/reasons.ts';
import { records } from './en/records.ts';
import { series } from './en/series.ts';
import { terms } from './en/terms.ts';
import { tips } from './en/tips.ts';
import { unit } from './en/unit.ts';
import { workbook } from './en/workbook.ts';

/** All words of the report in English. Another language is another object of the same type. */
export const en = {
  lang: 'en',
  format,
  terms,
  charts,
  answers,
  attention: attentionWords,
  cleaning,
  series,
  comparisons,
  drift,
  records,
  quality,
  changes,
  meeting,
  methods,
  pages,
  live,
  tips,
  unit,
  workbook,
  reason: reasonText,
  method: methodText,
  /** The case for a cleaning interval: page, command and calendar file. */
  interval: {
    lang: 'en',
    format,
    argument: intervalArgument,
    evidence: intervalEvidence,
    inputs: intervalInputWords,
    plan: intervalPlan,
  },
};
