import type { RecordKind } from '../site/vocabulary.ts';
import { FIELD_CONCEPTS } from './field-concepts.ts';
import { CERTAIN_FROM, type FieldMatch } from './field-match.ts';
import { leastSure } from './guess.ts';
import { type ColumnProfile, isDates } from './profile-column.ts';
import type { Meaning } from './vocabulary.ts';

/** A date column gets the time-of-day column that belongs to it; an end that is a time of day alone gets the date of the start. */
export function pairTimes(
  kind: RecordKind,
  matches: readonly FieldMatch[],
  columns: readonly ColumnProfile[],
  used: Set<ColumnProfile>,
  meanings: ReadonlyMap<ColumnProfile, readonly Meaning[]>,
): FieldMatch[] {
  const own = kind === 'service' ? 'from' : kind === 'cycles' ? 'start' : 'time';
  const clocks = columns.filter(
    (column) => column.timeOfDay !== undefined && !used.has(column) && !isDates(column),
  );
  const meaning = (column: ColumnProfile, concepts: readonly string[]): number =>
    Math.max(
      0,
      ...meanings
        .get(column)!
        .filter(({ key }) => concepts.includes(key))
        .map(({ score }) => score),
    );
  // A time cell of a workbook joins a date cell, not a date in letters.
  const joins = (clock: ColumnProfile, date: ColumnProfile): boolean =>
    !used.has(clock) && clock.clockCells > 0.5 === date.dateCells > 0.5;
  // "Time off" says time, and the end more.
  const isEnd = (field: string, column: ColumnProfile, concepts: readonly string[]): boolean =>
    field === own && own === 'start' && meaning(column, ['end']) > meaning(column, concepts);
  const saysNothingElse = (column: ColumnProfile): boolean =>
    meanings.get(column)!.every(({ key, score }) => score < 0.6 || key === 'date' || key === 'date_time');
  const paired: FieldMatch[] = [];
  // The record's own time first: it has the first choice of a column that says no more than "time".
  const order = [...matches].sort((a, b) => Number(b.field === own) - Number(a.field === own));
  for (const match of order) {
    const [date] = match.columns;
    const concepts = [
      ...(FIELD_CONCEPTS[kind][match.field] ?? []),
      ...(match.field === own ? ['time_of_day'] : []),
    ];
    const free =
      date && isDates(date) && !hasTime(date)
        ? clocks.filter(
            (column) =>
              joins(column, date) &&
              meaning(column, concepts) >= 0.6 &&
              !isEnd(match.field, column, concepts),
          )
        : [];
    free.sort(
      (a, b) =>
        meaning(b, concepts) - meaning(a, concepts) || Math.abs(a.at - date!.at) - Math.abs(b.at - date!.at),
    );
    const beside =
      match.field === own && free.length === 0 && date && isDates(date) && !hasTime(date)
        ? clocks.filter((column) => joins(column, date) && saysNothingElse(column))
        : [];
    // The one time of day whose name says nothing, straight after the date, is the date's own.
    if (beside.length === 1 && beside[0]!.at === date!.at + 1) free.push(beside[0]!);
    const [clock] = free;
    const apart = clocks.find(
      (column) =>
        match.field === own &&
        date !== undefined &&
        isDates(date) &&
        !hasTime(date) &&
        !used.has(column) &&
        !joins(column, date) &&
        meaning(column, concepts) >= 0.6,
    );
    if (!clock && apart)
      paired.push({
        ...match,
        confidence: leastSure(match.confidence, 'likely'),
        why: `${match.why}; "${apart.header}" can't be joined with it, since one of them is a cell of a date or time and the other is text`,
      });
    else if (!clock && beside.length > 0)
      paired.push({
        ...match,
        confidence: leastSure(match.confidence, 'likely'),
        why: `${match.why}; "${beside[0]!.header}" may be its time of day`,
      });
    else if (!clock) paired.push(match);
    else {
      used.add(clock);
      const clear =
        meaning(clock, concepts) >= CERTAIN_FROM &&
        !(free[1] && meaning(free[1], concepts) >= meaning(clock, concepts));
      paired.push({ ...match, columns: [date!, clock], confidence: clear ? match.confidence : 'likely' });
    }
  }
  paired.sort(
    (a, b) =>
      matches.findIndex(({ field }) => field === a.field) -
      matches.findIndex(({ field }) => field === b.field),
  );
  const start = paired.find(({ field }) => field === own);
  const end = kind === 'cycles' ? 'end' : kind === 'service' ? 'to' : undefined;
  if (
    end !== undefined &&
    start &&
    start.columns.length === 2 &&
    !paired.some(({ field }) => field === end)
  ) {
    const clock = clocks.find(
      (column) => !used.has(column) && meaning(column, FIELD_CONCEPTS[kind][end]!) >= 0.6,
    );
    if (clock) {
      used.add(clock);
      paired.push({
        field: end,
        columns: [start.columns[0]!, clock],
        confidence: 'likely',
        why: `"${clock.header}" on the date of the start; a cycle over midnight loses its end so`,
        score: 0.8,
      });
    }
  }
  return paired;
}

const hasTime = (column: ColumnProfile): boolean =>
  column.dateCells > 0.5
    ? column.texts.some((text) => !text.endsWith(' 00:00'))
    : column.dates === undefined || /[hH]/.test(column.dates.value ?? column.dates.options[0] ?? '');
