import { cellText } from '../ingest/cell.ts';
import { monthOfName } from '../ingest/codecs/month-names.ts';
import { foldName } from '../site/unit-names.ts';
import type { FoundTable } from './find-table.ts';
import { withoutMeasure } from './header-measure.ts';
import { idOf, type ProposedSource, type ProposedUnit, type SiteChoice } from './proposal.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A source with the tables that it was proposed from. */
export interface SourceOfTables {
  source: ProposedSource;
  tables: readonly FoundTable[];
}

const MOST_SITES = 20;

/**
 * The ways in which the files may be those of more than one site: a folder for each, a column that names it, or names of units that begin with it. None is ever
 * chosen here: which of them holds is a question.
 *
 * @param perFolder sources where tables of different top folders are kept apart, by folder
 */
export function siteChoices(
  sources: readonly SourceOfTables[],
  perFolder: ReadonlyMap<string, readonly SourceOfTables[]>,
  vocabulary: Vocabulary,
): SiteChoice[] {
  return [
    byFolder(perFolder, vocabulary),
    byColumn(sources, vocabulary),
    byNames(sources, vocabulary),
  ].filter((choice) => choice !== undefined);
}

/** The folder at the top in which a file lies; undefined where it lies in none. */
export function topFolder(file: string): string | undefined {
  const at = file.indexOf('/');
  return at < 0 ? undefined : file.slice(0, at);
}

function byFolder(
  perFolder: ReadonlyMap<string, readonly SourceOfTables[]>,
  vocabulary: Vocabulary,
): SiteChoice | undefined {
  const folders = [...perFolder.keys()];
  if (folders.length < 2 || folders.length > MOST_SITES) return undefined;
  // Folders of months, of kinds of record and of archives that are no site.
  const speaks = (name: string): boolean =>
    name === '' ||
    /\d{4}|^\d+$/.test(name) ||
    (name.match(/\p{L}+/gu) ?? []).some((word) => word.length > 2 && monthOfName(word) !== undefined) ||
    vocabulary.kinds(name).some(({ score }) => score >= 0.7);
  if (folders.some((name) => speaks(name.replace(/\.(?:zip|gz)$/i, '')))) return undefined;
  const kinds = new Map<string, number>();
  for (const list of perFolder.values())
    for (const kind of new Set(list.map(({ source }) => source.kind.value ?? '?')))
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  if (![...kinds.values()].some((count) => count > 1)) return undefined;
  const sites = siteIds(folders.map((name) => name.replace(/\.(?:zip|gz)$/i, '')));
  return {
    by: 'folder',
    text: `several sites, a folder each: ${sites.join(', ')}`,
    sites,
    sources: folders.flatMap((folder, at) =>
      perFolder.get(folder)!.map(({ source }) => ({ ...source, site: sites[at]! })),
    ),
    units: uniqueUnits(
      folders.flatMap((folder, at) =>
        perFolder
          .get(folder)!
          .flatMap(({ source }) => source.units.map((name) => ({ name, site: sites[at]! }))),
      ),
    ),
  };
}

/** Values of a column, row by row; undefined where a table does not have it. */
function valuesOf(tables: readonly FoundTable[], header: string): string[] | undefined {
  const values: string[] = [];
  for (const { headers, rows } of tables) {
    const at = headers.indexOf(header);
    if (at < 0) return undefined;
    for (const row of rows) values.push(cellText(row.cells[at]));
  }
  return values;
}

function byColumn(sources: readonly SourceOfTables[], vocabulary: Vocabulary): SiteChoice | undefined {
  const columns = sources.map(({ source, tables }) => {
    const header = source.unread.find(({ header }) =>
      vocabulary
        .headerOf(withoutMeasure(header), { hot: undefined, said: undefined })
        .some(({ key, score }) => key === 'site' && score >= 0.8),
    )?.header;
    const values = header === undefined ? undefined : valuesOf(tables, header);
    // A row that names no site would be read once for each of them.
    return header !== undefined && values && !values.includes('') ? { header, values } : undefined;
  });
  const names = [...new Set(columns.flatMap((column) => column?.values ?? []))].sort();
  if (names.length < 2 || names.length > MOST_SITES) return undefined;
  const siteOf = new Map(siteIds(names).map((id, at) => [names[at]!, id]));
  const pairs = sources.flatMap(({ source, tables }, at): { name: string; site: string }[] => {
    const column = columns[at];
    const units = unitHeader(source) === undefined ? undefined : valuesOf(tables, unitHeader(source)!);
    return column && units
      ? units
          .map((name, row) => ({ name, site: siteOf.get(column.values[row]!)! }))
          .filter(({ name }) => name !== '')
      : [];
  });
  const headers = [...new Set(columns.flatMap((column) => column?.header ?? []))];
  return {
    by: 'column',
    text: `several sites, named in the column ${headers.map((header) => `"${header}"`).join(', ')}: ${[...siteOf.values()].join(', ')}`,
    sites: [...siteOf.values()],
    sources: sources.flatMap(({ source, tables }, at): ProposedSource[] => {
      const column = columns[at];
      if (column) {
        const units = unitHeader(source) === undefined ? undefined : valuesOf(tables, unitHeader(source)!);
        return shared(source, column.header, column.values, units, (name) => siteOf.get(name)!);
      }
      const own = new Set(
        source.units.flatMap((name) =>
          pairs.filter((pair) => sameName(pair.name, name)).map(({ site }) => site),
        ),
      );
      return [{ ...source, site: own.size === 1 ? [...own][0] : undefined }];
    }),
    units: uniqueUnits(pairs),
  };
}

const PREFIX = /^(\p{L}[\p{L} ]*\p{L})[ _./-]*[\p{N}\p{Lu}]{1,3}$/u;

function byNames(sources: readonly SourceOfTables[], vocabulary: Vocabulary): SiteChoice | undefined {
  const names = [...new Set(sources.flatMap(({ source }) => source.units))];
  const prefixOf = (name: string): string | undefined => PREFIX.exec(name.trim())?.[1];
  const counts = new Map<string, number>();
  for (const name of names) {
    const prefix = prefixOf(name);
    if (prefix === undefined) return undefined;
    counts.set(prefix, (counts.get(prefix) ?? 0) + 1);
  }
  const prefixes = [...counts.keys()].sort();
  if (prefixes.length < 2 || prefixes.length > MOST_SITES || [...counts.values()].some((count) => count < 2))
    return undefined;
  // "Autoclave 1" and "Sterilizer 1" begin with what they are, not with where they stand.
  const isThing = (prefix: string): boolean =>
    vocabulary.headerOf(prefix, { hot: undefined, said: undefined }).some(({ key }) => key === 'unit');
  if (prefixes.some(isThing)) return undefined;
  const siteOf = new Map(siteIds(prefixes).map((id, at) => [prefixes[at]!, id]));
  return {
    by: 'names',
    text: `several sites, with which the names of units begin: ${[...siteOf.values()].join(', ')}`,
    sites: [...siteOf.values()],
    sources: sources.flatMap(({ source, tables }): ProposedSource[] => {
      const header = unitHeader(source);
      const values = header === undefined ? undefined : valuesOf(tables, header);
      if (header === undefined || !values) return [{ ...source, site: undefined }];
      return shared(source, header, values, values, (name) => siteOf.get(prefixOf(name) ?? '') ?? '');
    }),
    units: uniqueUnits(names.map((name) => ({ name, site: siteOf.get(prefixOf(name)!)! }))),
  };
}

/**
 * A source of a file that several sites share: one for each, in which the rows of the others are skipped.
 *
 * @param values what tells the site, row by row
 * @param units names of the units, row by row; undefined: no column has them
 */
function shared(
  source: ProposedSource,
  header: string,
  values: readonly string[],
  units: readonly string[] | undefined,
  siteOf: (value: string) => string,
): ProposedSource[] {
  const named = [...new Set(values)].filter((value) => value !== '').sort();
  const sites = [...new Set(named.map(siteOf))];
  if (sites.length === 1) return [{ ...source, site: sites[0] }];
  return sites.map((site) => ({
    ...source,
    site,
    unitRows: units ? rowsOfSite(units, (row) => siteOf(values[row]!) === site) : source.unitRows,
    skip: {
      ...source.skip,
      [header]: [...(source.skip[header] ?? []), ...named.filter((value) => siteOf(value) !== site)],
    },
  }));
}

function rowsOfSite(units: readonly string[], isOfSite: (row: number) => boolean): Map<string, number> {
  const rows = new Map<string, number>();
  for (const [row, name] of units.entries())
    if (name !== '' && isOfSite(row)) rows.set(name, (rows.get(name) ?? 0) + 1);
  return rows;
}

function unitHeader({ columns }: ProposedSource): string | undefined {
  const from = columns.find(({ field }) => field === 'unit')?.from;
  return from && 'headers' in from ? from.headers[0] : undefined;
}

/** Ids as the site file allows them, all different. */
function siteIds(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name, at) => {
    const plain = idOf(name);
    const id = used.has(plain) ? `site ${at + 1}` : plain;
    used.add(id);
    return id;
  });
}

const sameName = (a: string, b: string): boolean => foldName(a) === foldName(b);

/** Each name of each site as a unit; names that stand at two sites get the site's name before them. */
function uniqueUnits(pairs: readonly { name: string; site: string }[]): ProposedUnit[] {
  const found = new Map<string, { name: string; site: string }>();
  for (const pair of pairs) found.set(`${foldName(pair.name)}\u0000${pair.site}`, pair);
  const all = [...found.values()].sort((a, b) =>
    a.site < b.site ? -1 : a.site > b.site ? 1 : a.name < b.name ? -1 : 1,
  );
  return all.map(({ name, site }) => {
    const twice = all.some((other) => other.site !== site && sameName(other.name, name));
    return { id: idOf(twice ? `${site} ${name}` : name), name, site };
  });
}
