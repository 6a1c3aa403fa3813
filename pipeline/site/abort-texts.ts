import type { AbortClass } from './vocabulary.ts';

/** One row of the table from abort text to class: the text contains the phrase; letter case, runs of blanks and the encoding of accents aside. */
export interface AbortText {
  contains: string;
  class: AbortClass;
}

/**
 * Default table, in general English trade words; a site's own rows come first and rule.
 * Common practice, no source: whether a class is plausibly about cleanliness follows from the physics of air and condensate removal.
 * First match wins, so the narrower phrase stands before the wider.
 */
export const DEFAULT_ABORT_TEXTS: readonly AbortText[] = [
  { contains: 'steam supply', class: 'utility' },
  { contains: 'steam pressure low', class: 'utility' },
  { contains: 'water supply', class: 'utility' },
  { contains: 'water pressure', class: 'utility' },
  { contains: 'compressed air', class: 'utility' },
  { contains: 'air supply', class: 'utility' },
  { contains: 'power', class: 'utility' },
  { contains: 'air detector', class: 'air_detector' },
  { contains: 'evacuation', class: 'slow_evacuation' },
  { contains: 'vacuum not reached', class: 'slow_evacuation' },
  { contains: 'vacuum time', class: 'slow_evacuation' },
  { contains: 'exhaust', class: 'slow_exhaust' },
  { contains: 'pressure not released', class: 'slow_exhaust' },
  { contains: 'water in chamber', class: 'water_in_chamber' },
  { contains: 'condensate', class: 'water_in_chamber' },
  { contains: 'drain temperature', class: 'water_in_chamber' },
  { contains: 'heat-up', class: 'come_up_slow' },
  { contains: 'heat up', class: 'come_up_slow' },
  { contains: 'come-up', class: 'come_up_slow' },
  { contains: 'come up', class: 'come_up_slow' },
  { contains: 'set temperature not reached', class: 'come_up_slow' },
  { contains: 'temperature low', class: 'temperature_low' },
  { contains: 'temperature below', class: 'temperature_low' },
  { contains: 'low temperature', class: 'temperature_low' },
  { contains: 'door', class: 'door' },
  { contains: 'emergency stop', class: 'operator' },
  { contains: 'operator', class: 'operator' },
  { contains: 'user stop', class: 'operator' },
  { contains: 'stopped by hand', class: 'operator' },
  { contains: 'sensor', class: 'electronics' },
  { contains: 'printer', class: 'electronics' },
  { contains: 'controller', class: 'electronics' },
  { contains: 'software', class: 'electronics' },
];
