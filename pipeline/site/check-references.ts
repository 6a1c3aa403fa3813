import { parseDay } from './day.ts';
import { measureAmiss } from './measures.ts';
import { recordFields } from './records.ts';
import type { SiteFile, UnitEntry } from './site-schema.ts';
import { sourceName } from './source-name.ts';
import { foldName, isReserved } from './unit-names.ts';
import { isZone } from './wall-clock.ts';

/** A fault of the site file that the schema alone can't see, with the path of the value at fault. */
export interface Fault {
  path: (string | number)[];
  message: string;
}

/** Checks what one part of the site file says of another: zones, ids, names, dates, fields. Faults come in the order of the file. */
export function checkReferences(file: SiteFile): Fault[] {
  const siteIds = new Set(file.sites.map((site) => site.id));
  return [
    ...sites(file),
    ...units(file, siteIds),
    ...policies(file),
    ...sources(file, siteIds),
    ...merges(file),
  ];
}

function* sites(file: SiteFile): Generator<Fault> {
  yield* repeated(
    file.sites.map((site) => site.id),
    (index) => ['sites', index, 'id'],
    'site',
  );
  for (const [index, site] of file.sites.entries()) {
    if (!isZone(site.zone)) {
      yield {
        path: ['sites', index, 'zone'],
        message: `must be a time zone by its IANA name like Europe/Berlin, found "${site.zone}"`,
      };
    }
  }
}

function* units(file: SiteFile, siteIds: Set<string>): Generator<Fault> {
  if (!file.units) {
    if (file.sites.length > 1)
      yield { path: ['sites'], message: 'must be followed by units, since there is more than one site' };
    return;
  }
  yield* repeated(
    file.units.map((unit) => foldName(unit.id)),
    (index) => ['units', index, 'id'],
    'unit',
  );
  for (const [index, unit] of file.units.entries()) {
    if (isReserved(unit.id)) {
      yield {
        path: ['units', index, 'id'],
        message: `must be another name, since this one stands for all units together, found "${unit.id}"; as an alias it may stand`,
      };
    }
    if (unit.site === undefined && file.sites.length > 1) {
      yield {
        path: ['units', index],
        message: `must say its site, since there is more than one (unit ${unit.id})`,
      };
    }
    if (unit.site !== undefined && !siteIds.has(unit.site)) {
      yield {
        path: ['units', index, 'site'],
        message: `must be one of the sites (${[...siteIds].join(', ')}), found "${unit.site}"`,
      };
    }
    for (const [at, alias] of unit.aliases.entries()) {
      if (alias.site !== undefined && !siteIds.has(alias.site)) {
        yield {
          path: ['units', index, 'aliases', at, 'site'],
          message: `must be one of the sites (${[...siteIds].join(', ')}), found "${alias.site}"`,
        };
      }
    }
    yield* dates(unit, index);
  }
  yield* overlappingNames(file);
}

function* dates(unit: UnitEntry, index: number): Generator<Fault> {
  const texts: [(string | number)[], string | undefined][] = [
    [['units', index, 'in_service_since'], unit.in_service_since],
    ...unit.aliases.flatMap((alias, at): [(string | number)[], string | undefined][] => [
      [['units', index, 'aliases', at, 'from'], alias.from],
      [['units', index, 'aliases', at, 'to'], alias.to],
    ]),
  ];
  for (const [path, text] of texts) {
    if (text !== undefined && parseDay(text) === undefined)
      yield { path, message: `must be a date of the calendar, found "${text}"` };
  }
  for (const [at, alias] of unit.aliases.entries()) {
    if (alias.from && alias.to && alias.from > alias.to) {
      yield {
        path: ['units', index, 'aliases', at, 'to'],
        message: `must not lie before from (${alias.from}), found "${alias.to}"`,
      };
    }
  }
}

/** A name must mean one unit on a day (units of two sites may share a name). */
function* overlappingNames(file: SiteFile): Generator<Fault> {
  const seen: { name: string; site: string; unit: string; from: string; to: string }[] = [];
  for (const [index, unit] of file.units!.entries()) {
    const own = unit.site ?? file.sites[0]!.id;
    const names = [
      { name: unit.id, from: undefined, to: undefined, site: undefined, path: ['units', index, 'id'] },
      ...unit.aliases.map((alias, at) => ({ ...alias, path: ['units', index, 'aliases', at, 'name'] })),
    ];
    for (const { name, from = '0000-00-00', to = '9999-99-99', path, site = own } of names) {
      const clash = seen.find(
        (other) =>
          other.name === foldName(name) &&
          other.site === site &&
          other.unit !== unit.id &&
          other.from <= to &&
          from <= other.to,
      );
      if (clash) yield { path, message: `must mean one unit on a day: "${name}" also means ${clash.unit}` };
      seen.push({ name: foldName(name), site, unit: unit.id, from, to });
    }
  }
}

function* policies(file: SiteFile): Generator<Fault> {
  const ids = new Set(file.units?.map((unit) => unit.id));
  for (const [index, entry] of file.cleaning.entries()) {
    for (const [at, unit] of (entry.units ?? []).entries()) {
      if (file.units && !ids.has(unit)) {
        yield {
          path: ['cleaning', index, 'units', at],
          message: `must be the id of a unit, found "${unit}"`,
        };
      }
    }
  }
}

function* sources(file: SiteFile, siteIds: Set<string>): Generator<Fault> {
  const entries = file.sources ?? [];
  yield* repeated(entries.map(sourceName), (index) => ['sources', index, 'name'], 'source');
  for (const [index, source] of entries.entries()) {
    const fields = recordFields(source.kind);
    const names = fields.map((field) => field.name);
    if (source.site !== undefined && !siteIds.has(source.site)) {
      yield {
        path: ['sources', index, 'site'],
        message: `must be one of the sites (${[...siteIds].join(', ')}), found "${source.site}"`,
      };
    }
    if (source.site === undefined && file.sites.length > 1) {
      yield {
        path: ['sources', index],
        message: 'must say its site, since there is more than one: the site sets the clock',
      };
    }
    for (const part of ['columns', 'values'] as const) {
      for (const field of Object.keys(source[part])) {
        if (!names.includes(field)) {
          yield {
            path: ['sources', index, part, field],
            message: `must be a field of ${source.kind} (${names.join(', ')}), found "${field}"`,
          };
        }
      }
    }
    for (const [field, mapping] of Object.entries(source.columns)) {
      const holds = fields.find((candidate) => candidate.name === field)?.meta.holds;
      if (typeof mapping !== 'object' || !('column' in mapping) || mapping.measure === undefined) continue;
      const amiss = holds && measureAmiss(holds, mapping.measure);
      if (amiss) yield { path: ['sources', index, 'columns', field, 'measure'], message: amiss };
    }
    for (const [field, words] of Object.entries(source.values)) {
      const schema = fields.find((candidate) => candidate.name === field)?.schema;
      for (const word of Object.keys(words)) {
        if (schema && 'options' in schema && !(schema.options as string[]).includes(word)) {
          yield {
            path: ['sources', index, 'values', field, word],
            message: `must be a word of ${field} (${(schema.options as string[]).join(', ')}), found "${word}"`,
          };
        }
      }
    }
  }
}

function* merges(file: SiteFile): Generator<Fault> {
  const names = (file.sources ?? []).map((source, index) => ({
    name: sourceName(source, index),
    kind: source.kind,
  }));
  for (const [index, { kind, sources }] of (file.merge ?? []).entries()) {
    const known = names.filter((source) => source.kind === kind).map(({ name }) => name);
    for (const [at, name] of sources.entries()) {
      const path = ['merge', index, 'sources', at];
      if (!known.includes(name))
        yield {
          path,
          message: `must be the name of a source of ${kind} (${known.join(', ')}), found "${name}"`,
        };
      else if (sources.indexOf(name) < at) yield { path, message: `must stand once, found "${name}" twice` };
    }
  }
}

function* repeated(
  ids: string[],
  path: (index: number) => (string | number)[],
  what: string,
): Generator<Fault> {
  for (const [index, id] of ids.entries()) {
    if (ids.indexOf(id) < index)
      yield { path: path(index), message: `must be the only ${what} of this name, found "${id}" twice` };
  }
}
