import { utf8, utf8WithMark, windows1252, workbook } from './encode.ts';
import { quillhavenCleanings, quillhavenService } from './exports/quillhaven-cleaning.ts';
import { quillhavenCycles } from './exports/quillhaven-cycles.ts';
import { quillhavenLeaks, quillhavenTests } from './exports/quillhaven-tests.ts';
import { tornfellCleanings, tornfellService } from './exports/tornfell-cleaning.ts';
import { tornfellCycles } from './exports/tornfell-cycles.ts';
import { tornfellLeaks, tornfellTests } from './exports/tornfell-tests.ts';
import { type Fleet, simulateFleet } from './fleet.ts';
import { delimitedText, type Table } from './table.ts';

/** All files of the demo data, by path relative to `data-samples`. */
export async function buildDemoData(): Promise<Map<string, Uint8Array>> {
  const fleet = simulateFleet();
  const tables = buildTables(fleet);
  const files = new Map<string, Uint8Array>();
  for (const table of tables) files.set(`exports/${table.file}`, await bytesOf(table));
  return files;
}

export function buildTables(fleet: Fleet): Table[] {
  return [
    ...quillhavenCycles(fleet),
    ...quillhavenTests(fleet),
    quillhavenLeaks(fleet),
    quillhavenCleanings(fleet),
    quillhavenService(fleet),
    ...tornfellCycles(fleet),
    ...tornfellTests(fleet),
    tornfellLeaks(fleet),
    tornfellCleanings(fleet),
    tornfellService(fleet),
  ];
}

async function bytesOf(table: Table): Promise<Uint8Array> {
  if (table.file.endsWith('.xlsx')) return workbook(table, 'Cleaning', [8, 26, 18, 18, 10, 14, 30, 18]);
  if (table.file.startsWith('tornfell/')) return windows1252(delimitedText(table, ';', '\r\n'));
  if (table.preamble.length > 0) return utf8WithMark(delimitedText(table, ',', '\n'));
  return utf8(delimitedText(table, ',', '\n'));
}
