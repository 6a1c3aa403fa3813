import { TIME_FIELD } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import { type AnyRecord, type Draft, unitOf } from './draft.ts';

/** Fields beside unit and time that tell two records of a kind apart. */
export const ALSO_IN_KEY: Partial<Record<RecordKind, string>> = {
  cleanings: 'task',
  service: 'kind',
  water: 'determinand',
  actions: 'action',
};

/** Fields in which two rows of the same key must not differ. */
const MUST_AGREE: Record<RecordKind, readonly string[]> = {
  cycles: ['kind', 'outcome'],
  air_removal_tests: ['result'],
  leak_tests: ['leak_rate_kpa_min'],
  cleanings: ['state'],
  service: [],
  inspections: ['appearance'],
  water: ['value', 'measure'],
  actions: ['state'],
};

/** Kinds of which one file may list several records of a date without a time of day: a retest is no duplicate. */
const REPEATED_ON_A_DAY: readonly RecordKind[] = ['air_removal_tests', 'leak_tests'];

interface Group {
  drafts: Draft[];
  /** First complete draft, else the first: what the others must agree with. */
  model: Draft;
  cycleNumber: unknown;
}

/**
 * Leaves one record of a unit (or sampling point) for each key, over all files of a kind, and counts the other rows as duplicates. The answer is in order of time and origin.
 *
 * The key is the time; also the cycle number where both rows have one, the task of a cleaning, the kind of a service, the determinand
 * of a water sample. Of the rows of a key the most complete is kept (a cycle that is over before one that runs, then the one with more fields), else the
 * first in order of source, file and row. A complete row that contradicts the first complete row of its key in a field that both must have is a
 * problem and costs itself. Two cycles whose starts are the same ambiguous wall time, and whose ends differ, are two; so are two tests of one
 * date in one file that contradict each other, where only the date is known and no cycle number.
 */
export function removeDuplicates(kind: RecordKind, drafts: readonly Draft[]): Draft[] {
  const kept: Draft[] = [];
  const time = TIME_FIELD[kind];
  const at = (draft: Draft): number => draft.record[time] as number;
  const list = drafts.toSorted((a, b) => at(a) - at(b) || a.sequence - b.sequence);
  for (let from = 0; from < list.length; ) {
    let until = from + 1;
    while (until < list.length && at(list[until]!) === at(list[from]!)) until++;
    if (until === from + 1) kept.push(list[from]!);
    else kept.push(...distinct(kind, list.slice(from, until)));
    from = until;
  }
  return kept;
}

/** Drafts of one unit and time: the one to keep of each key, in order of their origin. */
function distinct(kind: RecordKind, drafts: readonly Draft[]): Draft[] {
  const groups: Group[] = [];
  for (const draft of drafts) {
    const group = groupOf(kind, draft, groups);
    if (!group) {
      groups.push({ drafts: [draft], model: draft, cycleNumber: draft.record.cycle_number });
      continue;
    }
    group.drafts.push(draft);
    group.cycleNumber ??= draft.record.cycle_number;
    if (!isComplete(group.model) && isComplete(draft)) group.model = draft;
  }
  return groups.map((group) => settle(kind, group)).sort((a, b) => a.sequence - b.sequence);
}

/** The group whose key the draft shares, one that it agrees with first. */
function groupOf(kind: RecordKind, draft: Draft, groups: readonly Group[]): Group | undefined {
  const sharing = groups.filter((group) => sharesKey(kind, draft, group));
  return sharing.find(({ model }) => !contradiction(kind, draft, model)) ?? sharing[0];
}

function sharesKey(kind: RecordKind, draft: Draft, { model, cycleNumber }: Group): boolean {
  const own = draft.record;
  const also = ALSO_IN_KEY[kind];
  if (also && own[also] !== model.record[also]) return false;
  const number = own.cycle_number;
  if (number !== undefined && cycleNumber !== undefined) return number === cycleNumber;
  if (own.time_mark === 'ambiguous' && model.record.time_mark === 'ambiguous') {
    const ends = [own.end, model.record.end];
    if (!ends.includes(undefined) && ends[0] !== ends[1]) return false;
  }
  const isRetest =
    REPEATED_ON_A_DAY.includes(kind) &&
    own.time_mark === 'day' &&
    draft.tally === model.tally &&
    contradiction(kind, draft, model) !== undefined;
  return !isRetest;
}

/** Keeps the best draft of a group; counts the others. */
function settle(kind: RecordKind, { drafts, model }: Group): Draft {
  const agreeing: Draft[] = [];
  for (const draft of drafts) {
    const field = contradiction(kind, draft, model);
    if (field === undefined) agreeing.push(draft);
    else {
      const { file, row } = model.record.origin;
      const fault = new Fault(
        'conflicting_duplicate',
        `${field} ${String(model.record[field])} as in ${file} row ${row}`,
      );
      draft.tally.reject(unitOf(draft), draft.record.origin.row, fault, field, String(draft.record[field]));
    }
  }
  const best = agreeing.reduce((a, b) => (isBetter(b, a) ? b : a));
  for (const draft of agreeing) if (draft !== best) draft.tally.count.duplicates++;
  return best;
}

function isBetter(a: Draft, b: Draft): boolean {
  if (isComplete(a) !== isComplete(b)) return isComplete(a);
  return Object.keys(a.record).length > Object.keys(b.record).length;
}

const isComplete = ({ record }: Draft): boolean => record.outcome !== 'running';

/** The first field in which two complete drafts contradict each other. */
export function contradiction(kind: RecordKind, a: Draft, b: Draft): string | undefined {
  if (a === b || !isComplete(a) || !isComplete(b)) return undefined;
  return MUST_AGREE[kind].find((field) => differ(a.record[field], b.record[field]));
}

/** Numbers that differ by a rounding of their conversion are the same. */
function differ(a: AnyRecord[string], b: AnyRecord[string]): boolean {
  if (a === undefined || b === undefined || a === b) return false;
  if (typeof a !== 'number' || typeof b !== 'number') return true;
  return Math.abs(a - b) > 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}
