import { firstFrom } from '../first-from.ts';
import type { MergeRule } from '../site/file-shapes.ts';
import { TIME_FIELD } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import { type Draft, unitOf } from './draft.ts';
import { ALSO_IN_KEY, contradiction, removeDuplicates } from './remove-duplicates.ts';

const MINUTE = 60_000;
const NOT_FILLED = new Set(['unit', 'origin', 'time_mark']);

/**
 * Joins what two or more sources tell of the same events of a unit, as the site's rules say: the preferred source's record is kept, and gets the fields that it lacks from
 * the other's, which is counted as a duplicate. A record of the other source that no event of the preferred one fits stands by itself.
 *
 * Records fit by time (within the rule's minutes; the nearest one); cycle numbers must agree where both have one, as must task, kind of service or
 * determinand. Each record takes at most one of each other source. One that contradicts the preferred record in a field that both must have is a problem and costs
 * itself, and nothing is filled from it.
 */
export function mergeSources(
  kind: RecordKind,
  drafts: readonly Draft[],
  rules: readonly MergeRule[],
): Draft[] {
  let left = [...drafts];
  for (const rule of rules) {
    if (rule.kind !== kind) continue;
    const bySource = rule.sources.map((name) =>
      removeDuplicates(
        kind,
        left.filter(({ record }) => record.origin.source === name),
      ),
    );
    const named = new Set(rule.sources);
    const kept = [...bySource[0]!];
    for (const others of bySource.slice(1))
      kept.push(...mergeInto(kind, kept, others, rule.within_minutes * MINUTE));
    left = [...left.filter(({ record }) => !named.has(record.origin.source)), ...kept];
  }
  return left;
}

/** Fills the preferred drafts; answers the others that fit none. */
function mergeInto(
  kind: RecordKind,
  preferred: readonly Draft[],
  others: readonly Draft[],
  within: number,
): Draft[] {
  const time = TIME_FIELD[kind];
  const at = ({ record }: Draft): number => record[time] as number;
  const list = preferred.toSorted((a, b) => at(a) - at(b));
  const pairs: { one: Draft; other: Draft; apart: number }[] = [];
  for (const other of others) {
    for (let index = firstFrom(list, (one) => at(one) >= at(other) - within); index < list.length; index++) {
      const one = list[index]!;
      if (at(one) > at(other) + within) break;
      if (sameEvent(kind, one, other)) pairs.push({ one, other, apart: Math.abs(at(one) - at(other)) });
    }
  }
  // Nearest pairs first, then in the order of the files.
  pairs.sort(
    (a, b) => a.apart - b.apart || a.one.sequence - b.one.sequence || a.other.sequence - b.other.sequence,
  );
  const taken = new Set<Draft>();
  for (const { one, other } of pairs) {
    if (taken.has(one) || taken.has(other)) continue;
    taken.add(one);
    taken.add(other);
    fill(kind, one, other);
  }
  return others.filter((other) => !taken.has(other));
}

function fill(kind: RecordKind, one: Draft, other: Draft): void {
  const field = contradiction(kind, other, one);
  if (field !== undefined) {
    const { file, row } = one.record.origin;
    const fault = new Fault(
      'conflicting_duplicate',
      `${field} ${String(one.record[field])} as in ${file} row ${row}`,
    );
    other.tally.reject(unitOf(other), other.record.origin.row, fault, field, String(other.record[field]));
    return;
  }
  other.tally.count.duplicates++;
  // A cycle that still ran when it was exported takes over how it ended.
  if (one.record.outcome === 'running' && other.record.outcome !== 'running') {
    one.record.outcome = other.record.outcome;
    delete one.record.end;
  }
  for (const [name, value] of Object.entries(other.record)) {
    if (NOT_FILLED.has(name) || one.record[name] !== undefined || value === undefined) continue;
    if (name === 'end' && (value as number) < (one.record.start as number)) continue;
    one.record[name] = value;
  }
}

function sameEvent(kind: RecordKind, { record: a }: Draft, { record: b }: Draft): boolean {
  const also = ALSO_IN_KEY[kind];
  if (also && a[also] !== b[also]) return false;
  return a.cycle_number === undefined || b.cycle_number === undefined || a.cycle_number === b.cycle_number;
}
