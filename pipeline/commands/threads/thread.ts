import type { FileColumns } from '../../ingest/file-columns.ts';
import { readOnce } from '../../ingest/history/read-once.ts';
import { type Inputs, openInputs, type ReadJob, readJob } from '../../ingest/read-jobs.ts';
import type { ReportBasis } from '../../report/report.ts';
import { readSiteFile } from '../../site/read-site-file.ts';

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
  language: string;
  units: readonly string[];
}

let opened: { key: string; inputs: Promise<Inputs> } | undefined;

/** Reads one file as one source. The site file and the list of files are read once a thread. */
export async function readOne({
  site,
  folder,
  ignore,
  personKey,
  history,
  job,
}: ReadTask): Promise<FileColumns> {
  const key = JSON.stringify([site, folder, ignore]);
  if (opened?.key !== key) {
    const settings = { ignore, ...(personKey ? { personKey } : {}) };
    opened = { key, inputs: openInputs(readSiteFile(site.text, site.file), folder, settings) };
  }
  const inputs = await opened.inputs;
  if (history === undefined) return readJob(inputs, job);
  return readOnce(inputs, job, history, personKey ? { personKey } : {});
}

/** Loads what drawing needs, while the program still reckons. */
export async function prepareDrawing(): Promise<void> {
  await import('../../report/report.ts');
}

/** Draws the pages of some units. */
export async function drawUnits({ basis, units, language }: DrawTask): Promise<string[]> {
  const { drawUnitPages, catalogueOf } = await import('../../report/report.ts');
  return drawUnitPages(basis, units, catalogueOf(language));
}
