import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { cleaningClocks, type LogsOfUnit, logsOfUnit } from './cleaning-clocks.ts';
import { clockDifferences } from './clock-differences.ts';
import { counterHistory } from './counters.ts';
import { entryHabits, type TimesOfSource, timesOfSources } from './entry-habits.ts';
import type { CounterHistory, RecordQuality } from './record-quality-schema.ts';

/** What is told of the quality of the records of some units, all of their sites. */
export interface QualityParts extends Omit<RecordQuality, 'entry'> {
  times: TimesOfSource[];
}

/** What is told of a unit by itself, and what is set beside that of the other units of its site. */
export interface QualityOfUnit extends Pick<QualityParts, 'clock_differences' | 'times'> {
  counter: CounterHistory | null;
  logs: LogsOfUnit;
}

export function qualityOfUnit(site: Site, history: UnitHistory): QualityOfUnit {
  return {
    clock_differences: clockDifferences(site, history),
    counter: counterHistory(history),
    times: timesOfSources(history),
    logs: logsOfUnit(history),
  };
}

export function qualityParts(site: Site, units: readonly QualityOfUnit[]): QualityParts {
  return {
    clock_differences: units.flatMap((unit) => unit.clock_differences),
    cleaning_clocks: cleaningClocks(
      site,
      units.map((unit) => unit.logs),
    ),
    counters: units.flatMap((unit) => unit.counter ?? []),
    times: units.flatMap((unit) => unit.times),
  };
}

/**
 * How good the records are, beside what they say: differences of clocks, habits of entering, counters. Nothing is corrected by it; a site that trusts a difference
 * sets `clock_offset_minutes` of the source.
 */
export function recordQuality({
  clock_differences,
  cleaning_clocks,
  counters,
  times,
}: QualityParts): RecordQuality {
  return { clock_differences, cleaning_clocks, entry: entryHabits(times), counters };
}
