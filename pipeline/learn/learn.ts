import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { openArchives } from '../ingest/archives.ts';
import { type OpenFile, openFile } from '../ingest/file-bytes.ts';
import { type FoundFiles, findFiles } from '../ingest/find-files.ts';
import { tableName } from '../ingest/reading.ts';
import { archiveLimitsSchema } from '../site/file-shapes.ts';
import { UserError } from '../user-error.ts';
import { agreeOnDates } from './agree-dates.ts';
import { type FoundTable, findTable } from './find-table.ts';
import { groupTables } from './group-files.ts';
import { unitLinks, withSites } from './link-units.ts';
import type { Proposal, ProposedSource, SITE_CHOICES } from './proposal.ts';
import { type SourceOfTables, siteChoices, topFolder } from './propose-sites.ts';
import { baseName, proposeSource } from './propose-source.ts';
import { readSample } from './read-sample.ts';
import type { Vocabulary } from './vocabulary.ts';

export interface LearnSettings {
  vocabulary: Vocabulary;
  /** Files and folders to look at, relative to the folder with forward slashes; left out: all. */
  only?: readonly string[] | undefined;
  /** Files and folders that are no inputs. */
  ignore?: readonly string[];
  zone?: string | undefined;
  /** Whether the files are of one site or several, where that is known; else it is a question. */
  sites?: (typeof SITE_CHOICES)[number] | undefined;
  open?: OpenFile;
  onProgress?: (line: string) => void;
}

const EXPORTS = /\.(?:csv|txt|tsv|tab|psv|prn|lst|dat|asc|log|xlsx|xlsm)(?:\.gz)?$/i;

/**
 * Looks at the files below a folder and proposes how to read them. Reads a sample of each (its first 20,000 rows), writes nothing, asks nothing; the same files
 * give the same proposal.
 *
 * @throws UserError where the folder can't be listed, or the files are not those of several sites in the way that is said
 */
export async function learn(folder: string, settings: LearnSettings): Promise<Proposal> {
  const found = await filesGiven(folder, settings.only, settings.ignore);
  const inputs = await openArchives(
    path.resolve(folder),
    found.files,
    settings.open ?? openFile,
    archiveLimitsSchema.parse({}),
  );
  const left: { file: string; why: string }[] = [
    ...found.refused.map((file) => ({ file, why: 'is a link that leads out of the folder or to nothing' })),
    ...inputs.refused.map(({ path: file, expected }) => ({ file, why: `must be ${expected}` })),
  ];
  const { files } = inputs;
  const tables: FoundTable[] = [];
  for (const file of files) {
    if (!EXPORTS.test(file.path)) {
      left.push({ file: file.path, why: 'is no table by its name (.csv, .tsv, .txt, .xlsx)' });
      continue;
    }
    settings.onProgress?.(file.path);
    const samples = await readSample(file);
    if (typeof samples === 'string') left.push({ file: file.path, why: samples });
    else
      for (const sample of samples) {
        const table = findTable(sample, settings.vocabulary);
        if (table && table.rows.length > 0) tables.push(table);
        else left.push({ file: tableName(sample), why: 'holds no table with a header and rows below it' });
      }
  }
  // A pattern must not mean files beside those that were looked at.
  const all = [...new Set([...files.map((file) => file.path), ...found.beside])];
  const proposed = sourcesOf(tables, all, settings.vocabulary, (file) =>
    left.push({ file, why: 'holds columns of no record that is known' }),
  );
  const choices = siteChoices(
    proposed,
    sourcesPerFolder(tables, all, settings.vocabulary),
    settings.vocabulary,
  );
  const proposal: Proposal = {
    zone: settings.zone,
    sites: [],
    units: [],
    unitLinks: unitLinks(proposed.map(({ source }) => source)),
    siteChoices: choices.map((choice) => ({ ...choice, sources: named(choice.sources) })),
    sources: named(proposed.map(({ source }) => source)),
    left,
  };
  const chosen = choices.length === 0 ? 'one' : settings.sites;
  if (chosen === undefined) return proposal;
  const choice = chosen === 'one' ? chosen : proposal.siteChoices.find(({ by }) => by === chosen);
  if (!choice)
    throw new UserError(
      'no_such_sites',
      `The files can't be told apart into sites by ${chosen}; found ${choices.map(({ by, text }) => `${by} (${text})`).join('; ')}`,
    );
  return withSites(proposal, choice);
}

/** The files of the places that are given, and names of those that lie beside them. */
async function filesGiven(
  folder: string,
  only: readonly string[] | undefined,
  ignore: readonly string[] | undefined,
): Promise<FoundFiles & { beside: string[] }> {
  if (only === undefined) return { ...(await findFiles(folder, ignore)), beside: [] };
  const files = new Set<string>();
  const refused = new Set<string>();
  const beside = new Set<string>();
  for (const given of only) {
    const at = path.join(folder, given);
    if ((await stat(at)).isDirectory()) {
      const found = await findFiles(at, ignore);
      for (const name of found.files) files.add(`${given}/${name}`);
      for (const name of found.refused) refused.add(`${given}/${name}`);
    } else {
      files.add(given);
      const above = path.posix.dirname(given);
      for (const name of await readdir(path.dirname(at)))
        beside.add(above === '.' ? name : `${above}/${name}`);
    }
  }
  return { files: [...files].sort(), refused: [...refused].sort(), beside: [...beside] };
}

/** The sources of tables that are written alike. */
function sourcesOf(
  tables: readonly FoundTable[],
  all: readonly string[],
  vocabulary: Vocabulary,
  onLeft: (file: string) => void,
): SourceOfTables[] {
  const found: SourceOfTables[] = [];
  for (const group of groupTables(tables)) {
    const source = proposeSource(group, all, vocabulary);
    if (source) found.push({ source: allSheets(source, tables), tables: group.tables });
    else for (const file of group.files) onLeft(file);
  }
  const agreed = agreeOnDates(found.map(({ source }) => source));
  return found.map((one, at) => ({ ...one, source: agreed[at]! }));
}

/** The same with the folders at the top kept apart; none where a file with records lies in no folder. */
function sourcesPerFolder(
  tables: readonly FoundTable[],
  all: readonly string[],
  vocabulary: Vocabulary,
): Map<string, SourceOfTables[]> {
  const folders = new Map<string, FoundTable[]>();
  for (const table of tables) {
    const folder = topFolder(table.sample.file) ?? '';
    folders.set(folder, [...(folders.get(folder) ?? []), table]);
  }
  if (folders.size < 2) return new Map();
  return new Map(
    [...folders]
      .map(([folder, list]): [string, SourceOfTables[]] => [
        folder,
        sourcesOf(list, all, vocabulary, () => undefined),
      ])
      .filter(([, list]) => list.length > 0),
  );
}

/** Sheets that are all the sheets of their files are "all", so that next month's sheet is read too. */
function allSheets(source: ProposedSource, tables: readonly FoundTable[]): ProposedSource {
  if (source.sheets === undefined) return source;
  const files = new Set(source.found.map((name) => name.replace(/ \(sheet .*\)$/, '')));
  const every = tables.filter(({ sample }) => files.has(sample.file)).length;
  return every === source.found.length ? { ...source, sheets: 'all' } : source;
}

/** Names of sources: the kind and what their files are called, told apart by a number. */
function named(sources: readonly ProposedSource[]): ProposedSource[] {
  const seen = new Map<string, number>();
  return sources.map((source) => {
    const file = baseName(source.files[0] ?? '')
      .replace(/[*\s]+/g, ' ')
      .trim();
    const plain = [(source.kind.value ?? 'records').replaceAll('_', ' '), file, source.site ?? '']
      .filter((part) => part !== '')
      .join(', ');
    const count = (seen.get(plain) ?? 0) + 1;
    seen.set(plain, count);
    return { ...source, name: count === 1 ? plain : `${plain} ${count}` };
  });
}
