import type { FileColumns } from '../../ingest/file-columns.ts';
import { readerWithHistory } from '../../ingest/history/read-once.ts';
import { openInputs, type ReadJob, readJob } from '../../ingest/read-jobs.ts';
import type { ReportBasis } from '../../report/report.ts';
import type { Table } from '../../report/tables/table.ts';
import type { WorkbookAbout } from '../../report/tables/workbook.ts';
import { CATALOGUES } from '../../report/words/catalogues.ts';
import { readSiteFile } from '../../site/read-site-file.ts';
import type { Language } from '../../site/report-settings.ts';

/** Everything a thread needs to find the same inputs as the program; plain data. */
export interface ReadTask {
  site: { text: string; file: string };
  folder: string;
  ignore: readonly string[];
  personKey?: Uint8Array;
  /** Folder in which what was read is kept, where it is to be kept. */
  history?: string;
  job: ReadJob;
}

/** What is to be drawn: the pages of some units, in a language. */
interface DrawTask {
  basis: ReportBasis;
  language: Language;
  units: readonly string[];
}

/** What a workbook is to hold, and in which language. */
export interface WorkbookTask {
  about: Omit<WorkbookAbout, 'words'>;
  tables: readonly Table[];
  language: Language;
}

let opened: { key: string; read: Promise<(job: ReadJob) => Promise<FileColumns>> } | undefined;

/** Reads one file as one source. The site file and the list of files are read once a thread. */
export async function readOne({ job, personKey, ...task }: ReadTask): Promise<FileColumns> {
  const key = JSON.stringify(task);
  if (opened?.key !== key) opened = { key, read: open(task, personKey ? { personKey } : {}) };
  return (await opened.read)(job);
}

async function open(
  { site, folder, ignore, history }: Omit<ReadTask, 'job' | 'personKey'>,
  settings: Pick<ReadTask, 'personKey'>,
): Promise<(job: ReadJob) => Promise<FileColumns>> {
  const inputs = await openInputs(readSiteFile(site.text, site.file), folder, { ignore, ...settings });
  if (history === undefined) return (job) => readJob(inputs, job);
  const once = await readerWithHistory(inputs, history, settings);
  return async (job) => (await once(job)).columns;
}

/** Loads what drawing needs, while the program still reckons. */
export async function prepareDrawing(): Promise<void> {
  await import('../../report/report.ts');
}

/** Draws the pages of some units. */
export async function drawUnits({ basis, units, language }: DrawTask): Promise<string[]> {
  const { drawUnitPages } = await import('../../report/report.ts');
  return drawUnitPages(basis, units, CATALOGUES[language]);
}

/** Makes the workbook of all tables. */
export async function writeWorkbook({ about, tables, language }: WorkbookTask): Promise<Uint8Array> {
  const { workbookFile } = await import('../../report/tables/workbook.ts');
  return workbookFile({ ...about, words: CATALOGUES[language] }, tables);
}
