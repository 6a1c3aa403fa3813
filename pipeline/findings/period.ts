import { endsOfRecords, type RecordEnds, splitEnds } from '../ingest/lone/record-ends.ts';
import { type Day, formatDay, monthOf, monthSpan } from '../site/day.ts';
import type { Records } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { UserError } from '../user-error.ts';

/** The month of a review, as operating days. */
export interface Period {
  month: string;
  from: Day;
  /** First operating day after the month. */
  until: Day;
  /** First operating day whose cycles and tests count, where lone records lie before it. */
  since?: Day;
}

/** First and last operating day of records, and the days of lone ones, which lie outside; null where there are none. */
export type Span = { first: Day; last: Day; lone: readonly Day[] } | null;

/** Operating days of cycles and tests: the first and the last, without lone records. */
export const spanOfRecords = (site: Site, records: Pick<Records, 'cycles' | 'air_removal_tests'>): Span =>
  spanOfEnds(endsOfRecords(site, records));

export function spanOfEnds(ends: RecordEnds): Span {
  const split = splitEnds(ends);
  return split && { first: split.first.day, last: split.last.day, lone: split.lone.map(({ day }) => day) };
}

/**
 * The day after the lone records that lie before a span, from which on cycles and tests count; nothing where there are none.
 *
 * @param from first day that is asked for, which may lie among the lone records and counts then
 */
export function countedSince({ first, lone }: NonNullable<Span>, from = first): Pick<Period, 'since'> {
  const before = lone.filter((day) => day < first);
  return before.length === 0 ? {} : { since: Math.min(Math.max(...before) + 1, from) };
}

/**
 * The period of a review: the month asked for, else the last month of which the records hold the last day, else the newest month. Lone records move neither; a month of theirs that is asked for
 * counts them, with all before it.
 *
 * @throws UserError `month` where the text is no month, or there is no record in the month or before it
 */
export function reviewPeriod(asked: string | undefined, span: Span): Period {
  if (asked !== undefined) {
    const days = monthSpan(asked);
    if (!days) throw new UserError('month', `--month must be a month like 2026-03, found "${asked}"`);
    const isHeld = (first: Day, last: Day) => days.until > first && days.from <= last;
    if (!span || !(isHeld(span.first, span.last) || span.lone.some((day) => isHeld(day, day)))) {
      const held = span
        ? `the records run from ${formatDay(span.first)} to ${formatDay(span.last)}`
        : 'there are none';
      throw new UserError('month', `--month must be a month with cycles or tests, found "${asked}"; ${held}`);
    }
    return { month: asked, ...days, ...countedSince(span, days.from) };
  }
  if (!span)
    throw new UserError(
      'no_records',
      'There must be at least one cycle or air-removal test to make a review, found none',
      'The command check lists what was read and why rows were rejected.',
    );
  const since = countedSince(span);
  const newest = monthOf(span.last);
  const days = monthSpan(newest)!;
  if (days.until - 1 === span.last || days.from <= span.first) return { month: newest, ...days, ...since };
  const month = monthOf(days.from - 1);
  return { month, ...monthSpan(month)!, ...since };
}
