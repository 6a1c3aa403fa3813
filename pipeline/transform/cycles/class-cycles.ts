import type { Day } from '../../site/day.ts';
import type { Cycle } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { AbortClass } from '../../site/vocabulary.ts';
import type { UnitRecords } from '../records-by-unit.ts';
import { abortClasses } from './abort-class.ts';
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
  const spans = purgeSpans(records.cleanings, records.cycles, rules.purge, records.clock);
  const classOf = abortClasses(rules.abort_texts);
  return records.cycles.map((cycle) => {
    const { standing, abort_class } = standingOf(cycle, spans, rules.purge, classOf);
    return classed(cycle, records.clock.operatingDay(cycle.start), standing, abort_class);
  });
}

function standingOf(
  cycle: Cycle,
  spans: ReturnType<typeof purgeSpans>,
  purge: Rules['purge'],
  classOf: (text: string) => AbortClass,
): Pick<ClassedCycle, 'standing' | 'abort_class'> {
  if (cycle.outcome === 'completed') return { standing: 'completed', abort_class: null };
  if (cycle.outcome === 'running') return { standing: 'open', abort_class: null };
  const text = cycle.abort_text?.trim() ?? '';
  const blankIsOperator = text === '' && cycle.outcome === 'aborted' && purge.blank_text_is_operator;
  const abort_class = blankIsOperator ? 'operator' : classOf(text);
  if (!looksLikePurge(cycle, abort_class === 'operator', purge)) return { standing: 'abort', abort_class };
  const explained = spans.some((span) => span.from <= cycle.start && cycle.start <= span.to);
  return { standing: explained ? 'purge' : 'early_stop', abort_class };
}

/** Field by field, since copies by spread take three times the memory, and there may be millions. */
function classed(
  cycle: Cycle,
  day: Day,
  standing: CycleStanding,
  abort_class: AbortClass | null,
): ClassedCycle {
  const all: Required<Record<keyof ClassedCycle, unknown>> = {
    unit: cycle.unit,
    start: cycle.start,
    kind: cycle.kind,
    outcome: cycle.outcome,
    end: cycle.end,
    cycle_number: cycle.cycle_number,
    abort_text: cycle.abort_text,
    evacuation_s: cycle.evacuation_s,
    heat_up_s: cycle.heat_up_s,
    exposure_s: cycle.exposure_s,
    exhaust_s: cycle.exhaust_s,
    drying_s: cycle.drying_s,
    exposure_temperature_min_c: cycle.exposure_temperature_min_c,
    exposure_temperature_max_c: cycle.exposure_temperature_max_c,
    exposure_pressure_kpa: cycle.exposure_pressure_kpa,
    dry_vacuum_kpa: cycle.dry_vacuum_kpa,
    drain_temperature_c: cycle.drain_temperature_c,
    time_mark: cycle.time_mark,
    origin: cycle.origin,
    day,
    standing,
    abort_class,
  };
  return all as ClassedCycle;
}

/** Production in the sense of the rates: production and liquids cycles that count. */
export function isProduction(cycle: ClassedCycle): boolean {
  return (
    (cycle.kind === 'production' || cycle.kind === 'liquids') &&
    (cycle.standing === 'completed' || cycle.standing === 'abort')
  );
}
