import type { Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { cleaningClocks } from './cleaning-clocks.ts';
import { clockDifferences } from './clock-differences.ts';
import { counterHistories } from './counters.ts';
import { entryHabits } from './entry-habits.ts';
import type { RecordQuality } from './record-quality-schema.ts';

/**
 * How good the records are, beside what they say: differences of clocks, habits of entering, counters. Nothing is corrected by it; a site that trusts a difference
 * sets `clock_offset_minutes` of the source.
 *
 * @param histories made of the same records
 */
export function recordQuality(
  site: Site,
  records: Records,
  histories: readonly UnitHistory[],
): RecordQuality {
  return {
    clock_differences: clockDifferences(site, records),
    cleaning_clocks: cleaningClocks(site, histories),
    entry: entryHabits(records),
    counters: counterHistories(site, records),
  };
}
