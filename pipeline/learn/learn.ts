import path from 'node:path';
import { openArchives } from '../ingest/archives.ts';
import { type OpenFile, openFile } from '../ingest/file-bytes.ts';
import { filePattern } from '../ingest/file-pattern.ts';
import { findFiles } from '../ingest/find-files.ts';
import { archiveLimitsSchema } from '../site/file-shapes.ts';
import { type FoundTable, findTable } from './find-table.ts';
import { groupTables } from './group-files.ts';
import type { Proposal, ProposedSource } from './proposal.ts';
import { baseName, proposeSource } from './propose-source.ts';
import { readSample } from './read-sample.ts';
import type { Vocabulary } from './vocabulary.ts';

export interface LearnSettings {
  vocabulary: Vocabulary;
  /** Files to look at, relative to the folder; left out: all. */
  only?: readonly string[] | undefined;
  /** Files and folders that are no inputs. */
  ignore?: readonly string[];
  zone?: string | undefined;
  open?: OpenFile;
  onProgress?: (line: string) => void;
}

const EXPORTS = /\.(?:csv|txt|tsv|tab|dat|asc|log|xlsx|xlsm)(?:\.gz)?$/i;

/**
 * Looks at the files below a folder and proposes how to read them. Reads a sample of each (its first 20,000 rows), writes nothing, asks nothing; the same files
 * give the same proposal.
 *
 * @throws UserError where the folder can't be listed
 */
export async function learn(folder: string, settings: LearnSettings): Promise<Proposal> {
  const found = await findFiles(folder, settings.ignore);
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
  const tests = settings.only?.map(filePattern);
  const files = inputs.files.filter(
    ({ path: file }) => tests === undefined || tests.some((test) => test(file) || test(file.split('/')[0]!)),
  );
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
        const name = sample.sheet === null ? file.path : `${file.path} (sheet ${sample.sheet})`;
        if (table && table.rows.length > 0) tables.push(table);
        else left.push({ file: name, why: 'holds no table with a header and rows below it' });
      }
  }
  const all = inputs.files.map((file) => file.path);
  const sources: ProposedSource[] = [];
  for (const group of groupTables(tables)) {
    const source = proposeSource(group, all, settings.vocabulary);
    if (source) sources.push(allSheets(source, tables));
    else for (const file of group.files) left.push({ file, why: 'holds columns of no record that is known' });
  }
  return { zone: settings.zone, sources: named(sources), left };
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
    const plain = [(source.kind.value ?? 'records').replaceAll('_', ' '), file]
      .filter((part) => part !== '')
      .join(', ');
    const count = (seen.get(plain) ?? 0) + 1;
    seen.set(plain, count);
    return { ...source, name: count === 1 ? plain : `${plain} ${count}` };
  });
}
