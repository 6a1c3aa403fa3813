import { byCodeUnit } from '../by-code-unit.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import type { FileTally } from './file-tally.ts';

/** A row that was read, and then found to contradict another row of the same key; plain data. */
interface Contradiction {
  kind: RecordKind;
  unit: string;
  /** Place of its file in the order of source and file. */
  part: number;
  row: number;
  fault: { code: Fault['code']; expected: string };
  column: string;
  value: string;
}

/** What became of rows after they were read, file by file: records, duplicates, contradictions. Plain data, so that another thread can say it. */
export interface Settlement {
  counts: [part: number, of: { records: number; duplicates: number }][];
  contradictions: Contradiction[];
}

/** Takes down what becomes of the rows of one file. */
export class PartTally {
  readonly count = { records: 0, duplicates: 0 };
  readonly #of: { kind: RecordKind; part: number };
  readonly #contradictions: Contradiction[];

  /** @param settlement that it becomes a part of */
  constructor(kind: RecordKind, part: number, settlement: Settlement) {
    this.#of = { kind, part };
    this.#contradictions = settlement.contradictions;
    settlement.counts.push([part, this.count]);
  }

  reject(unit: string, row: number, { code, expected }: Fault, column: string, value: string): void {
    this.#contradictions.push({ ...this.#of, unit, row, fault: { code, expected }, column, value });
  }
}

/**
 * Puts settlements of different units into the counts of their files: by kind, then by unit, so that the answer does not depend on which units were settled together.
 *
 * @param tallies of the files, by part
 * @throws Error where the counts of a file don't add up, which is a bug
 */
export function settleTallies(tallies: readonly FileTally[], settlements: readonly Settlement[]): void {
  for (const { counts } of settlements)
    for (const [part, { records, duplicates }] of counts) {
      tallies[part]!.read.records += records;
      tallies[part]!.read.duplicates += duplicates;
    }
  const all = settlements
    .flatMap(({ contradictions }) => contradictions)
    .map((of) => ({ ...of, order: RECORD_KINDS.indexOf(of.kind) }))
    .sort((a, b) => a.order - b.order || byCodeUnit(a.unit, b.unit));
  for (const { part, row, fault, column, value } of all)
    tallies[part]!.reject(row, new Fault(fault.code, fault.expected), column, value);
  for (const tally of tallies) tally.check();
}
