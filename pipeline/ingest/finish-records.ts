import { groupBy } from '../group-by.ts';
import type { MergeRule } from '../site/file-shapes.ts';
import type { Records } from '../site/records.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import { type Draft, unitOf } from './draft.ts';
import { mergeSources } from './merge-sources.ts';
import { removeDuplicates } from './remove-duplicates.ts';
import { resolveRepeatedHour } from './resolve-repeated-hour.ts';

/** Drafts of each kind, in order of source, file and row. */
export type DraftsByKind = ReadonlyMap<RecordKind, readonly Draft[]>;

/**
 * What is decided after reading, unit by unit and so for any units by themselves: repeated hours, sources that tell of the same events, duplicates. Each draft that stays is
 * counted as a record of its file.
 *
 * @returns records of each kind in order of unit, time and origin
 */
export function finishRecords(drafts: DraftsByKind, rules: readonly MergeRule[]): Records {
  return Object.fromEntries(
    RECORD_KINDS.map((kind) => [kind, finishKind(kind, drafts.get(kind) ?? [], rules)]),
  ) as unknown as Records;
}

function finishKind(kind: RecordKind, drafts: readonly Draft[], rules: readonly MergeRule[]): unknown[] {
  const records: unknown[] = [];
  for (const ofUnit of byUnit(drafts)) {
    if (kind === 'cycles') resolveRepeatedHour(ofUnit);
    for (const { record, tally } of removeDuplicates(kind, mergeSources(kind, ofUnit, rules))) {
      tally.count.records++;
      records.push(record);
    }
  }
  return records;
}

/** Drafts of each unit (or sampling point), in order of its name. */
const byUnit = (drafts: readonly Draft[]): Draft[][] =>
  [...groupBy(drafts, unitOf)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, list]) => list);
