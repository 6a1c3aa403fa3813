import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import type { Day } from '../../site/day.ts';
import type { Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';

/** A unit whose chamber is recorded as cleaned on so many days of use that another work may be meant. */
export interface ManyChambers {
  unit: string;
  cleaned_days: number;
  days_of_use: number;
  /** Sources of the records. */
  sources: string[];
}

/** Chambers are cleaned every few weeks; from a third of the days of use on, and so many days, the words of the log are in doubt (chosen, no source). */
const MANY = { share: 1 / 3, days: 10 } as const;

/** Counts days on which chambers were cleaned, beside days of use: of all records at once, or one part after the other. Each unit's records must come together. */
export class ChamberDays {
  readonly #site: Site;
  readonly #found: ManyChambers[] = [];

  constructor(site: Site) {
    this.#site = site;
  }

  see({ cycles, cleanings }: Records): void {
    const cleaned = new Map<string, { days: Set<Day>; sources: Set<string> }>();
    const clockOf = clocksOfUnits(this.#site);
    for (const { unit, task, state, time, origin } of cleanings) {
      if (task !== 'chamber' || state === 'missed' || state === 'not_due') continue;
      const own = cleaned.get(unit) ?? { days: new Set(), sources: new Set() };
      own.days.add(clockOf(unit).operatingDay(time));
      own.sources.add(origin.source);
      cleaned.set(unit, own);
    }
    if (cleaned.size === 0) return;
    const used = new Map<string, Set<Day>>();
    for (const { unit, start } of cycles) {
      if (!cleaned.has(unit)) continue;
      const days = used.get(unit) ?? new Set();
      days.add(clockOf(unit).operatingDay(start));
      used.set(unit, days);
    }
    for (const [unit, { days, sources }] of cleaned) {
      const daysOfUse = used.get(unit)?.size ?? 0;
      if (days.size >= MANY.days && days.size > daysOfUse * MANY.share && daysOfUse > 0)
        this.#found.push({
          unit,
          cleaned_days: days.size,
          days_of_use: daysOfUse,
          sources: [...sources].sort(),
        });
    }
  }

  /** Units with many, by name. */
  many(): ManyChambers[] {
    return this.#found.toSorted((a, b) => (a.unit < b.unit ? -1 : 1));
  }
}

/** Most units that are named in the line. */
const MOST_NAMED = 3;

/** One line for a person, of all units. */
export function manyChambersLine(many: readonly ManyChambers[]): string {
  const named = many
    .slice(0, MOST_NAMED)
    .map(
      ({ unit, cleaned_days, days_of_use }) => `${unit} (${cleaned_days} days, ${days_of_use} days of use)`,
    );
  const more = many.length - named.length;
  const sources = [...new Set(many.flatMap((one) => one.sources))];
  return `Chambers are said to be cleaned nearly each day: ${named.join(', ')}${more > 0 ? ` and ${more} more units` : ''}. Look at what the site file takes for the task in ${sources.join(', ')}`;
}
