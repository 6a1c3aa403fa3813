import type { IntervalCase } from '../../../findings/interval/interval-schema.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import type { IntervalWords } from './interval-words.ts';

/** What each section of the page is made from. */
export interface SectionContext {
  context: ReportContext;
  numbers: Numbering;
  found: IntervalCase;
  text: IntervalWords;
}
