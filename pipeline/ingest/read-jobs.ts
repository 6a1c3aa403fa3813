import path from 'node:path';
import { archiveLimitsSchema } from '../site/file-shapes.ts';
import type { Site } from '../site/site.ts';
import { type InputFile, type InputFiles, nameUnpacked, openArchives } from './archives.ts';
import { ColumnWriter } from './column-writer.ts';
import { endingOnMachineFaults, type OpenFile, openFile } from './file-bytes.ts';
import type { FileColumns } from './file-columns.ts';
import { filePattern } from './file-pattern.ts';
import { FileTally } from './file-tally.ts';
import { type FoundFiles, findFiles } from './find-files.ts';
import { type SourceReader, sourceReader } from './read-fields.ts';
import { readFile, sheetsToRead, type WatchRow } from './read-file.ts';
import type { Problem } from './reading.ts';

/** Where and how the inputs of a site are read. */
export interface InputSettings {
  /** Files and folders that are no inputs though they may stand below the folder: the site file, the output folder. */
  ignore?: readonly string[];
  /** Key of the hash of names, where the site asks for people. */
  personKey?: Uint8Array;
  /** Opens a file; default: from disk. */
  open?: OpenFile;
}

/** The sources made ready and the files that are there, before any is read. */
export interface Inputs {
  site: Site;
  readers: SourceReader[];
  found: FoundFiles;
  files: InputFiles;
  byPath: ReadonlyMap<string, InputFile>;
}

/** One file (or sheet of a workbook) to be read as one source; plain data, so that another thread can do it. */
export interface ReadJob {
  /** Place of the source in the site file. */
  source: number;
  file: string;
  sheet?: string;
}

/** Looks what is there to read. */
export async function openInputs(site: Site, folder: string, settings: InputSettings): Promise<Inputs> {
  const readers = site.sources.map((source) => sourceReader(site, source, settings.personKey));
  const found = await findFiles(folder, settings.ignore);
  const limits = archiveLimitsSchema.parse(site.declared.archives ?? {});
  const open = endingOnMachineFaults(settings.open ?? openFile);
  const files = await openArchives(path.resolve(folder), found.files, open, limits);
  // Whoever opens files in a way of his own may give other bytes than the disk has.
  if (settings.open) for (const file of files.files) delete file.stamp;
  const byPath = new Map(files.files.map((file) => [file.path, file]));
  return { site, readers, found, files, byPath };
}

/** Tests whether a path is one that a source reads. */
export function wantedBy({ source }: SourceReader): { pattern: string; test: (file: string) => boolean }[] {
  const patterns = typeof source.files === 'string' ? [source.files] : source.files;
  return patterns.map((pattern) => {
    const test = filePattern(pattern);
    return { pattern, test: (file) => test(file) || test(nameUnpacked(file)) };
  });
}

/** What is to be read of a source, in order of file and sheet. */
export async function readJobs({ readers, files }: Inputs, source: number): Promise<ReadJob[]> {
  const reader = readers[source]!;
  const wanted = wantedBy(reader);
  const jobs: ReadJob[] = [];
  for (const file of files.files) {
    if (!wanted.some(({ test }) => test(file.path))) continue;
    for (const sheet of await sheetsToRead(reader.source, file))
      jobs.push({ source, file: file.path, ...(sheet === undefined ? {} : { sheet }) });
  }
  return jobs;
}

/** The file of a job. */
export function inputOf({ byPath }: Inputs, { file }: ReadJob): InputFile {
  const input = byPath.get(file);
  if (!input) throw new Error(`${file} is not among the files`);
  return input;
}

/** Reads one file as one source. The answer depends on the file, the source and the site alone, not on other files. */
export async function readJob(
  inputs: Inputs,
  job: ReadJob,
  { onPiece = () => {}, watch }: { onPiece?: (bytes: number) => void; watch?: WatchRow } = {},
): Promise<FileColumns> {
  const reader = inputs.readers[job.source]!;
  const { name, kind } = reader.source;
  const problems: Problem[] = [];
  const tally = new FileTally({ source: name, kind, file: job.file }, problems);
  tally.read.sheet = job.sheet ?? null;
  const ofSheet =
    job.sheet === undefined ? reader : { ...reader, source: { ...reader.source, sheet: job.sheet } };
  const writer = new ColumnWriter(kind);
  await readFile(ofSheet, tally, {
    site: inputs.site,
    input: inputOf(inputs, job),
    onPiece,
    writer,
    ...(watch ? { watch } : {}),
  });
  return writer.columns({ read: tally.read, problems });
}
