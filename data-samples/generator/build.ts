import { utf8, utf8WithMark, windows1252, workbook } from './encode.ts';
import { actions } from './exports/actions.ts';
import { inspections } from './exports/inspections.ts';
import { quillhavenCleanings, quillhavenService } from './exports/quillhaven-cleaning.ts';
import { quillhavenCycles } from './exports/quillhaven-cycles.ts';
import { quillhavenLeaks, quillhavenTests } from './exports/quillhaven-tests.ts';
import { tornfellCleanings, tornfellService } from './exports/tornfell-cleaning.ts';
import { tornfellCycles } from './exports/tornfell-cycles.ts';
import { tornfellLeaks, tornfellTests } from './exports/tornfell-tests.ts';
import { water } from './exports/water.ts';
import { type PlacedFault, placeFaults } from './faults/fault.ts';
import { QUILLHAVEN_FAULTS } from './faults/quillhaven-faults.ts';
import { TORNFELL_FAULTS } from './faults/tornfell-faults.ts';
import { type Fleet, simulateFleet } from './fleet.ts';
import { readme } from './notes/readme.ts';
import { delimitedText, type Table } from './table.ts';
import { truthOf } from './truth.ts';

/** All files of the demo data, by path relative to `data-samples`: the exports, the note and what the generator knows of them. */
export async function buildDemoData(): Promise<Map<string, Uint8Array>> {
  const fleet = simulateFleet();
  const { tables, faults } = buildTables(fleet);
  const truth = truthOf(fleet, tables, faults);
  const files = new Map<string, Uint8Array>();
  for (const table of tables) files.set(`exports/${table.file}`, await bytesOf(table));
  files.set('README.md', utf8(readme(tables, truth)));
  files.set('generator/truth.json', utf8(`${JSON.stringify(truth, null, 2)}\n`));
  return files;
}

/** The tables of all exports, faults in place. */
export function buildTables(fleet: Fleet): { tables: Table[]; faults: PlacedFault[] } {
  const tables = cleanTables(fleet);
  return { tables, faults: placeFaults(tables, [...QUILLHAVEN_FAULTS, ...TORNFELL_FAULTS]) };
}

function cleanTables(fleet: Fleet): Table[] {
  return [
    ...quillhavenCycles(fleet),
    ...quillhavenTests(fleet),
    quillhavenLeaks(fleet),
    quillhavenCleanings(fleet),
    quillhavenService(fleet),
    inspections(fleet, 'Quillhaven'),
    water('Quillhaven'),
    actions(),
    ...tornfellCycles(fleet),
    ...tornfellTests(fleet),
    tornfellLeaks(fleet),
    tornfellCleanings(fleet),
    tornfellService(fleet),
    inspections(fleet, 'Tornfell'),
    water('Tornfell'),
  ];
}

async function bytesOf(table: Table): Promise<Uint8Array> {
  if (table.file.endsWith('.xlsx')) return workbook(table, 'Cleaning', [8, 26, 18, 18, 10, 14, 30, 18]);
  if (table.file.startsWith('tornfell/')) return windows1252(delimitedText(table, ';', '\r\n'));
  if (table.preamble.length > 0) return utf8WithMark(delimitedText(table, ',', '\n'));
  return utf8(delimitedText(table, ',', '\n'));
}
