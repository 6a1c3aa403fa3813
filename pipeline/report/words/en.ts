import { answers } from './en/answers.ts';
import { attentionWords } from './en/attention.ts';
import { charts } from './en/charts.ts';
import { cleaning } from './en/cleaning.ts';
import { comparisons } from './en/comparisons.ts';
import { drift } from './en/drift.ts';
import { format } from './en/format.ts';
import { methods } from './en/methods.ts';
import { pages } from './en/pages.ts';
import { records } from './en/records.ts';
import { series } from './en/series.ts';
import { terms } from './en/terms.ts';
import { unit } from './en/unit.ts';

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
  methods,
  pages,
  unit,
};
