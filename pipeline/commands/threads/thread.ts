import { caseOfUnits } from '../../findings/interval/interval-case.ts';
import type { IntervalCase } from '../../findings/interval/interval-schema.ts';
import { type PanelFindings, panelFindings } from '../../findings/panel-findings.ts';
import { type CarriedShare, receivedUnits } from '../../findings/shares/carried-share.ts';
import type { FileColumns } from '../../ingest/file-columns.ts';
import { type ReadOnce, readerWithHistory } from '../../ingest/history/read-once.ts';
import { type Inputs, openInputs, type ReadJob, readJob } from '../../ingest/read-jobs.ts';
import { type Receipt, receiptOf } from '../../ingest/receipts/receipt.ts';
import { type PackedRows, unpackRows } from '../../packed-rows.ts';
import type { ChartRuntimes } from '../../report/charts/chart-runtimes.ts';
import type { ReportBasis } from '../../report/report.ts';
import type { SheetTable, WorkbookAbout } from '../../report/tables/workbook.ts';
import { CATALOGUES } from '../../report/words/catalogues.ts';
import { rowsOfUnits } from '../../rows-of-units.ts';
import type { Day } from '../../site/day.ts';
import { readSiteFile } from '../../site/read-site-file.ts';
import type { Records } from '../../site/records.ts';
import type { Language } from '../../site/report-settings.ts';
import type { Site } from '../../site/site.ts';
import type { DueTask } from '../../transform/cleaning/due-tasks.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { SharedUnits, UnitsToShare } from '../site-by-site/share-of-units.ts';
import { takenFrom } from './shared-list.ts';

/** Everything a thread needs to find the same inputs as the program; plain data. */
export interface InputsTask {
  site: { text: string; file: string };
  folder: string;
  ignore: readonly string[];
  personKey?: Uint8Array;
  /** Folder in which what was read is kept, where it is to be kept. */
  history?: string;
}

/** A file to be read. */
export interface ReadTask extends InputsTask {
  job: ReadJob;
}

/** Files to be read, one after the other. */
export interface ReadManyTask extends InputsTask {
  jobs: readonly ReadJob[];
}

/** Units whose share is to be made. */
export interface ShareTask extends InputsTask {
  of: UnitsToShare;
}

/** What is to be drawn: the pages of some units, in a language. */
export interface DrawTask {
  basis: Omit<ReportBasis, 'panel' | 'dueOf'> & { panel: PackedRows<UnitDay>; due: PackedRows<DueTask> };
  language: Language;
  units: readonly string[];
  /** Shared with others that draw pages of the same units: see `takenFrom`. Left out: all are drawn here. */
  place?: SharedArrayBuffer;
}

/** What the panel is asked with. */
export interface PanelTask extends Pick<InputsTask, 'site'> {
  units: CarriedShare['units'];
  panel: PackedRows<UnitDay>;
}

/** What the case for an interval is made from. */
export interface CaseTask extends PanelTask {
  records: Pick<Records, 'inspections' | 'water'>;
  /** First operating day that is left out. */
  until: Day;
}

/** What a workbook is to hold, and in which language. */
export interface WorkbookTask {
  about: Omit<WorkbookAbout, 'words'>;
  tables: readonly SheetTable[];
  language: Language;
}

interface Opened {
  inputs: Inputs;
  read: (job: ReadJob) => Promise<ReadOnce>;
}

let opened: { key: string; of: Promise<Opened> } | undefined;

/** The site file and the list of files are read once a thread. */
function openedFor({ site, folder, ignore, history, personKey }: InputsTask): Promise<Opened> {
  const key = JSON.stringify([site, folder, ignore, history]);
  if (opened?.key !== key)
    opened = {
      key,
      of: open({ site, folder, ignore, ...(history !== undefined && { history }) }, personKey),
    };
  return opened.of;
}

async function open(
  { site, folder, ignore, history }: Omit<InputsTask, 'personKey'>,
  personKey: Uint8Array | undefined,
): Promise<Opened> {
  const settings = personKey ? { personKey } : {};
  const inputs = await openInputs(siteOf(site), folder, { ignore, ...settings });
  const read =
    history === undefined
      ? async (job: ReadJob) => ({ columns: await readJob(inputs, job) })
      : await readerWithHistory(inputs, history, settings);
  return { inputs, read };
}

/** Reads one file as one source. */
export async function readOne({ job, ...task }: ReadTask): Promise<FileColumns> {
  const { read } = await openedFor(task);
  return (await read(job)).columns;
}

/** Reads files, each as one source, into the history. */
export async function readReceipts({ jobs, ...task }: ReadManyTask): Promise<Receipt[]> {
  const { read } = await openedFor(task);
  const receipts: Receipt[] = [];
  for (const job of jobs) receipts.push(receiptOf(job, await read(job)));
  return receipts;
}

/** Makes the share of some units from the history. */
export async function makeShare({ of, ...task }: ShareTask): Promise<SharedUnits> {
  const { inputs } = await openedFor(task);
  const { shareOfUnits } = await import('../site-by-site/share-of-units.ts');
  return shareOfUnits(inputs, of);
}

/** Loads what drawing needs, while the program still reckons. */
export async function prepareDrawing(): Promise<void> {
  await import('../../report/report.ts');
}

/** The same, and has the engine compile it, where the thread would wait. */
export async function warmUpDrawing(): Promise<void> {
  await prepareDrawing();
  const { warmUp } = await import('../../report/charts/warm-up.ts');
  await warmUp();
}

/** Charts that were compiled for pages that this thread drew before. */
const runtimes: ChartRuntimes = new Map();
let drawn: Promise<unknown> = Promise.resolve();

/** Draws the pages of some units, after those that were asked for before: Vega counts the parts of pictures in one place for all. */
export function drawUnits(task: DrawTask): Promise<Map<string, Uint8Array>> {
  const pages = drawn.then(() => draw(task));
  drawn = pages.catch(() => undefined);
  return pages;
}

/** Pages as UTF-8, each as soon as it is drawn: texts would fill the heap, with 1.6 MB each for 15 years. */
async function draw({ basis, units, place, language }: DrawTask): Promise<Map<string, Uint8Array>> {
  const { drawUnitPages } = await import('../../report/report.ts');
  const { panel, due, ...rest } = basis;
  const unpacked = { ...rest, panel: unpackRows(panel), dueOf: rowsOfUnits(unpackRows(due)) };
  const wanted = place ? takenFrom(units, place) : units;
  const utf8 = new TextEncoder();
  const pages = new Map<string, Uint8Array>();
  for await (const [unit, page] of drawUnitPages(unpacked, wanted, CATALOGUES[language], runtimes))
    pages.set(unit, utf8.encode(page));
  return pages;
}

let prepared: { text: string; site: Site } | undefined;

/** The site, read once a thread; also asked for before it is needed. */
export function prepareSite(site: InputsTask['site']): void {
  siteOf(site);
}

function siteOf({ text, file }: InputsTask['site']): Site {
  if (prepared?.text !== text) prepared = { text, site: readSiteFile(text, file) };
  return prepared.site;
}

/** Puts the questions to the panel. */
export function askPanel({ site: siteFile, units, panel }: PanelTask): PanelFindings {
  const site = siteOf(siteFile);
  return panelFindings(unpackRows(panel), receivedUnits(units, site), site);
}

/** Makes the case for a cleaning interval. */
export async function makeCase({
  site: siteFile,
  units,
  panel,
  records,
  until,
}: CaseTask): Promise<IntervalCase> {
  // The answer of what was asked before goes first.
  await new Promise(setImmediate);
  const site = siteOf(siteFile);
  return caseOfUnits(receivedUnits(units, site), unpackRows(panel), site, records, until);
}

/** Makes the workbook of all tables. */
export async function writeWorkbook({ about, tables, language }: WorkbookTask): Promise<Uint8Array> {
  const { workbookFile } = await import('../../report/tables/workbook.ts');
  return workbookFile({ ...about, words: CATALOGUES[language] }, tables);
}
