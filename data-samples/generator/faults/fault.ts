import type { ProblemCode } from '../../../pipeline/ingest/reading.ts';
import type { CellValue, Fate, Table, TableRow } from '../table.ts';

/** One row of an export made faulty or odd on purpose. */
export interface FaultSpec {
  file: string;
  /** Where in the file: share of its rows. */
  place: number;
  /** `edit` changes the row that stands there, `insert` puts one more behind it, made from a copy of its cells. */
  how: 'edit' | 'insert';
  make: (cells: CellValue[]) => CellValue[];
  fate: Fate;
  /** The problem that reading should report; undefined where there is none. */
  code?: ProblemCode;
  what: string;
  /** An inserted row that is a record of its own. */
  key?: string;
}

/** A fault where it came to stand. `row` counts the lines of the file, or the rows of the sheet, from 1. */
export interface PlacedFault {
  file: string;
  row: number;
  fate: Fate;
  code: ProblemCode | null;
  what: string;
}

/** Puts the faults into the tables and says where they stand. */
export function placeFaults(tables: readonly Table[], specs: readonly FaultSpec[]): PlacedFault[] {
  const placed = new Map<TableRow, FaultSpec>();
  for (const table of tables) {
    const own = specs.filter((spec) => spec.file === table.file);
    const before = table.rows;
    const at = new Map<number, FaultSpec[]>();
    for (const spec of own) {
      const index = Math.min(before.length - 1, Math.floor(spec.place * before.length));
      at.set(index, [...(at.get(index) ?? []), spec]);
    }
    table.rows = before.flatMap((row, index) => {
      const made = (at.get(index) ?? []).map((spec) => {
        const fresh = faulty(row, spec);
        placed.set(fresh, spec);
        return { spec, fresh };
      });
      const edited = made.find(({ spec }) => spec.how === 'edit')?.fresh ?? row;
      return [edited, ...made.filter(({ spec }) => spec.how === 'insert').map(({ fresh }) => fresh)];
    });
  }
  const missing = specs.find((spec) => !tables.some((table) => table.file === spec.file));
  if (missing) throw new Error(`no such file: ${missing.file}`);
  return tables.flatMap((table) =>
    table.rows.flatMap((row, index) => {
      const spec = placed.get(row);
      const line = table.preamble.length + 2 + index;
      return spec
        ? [{ file: table.file, row: line, fate: spec.fate, code: spec.code ?? null, what: spec.what }]
        : [];
    }),
  );
}

function faulty(row: TableRow, spec: FaultSpec): TableRow {
  const cells = spec.make([...row.cells]);
  const key = spec.key ?? row.key;
  return { cells, fate: spec.fate, key, at: row.at };
}

/** The cells with some of them changed. */
export const change = (changes: Record<number, CellValue>) => (cells: CellValue[]) =>
  cells.map((cell, index) => (index in changes ? changes[index]! : cell));

/** A line as it is, whatever the delimiter. */
export const raw = (line: string) => (): CellValue[] => [line];

export const asItIs = (cells: CellValue[]): CellValue[] => cells;
