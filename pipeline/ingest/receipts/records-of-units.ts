import type { MergeRule } from '../../site/file-shapes.ts';
import type { Records } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { Draft } from '../draft.ts';
import { type FileColumns, unpackDrafts } from '../file-columns.ts';
import { finishRecords } from '../finish-records.ts';
import type { Inputs } from '../read-jobs.ts';
import { PartTally, type Settlement } from '../settlement.ts';
import { columnsByUnit } from './columns-by-unit.ts';
import { columnsOf, type Part } from './records-of-parts.ts';
import { type TalliedFile, undisputedRecords } from './undisputed-records.ts';

/** Takes the records of units from the history, one unit after the other. */
export interface TakenRecords {
  /** The records of some kinds of a unit, each kind once; the others are empty. They can be read and not changed or spread. */
  take(unit: string, kinds: readonly RecordKind[]): Promise<Records>;
  /** What became of the rows of all that was taken. */
  settlement: Settlement;
}

/**
 * The same as {@link recordsOfParts}, unit by unit. Of a file that holds several of the wanted units their columns are held until they are taken, and no others.
 *
 * @throws UserError where a file must be read again, since its part of the history is gone, and has changed
 */
export function recordsOfUnits(parts: readonly Part[], inputs: Inputs, history: string): TakenRecords {
  const settlement: Settlement = { counts: [], contradictions: [] };
  const rules: readonly MergeRule[] = inputs.site.declared.merge ?? [];
  const ofUnit = new Map<string, OpenPart[]>();
  for (const part of parts) {
    const open: OpenPart = { part, tally: new PartTally(part.kind, part.part, settlement) };
    for (const unit of part.units) {
      const list = ofUnit.get(unit);
      if (list) list.push(open);
      else ofUnit.set(unit, [open]);
    }
  }
  return {
    settlement,
    async take(unit, kinds) {
      const files = new Map<RecordKind, OpenFile[]>(kinds.map((kind) => [kind, []]));
      for (const open of ofUnit.get(unit) ?? []) {
        const { part, tally } = open;
        const list = files.get(part.kind);
        if (!list) continue;
        open.byUnit ??= columnsByUnit(await columnsOf(part, inputs, history), part.units);
        const columns = open.byUnit.get(unit);
        open.byUnit.delete(unit);
        if (columns) list.push({ columns, tally, sequence: part.sequence });
      }
      return recordsOf(files, rules);
    },
  };
}

function recordsOf(
  files: ReadonlyMap<RecordKind, readonly OpenFile[]>,
  rules: readonly MergeRule[],
): Records {
  const undisputed: Partial<Record<RecordKind, object[]>> = {};
  const disputed = new Map<RecordKind, Draft[]>();
  for (const [kind, own] of files) {
    const records = rules.some((rule) => rule.kind === kind) ? undefined : undisputedRecords(kind, own);
    if (records) undisputed[kind] = records;
    else
      disputed.set(
        kind,
        own.flatMap(({ columns, sequence, tally }) => unpackDrafts(columns, sequence, tally)),
      );
  }
  return { ...finishRecords(disputed, rules), ...undisputed } as Records;
}

/** The records of a unit in a file. */
interface OpenFile extends TalliedFile {
  /** Place of its first record in the order of source, file and row. */
  sequence: number;
}

/** A file that is gone through unit by unit. */
interface OpenPart {
  part: Part;
  tally: PartTally;
  /** Columns of the units that are not taken yet, once the file was read. */
  byUnit?: Map<string, FileColumns>;
}
