import type { Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { cleaningClocks } from './cleaning-clocks.ts';
import { clockDifferences } from './clock-differences.ts';
import { counterHistories } from './counters.ts';
import { entryHabits, type TimesOfSource, timesOfSources } from './entry-habits.ts';
import type { RecordQuality } from './record-quality-schema.ts';

/** What is told of the quality of the records of some units, all of their sites. */
export interface QualityParts extends Omit<RecordQuality, 'entry'> {
  times: TimesOfSource[];
}

/** @param histories made of the same records */
export function qualityParts(site: Site, records: Records, histories: readonly UnitHistory[]): QualityParts {
  return {
    clock_differences: clockDifferences(site, records),
    cleaning_clocks: cleaningClocks(site, histories),
    counters: counterHistories(site, records),
    times: timesOfSources(records),
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
