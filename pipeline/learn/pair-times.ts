import type { RecordKind } from '../site/vocabulary.ts';
import { FIELD_CONCEPTS } from './field-concepts.ts';
import { CERTAIN_FROM, type FieldMatch } from './field-match.ts';
import { leastSure } from './guess.ts';
import { type ColumnProfile, isDates } from './profile-column.ts';
import type { Meaning } from './vocabulary.ts';

/** From this nearness on a time of day is taken for what its name says. */
const NAMED_FROM = 0.6;

/** Fields of a kind that a time of day alone may fill, on the date of the record's own time, with what makes that unsure. */
const ON_THE_SAME_DATE: Partial<Record<RecordKind, { own: string; other: string; unsure: string }>> = {
  cycles: { own: 'start', other: 'end', unsure: 'a cycle over midnight loses its end so' },
  service: { own: 'from', other: 'to', unsure: 'a service over midnight loses its end so' },
  cleanings: { own: 'time', other: 'start', unsure: 'work over midnight begins a day late so' },
};

/** Words for the other end of a span, which a time of day must not say more plainly than its own. */
const OPPOSITE: Readonly<Record<string, readonly string[]>> = {
  start: ['end', 'to'],
  from: ['end', 'to'],
  time: ['begun', 'start', 'from'],
};
const NOT_DONE_THEN = ['due', 'unread', 'entered_at'];
const BEGIN = ['begun', 'start', 'from'];

/** A date column gets the time-of-day column that belongs to it; a begin or end that is a time of day alone gets the date of the record's own time. */
export function pairTimes(
  kind: RecordKind,
  matches: readonly FieldMatch[],
  columns: readonly ColumnProfile[],
  used: Set<ColumnProfile>,
  meanings: ReadonlyMap<ColumnProfile, readonly Meaning[]>,
): FieldMatch[] {
  const own = kind === 'service' ? 'from' : kind === 'cycles' ? 'start' : 'time';
  const meaning = (column: ColumnProfile, concepts: readonly string[]): number =>
    Math.max(
      0,
      ...meanings
        .get(column)!
        .filter(({ key }) => concepts.includes(key))
        .map(({ score }) => score),
    );
  // A time of day for which something is planned, or that is another record's, is none at which it was done.
  const clocks = columns.filter(
    (column) =>
      column.timeOfDay !== undefined &&
      !used.has(column) &&
      !isDates(column) &&
      meaning(column, NOT_DONE_THEN) < NAMED_FROM,
  );
  const means = (column: ColumnProfile, concepts: readonly string[]): boolean =>
    meaning(column, concepts) >= NAMED_FROM;
  // Reading joins a date cell with a cell or text of a time of day, a date in letters with text alone.
  const joins = (clock: ColumnProfile, date: ColumnProfile): boolean =>
    !used.has(clock) && (clock.clockCells <= 0.5 || date.dateCells > 0.5);
  const isOther = (field: string, column: ColumnProfile, concepts: readonly string[]): boolean =>
    field === own && meaning(column, OPPOSITE[own] ?? []) > meaning(column, concepts);
  const saysNothingElse = (column: ColumnProfile): boolean =>
    meanings
      .get(column)!
      .every(({ key, score }) => score < NAMED_FROM || key === 'date' || key === 'date_time');
  const paired: FieldMatch[] = [];
  // The record's own time first: it has the first choice of a column that says no more than "time".
  const order = [...matches].sort((a, b) => Number(b.field === own) - Number(a.field === own));
  for (const match of order) {
    const [date] = match.columns;
    const isOwn = match.field === own;
    if (!date || match.columns.length > 1 || !isDates(date) || hasTime(date)) {
      paired.push(match);
      continue;
    }
    const concepts = [...(FIELD_CONCEPTS[kind][match.field] ?? []), ...(isOwn ? ['time_of_day'] : [])];
    const named = clocks.filter(
      (column) => !used.has(column) && means(column, concepts) && !isOther(match.field, column, concepts),
    );
    const free = named.filter((column) => joins(column, date));
    free.sort(
      (a, b) =>
        meaning(b, concepts) - meaning(a, concepts) || Math.abs(a.at - date.at) - Math.abs(b.at - date.at),
    );
    const beside =
      isOwn && free.length === 0
        ? clocks.filter((column) => joins(column, date) && saysNothingElse(column))
        : [];
    // The one time of day whose name says nothing, straight after the date, is the date's own.
    if (beside.length === 1 && beside[0]!.at === date.at + 1) free.push(beside[0]!);
    // Work of which only the begin is known took place then.
    const begins =
      isOwn && kind === 'cleanings' && free.length === 0
        ? clocks.filter((column) => joins(column, date) && means(column, BEGIN))
        : [];
    const begun = begins.length === 1 && !matches.some(({ field }) => field === 'start');
    const clock = free[0] ?? (begun ? begins[0] : undefined);
    if (clock) {
      used.add(clock);
      const clear =
        meaning(clock, concepts) >= CERTAIN_FROM &&
        !begun &&
        !(free[1] && meaning(free[1], concepts) >= meaning(clock, concepts));
      paired.push({
        ...match,
        columns: [date, clock],
        confidence: clear ? match.confidence : leastSure(match.confidence, 'likely'),
        why: clear ? match.why : `${match.why}; "${clock.header}" as its time of day`,
      });
      continue;
    }
    const apart = isOwn ? named.find((column) => !joins(column, date)) : undefined;
    const left = beside[0] ?? (isOwn ? clocks.find((column) => !used.has(column)) : undefined);
    const doubt = apart
      ? `"${apart.header}" can't be joined with it, since its date is text and the time a cell`
      : left && `"${left.header}" may be its time of day`;
    paired.push(
      doubt === undefined
        ? match
        : { ...match, confidence: leastSure(match.confidence, 'likely'), why: `${match.why}; ${doubt}` },
    );
  }
  paired.sort(
    (a, b) =>
      matches.findIndex(({ field }) => field === a.field) -
      matches.findIndex(({ field }) => field === b.field),
  );
  const same = ON_THE_SAME_DATE[kind];
  const mine = paired.find(({ field }) => field === same?.own);
  if (same && mine?.columns.length === 2 && !paired.some(({ field }) => field === same.other)) {
    const [clock] = clocks
      .filter((column) => joins(column, mine.columns[0]!) && means(column, FIELD_CONCEPTS[kind][same.other]!))
      .sort(
        (a, b) =>
          meaning(b, FIELD_CONCEPTS[kind][same.other]!) - meaning(a, FIELD_CONCEPTS[kind][same.other]!),
      );
    if (clock) {
      used.add(clock);
      paired.push({
        field: same.other,
        columns: [mine.columns[0]!, clock],
        confidence: 'likely',
        why: `"${clock.header}" on the date of ${same.own}; ${same.unsure}`,
        score: 0.8,
      });
    }
  }
  return paired;
}

const hasTime = (column: ColumnProfile): boolean =>
  column.dateCells > 0.5
    ? column.texts.some((text) => /\d:\d\d$/.test(text) && !text.endsWith(' 00:00'))
    : column.dates === undefined || /[hH]/.test(column.dates.value ?? column.dates.options[0] ?? '');
