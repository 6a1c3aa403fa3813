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

/** The columns of times of day that a kind's dates may get, and what all columns mean. */
interface Pairing {
  kind: RecordKind;
  /** Field of the record's own time. */
  own: string;
  clocks: readonly ColumnProfile[];
  used: Set<ColumnProfile>;
  /** How surely a column means one of some concepts, 0 to 1. */
  meaning(column: ColumnProfile, concepts: readonly string[]): number;
  /** Whether a column means nothing but a date or time. */
  saysNothingElse(column: ColumnProfile): boolean;
}

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
  const pairing: Pairing = {
    kind,
    own,
    // A time of day for which something is planned, or that is another record's, is none at which it was done.
    clocks: columns.filter(
      (column) =>
        column.timeOfDay !== undefined &&
        !used.has(column) &&
        !isDates(column) &&
        meaning(column, NOT_DONE_THEN) < NAMED_FROM,
    ),
    used,
    meaning,
    saysNothingElse: (column) =>
      meanings
        .get(column)!
        .every(({ key, score }) => score < NAMED_FROM || key === 'date' || key === 'date_time'),
  };
  // The record's own time first: it has the first choice of a column that says no more than "time".
  const order = [...matches].sort((a, b) => Number(b.field === own) - Number(a.field === own));
  const hasBegin = matches.some(({ field }) => field === 'start');
  const found = new Map(order.map((match) => [match.field, withClock(pairing, match, hasBegin)]));
  const paired = matches.map(({ field }) => found.get(field)!);
  const other = otherEnd(pairing, paired);
  return other ? [...paired, other] : paired;
}

/** Reading joins a date cell with a cell or text of a time of day, a date in letters with text alone. */
const joins = ({ used }: Pairing, clock: ColumnProfile, date: ColumnProfile): boolean =>
  !used.has(clock) && (clock.clockCells <= 0.5 || date.dateCells > 0.5);

/** Clocks that mean some concepts, the surest first and then the nearest to a place. */
function meaningClocks(
  { clocks, meaning }: Pairing,
  concepts: readonly string[],
  near: number,
): ColumnProfile[] {
  return clocks
    .filter((column) => meaning(column, concepts) >= NAMED_FROM)
    .sort(
      (a, b) => meaning(b, concepts) - meaning(a, concepts) || Math.abs(a.at - near) - Math.abs(b.at - near),
    );
}

/** A match with the time of day that belongs to its date, or with a doubt where there may be one. */
function withClock(pairing: Pairing, match: FieldMatch, hasBegin: boolean): FieldMatch {
  const { kind, own, clocks, used, meaning } = pairing;
  const [date] = match.columns;
  const isOwn = match.field === own;
  if (!date || match.columns.length > 1 || !isDates(date) || hasTime(date)) return match;
  const concepts = [...(FIELD_CONCEPTS[kind][match.field] ?? []), ...(isOwn ? ['time_of_day'] : [])];
  const named = meaningClocks(pairing, concepts, date.at).filter(
    (column) =>
      !used.has(column) && !(isOwn && meaning(column, OPPOSITE[own] ?? []) > meaning(column, concepts)),
  );
  const free = named.filter((column) => joins(pairing, column, date));
  const beside =
    isOwn && free.length === 0
      ? clocks.filter((column) => joins(pairing, column, date) && pairing.saysNothingElse(column))
      : [];
  // The one time of day whose name says nothing, straight after the date, is the date's own.
  if (beside.length === 1 && beside[0]!.at === date.at + 1) free.push(beside[0]!);
  // Work of which only the begin is known took place then.
  const begins =
    isOwn && kind === 'cleanings' && free.length === 0 && !hasBegin
      ? meaningClocks(pairing, BEGIN, date.at).filter((column) => joins(pairing, column, date))
      : [];
  const begun = begins.length === 1;
  const clock = free[0] ?? (begun ? begins[0] : undefined);
  if (clock) {
    used.add(clock);
    const isRivalled = free[1] !== undefined && meaning(free[1], concepts) >= meaning(clock, concepts);
    const clear = meaning(clock, concepts) >= CERTAIN_FROM && !begun && !isRivalled;
    const joined = { ...match, columns: [date, clock] };
    return clear ? joined : doubted(joined, `"${clock.header}" as its time of day`);
  }
  if (!isOwn) return match;
  const apart = named.find((column) => !joins(pairing, column, date));
  if (apart)
    return doubted(
      match,
      `"${apart.header}" can't be joined with it, since its date is text and the time a cell`,
    );
  const left = beside[0] ?? clocks.find((column) => !used.has(column));
  return left ? doubted(match, `"${left.header}" may be its time of day`) : match;
}

const doubted = (match: FieldMatch, why: string): FieldMatch => ({
  ...match,
  confidence: leastSure(match.confidence, 'likely'),
  why: `${match.why}; ${why}`,
});

/** The begin or end that is a time of day alone, on the date of the record's own time. */
function otherEnd(pairing: Pairing, paired: readonly FieldMatch[]): FieldMatch | undefined {
  const { kind, used } = pairing;
  const same = ON_THE_SAME_DATE[kind];
  const mine = paired.find(({ field }) => field === same?.own);
  if (!same || mine?.columns.length !== 2 || paired.some(({ field }) => field === same.other))
    return undefined;
  const date = mine.columns[0]!;
  const clock = meaningClocks(pairing, FIELD_CONCEPTS[kind][same.other]!, 0).find((column) =>
    joins(pairing, column, date),
  );
  if (!clock) return undefined;
  used.add(clock);
  return {
    field: same.other,
    columns: [date, clock],
    confidence: 'likely',
    why: `"${clock.header}" on the date of ${same.own}; ${same.unsure}`,
    score: 0.8,
  };
}

const hasTime = (column: ColumnProfile): boolean =>
  column.dateCells > 0.5
    ? column.texts.some((text) => /\d:\d\d$/.test(text) && !text.endsWith(' 00:00'))
    : column.dates === undefined || /[hH]/.test(column.dates.value ?? column.dates.options[0] ?? '');
