import { type CleaningPolicies, cleaningPolicies } from './cleaning-policy.ts';
import { DEFAULT_SOURCES } from './default-sources.ts';
import type { Rules } from './rules.ts';
import type { SiteEntry, SiteFile, Source } from './site-schema.ts';
import { sourceName } from './source-name.ts';
import { type UnitReader, unitReader } from './unit-names.ts';
import { type WallClock, wallClock } from './wall-clock.ts';

/** A site file made ready for use: clocks, names and policies that the stages ask, and the declaration itself for printing. */
export interface Site extends CleaningPolicies {
  declared: SiteFile;
  organisation: string;
  sites: ReadonlyMap<string, SiteEntry & { clock: WallClock }>;
  /** Ids of declared units in the order of the file; undefined where units are taken from the records. */
  unitIds: readonly string[] | undefined;
  sources: readonly (Source & { name: string })[];
  rules: Rules;
  readUnit: UnitReader;
}

/** Makes a validated site file ready for use. */
export function prepareSite(declared: SiteFile): Site {
  const sources = declared.sources ?? DEFAULT_SOURCES;
  return {
    declared,
    organisation: declared.organisation ?? '',
    sites: new Map(
      declared.sites.map((entry) => [entry.id, { ...entry, clock: wallClock(entry.zone, entry.day_starts) }]),
    ),
    unitIds: declared.units?.map((unit) => unit.id),
    sources: sources.map((source, index) => ({
      ...source,
      name: sourceName(source, index),
    })),
    rules: declared.rules,
    readUnit: unitReader(declared),
    ...cleaningPolicies(declared),
  };
}
