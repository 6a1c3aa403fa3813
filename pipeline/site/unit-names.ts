import { type Day, parseDay } from './day.ts';
import { foldText } from './fold-text.ts';
import type { SiteFile, UnitEntry } from './site-schema.ts';

/** What a name in an export means on a day. */
export type NamedUnit =
  | { known: true; unit: string; site: string }
  | { known: false; reason: 'unknown_name' | 'name_not_valid_on_day' | 'before_service' | 'reserved_name' };

/** Reads the name of a unit as it stands in an export. `site` narrows names that stand for units of two sites. */
export type UnitReader = (name: string, day: Day, site?: string) => NamedUnit;

interface Meaning {
  unit: string;
  site: string;
  from: Day;
  to: Day;
  inServiceSince: Day;
}

/** Names are compared without regard to letter case, runs of blanks and the way in which accents are encoded. */
export const foldName = (name: string): string => foldText(name).trim();

/** Stands for all units together where else a unit's id stands, as in scopes and in names of comparisons; so no unit may have it for its id. */
const ALL_UNITS = 'fleet';

export const isReserved = (id: string): boolean => foldName(id) === ALL_UNITS;

/**
 * The reader of unit names. An id always means its unit; an alias means it between its days. Where the site file lists no units, each name
 * found is a unit of the one site, as it is spelled, but for the reserved one.
 */
export function unitReader(file: SiteFile): UnitReader {
  if (!file.units) {
    const site = file.sites[0]!.id;
    return (name) =>
      isReserved(name)
        ? { known: false, reason: 'reserved_name' }
        : { known: true, unit: name.trim().replace(/\s+/g, ' '), site };
  }
  const meanings = new Map<string, Meaning[]>();
  for (const unit of file.units)
    for (const [name, meaning] of namesOf(unit, file)) {
      const list = meanings.get(name) ?? [];
      list.push(meaning);
      meanings.set(name, list);
    }
  return (name, day, site) => {
    const all = meanings.get(foldName(name)) ?? [];
    const candidates = site === undefined ? all : all.filter((meaning) => meaning.site === site);
    if (candidates.length === 0) return { known: false, reason: 'unknown_name' };
    const valid = candidates.find((meaning) => meaning.from <= day && day <= meaning.to);
    if (!valid) return { known: false, reason: 'name_not_valid_on_day' };
    if (day < valid.inServiceSince) return { known: false, reason: 'before_service' };
    return { known: true, unit: valid.unit, site: valid.site };
  };
}

function namesOf(unit: UnitEntry, file: SiteFile): [string, Meaning][] {
  const base = {
    unit: unit.id,
    site: unit.site ?? file.sites[0]!.id,
    inServiceSince: unit.in_service_since ? parseDay(unit.in_service_since)! : Number.NEGATIVE_INFINITY,
  };
  const always = { ...base, from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  return [
    [foldName(unit.id), always],
    ...unit.aliases.map((alias): [string, Meaning] => [
      foldName(alias.name),
      {
        ...base,
        site: alias.site ?? base.site,
        from: alias.from ? parseDay(alias.from)! : Number.NEGATIVE_INFINITY,
        to: alias.to ? parseDay(alias.to)! : Number.POSITIVE_INFINITY,
      },
    ]),
  ];
}
