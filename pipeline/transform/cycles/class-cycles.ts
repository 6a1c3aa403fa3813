import type { Day } from '../../site/day.ts';
import type { Cycle } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { AbortClass } from '../../site/vocabulary.ts';
import type { UnitRecords } from '../records-by-unit.ts';
import { abortClass } from './abort-class.ts';
import { looksLikePurge, purgeSpans } from './drain-purge.ts';

/**
 * How a cycle counts. `purge`: a drain purge, in no numerator and no denominator. `early_stop`: looks like a purge with no cleaning record
 * near, an unexplained early stop. `open`: still running when exported and never seen complete; counts nowhere.
 */
export type CycleStanding = 'completed' | 'abort' | 'purge' | 'early_stop' | 'open';

export interface ClassedCycle extends Cycle {
  /** Operating day. */
  day: Day;
  standing: CycleStanding;
  /** Class of an abort or early stop; null for the others. */
  abort_class: AbortClass | null;
}

/** Classes a unit's cycles: operating day, standing and abort class, in order of start. */
export function classCycles(records: UnitRecords, rules: Rules): ClassedCycle[] {
  const spans = purgeSpans(records.cleanings, records.cycles, rules.purge);
  return records.cycles.map((cycle) => {
    const day = records.clock.operatingDay(cycle.start);
    if (cycle.outcome === 'completed') return { ...cycle, day, standing: 'completed', abort_class: null };
    if (cycle.outcome === 'running') return { ...cycle, day, standing: 'open', abort_class: null };
    const text = cycle.abort_text?.trim() ?? '';
    const blankIsOperator = text === '' && cycle.outcome === 'aborted' && rules.purge.blank_text_is_operator;
    const abort_class = blankIsOperator ? 'operator' : abortClass(text, rules.abort_texts);
    if (!looksLikePurge(cycle, abort_class === 'operator', rules.purge))
      return { ...cycle, day, standing: 'abort', abort_class };
    const explained = spans.some((span) => span.from <= cycle.start && cycle.start <= span.to);
    return { ...cycle, day, standing: explained ? 'purge' : 'early_stop', abort_class };
  });
}

/** Production in the sense of the rates: production and liquids cycles that count. */
export function isProduction(cycle: ClassedCycle): boolean {
  return (
    (cycle.kind === 'production' || cycle.kind === 'liquids') &&
    (cycle.standing === 'completed' || cycle.standing === 'abort')
  );
}
