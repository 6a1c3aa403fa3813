import { answers } from './de/answers.ts';
import { attentionWords } from './de/attention.ts';
import { changes } from './de/changes.ts';
import { charts } from './de/charts.ts';
import { cleaning } from './de/cleaning.ts';
import { comparisons } from './de/comparisons.ts';
import { drift } from './de/drift.ts';
import { format } from './de/format.ts';
import { intervalArgument } from './de/interval.ts';
import { intervalEvidence } from './de/interval-evidence.ts';
import { intervalInputWords } from './de/interval-inputs.ts';
import { intervalPlan } from './de/interval-plan.ts';
import { live } from './de/live.ts';
import { meeting } from './de/meeting.ts';
import { methods } from './de/methods.ts';
import { pages } from './de/pages.ts';
import { quality } from './de/quality.ts';
import { methodText, reasonText } from './de/reasons.ts';
import { records } from './de/records.ts';
import { series } from './de/series.ts';
import { terms } from './de/terms.ts';
import { tips } from './de/tips.ts';
import { unit } from './de/unit.ts';
import { workbook } from './de/workbook.ts';
import type { Words } from './words.ts';

/** Alle Wörter des Berichts auf Deutsch. */
export const de: Words = {
  lang: 'de',
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
  interval: {
    lang: 'de',
    format,
    argument: intervalArgument,
    evidence: intervalEvidence,
    inputs: intervalInputWords,
    plan: intervalPlan,
  },
};
