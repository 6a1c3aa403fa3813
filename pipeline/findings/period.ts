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
}

/** First and last operating day of records; null where there are none. */
export type Span = { first: Day; last: Day } | null;

/** Operating days of cycles and tests: the first and the last. */
export function spanOfRecords(
  site: Site,
  { cycles, air_removal_tests }: Pick<Records, 'cycles' | 'air_removal_tests'>,
): Span {
  const clockOf = clocksOfUnits(site);
  let span: Span = null;
  const take = (unit: string, at: number) => {
    const day = clockOf(unit).operatingDay(at);
    if (span === null) span = { first: day, last: day };
    else if (day < span.first) span.first = day;
    else if (day > span.last) span.last = day;
  };
  for (const cycle of cycles) take(cycle.unit, cycle.start);
  for (const test of air_removal_tests) take(test.unit, test.time);
  return span;
}

/** The span of all of them. */
export const spanOfSpans = (spans: readonly Span[]): Span =>
  spans.reduce<Span>(
    (all, span) =>
      all && span
        ? { first: Math.min(all.first, span.first), last: Math.max(all.last, span.last) }
        : (all ?? span),
    null,
  );

/** The clock of a unit's site. */
export function clocksOfUnits(site: Site) {
  const siteOf = new Map(site.declared.units?.map((unit) => [unit.id, unit.site]));
  return (unit: string) => site.sites.get(siteOf.get(unit) ?? site.declared.sites[0]!.id)!.clock;
}

/**
 * The period of a review: the month asked for, else the last month of which the records hold the last day, else the newest month.
 *
 * @throws UserError `month` where the text is no month, or there is no record in the month or before it
 */
export function reviewPeriod(asked: string | undefined, span: Span): Period {
  if (asked !== undefined) {
    const days = monthSpan(asked);
    if (!days) throw new UserError('month', `--month must be a month like 2026-03, found "${asked}"`);
    if (!span || days.until <= span.first || days.from > span.last) {
      const held = span
        ? `the records run from ${formatDay(span.first)} to ${formatDay(span.last)}`
        : 'there are none';
      throw new UserError('month', `--month must be a month with cycles or tests, found "${asked}"; ${held}`);
    }
    return { month: asked, ...days };
  }
  if (!span)
    throw new UserError(
      'no_records',
      'There must be at least one cycle or air-removal test to make a review, found none',
      'The command check lists what was read and why rows were rejected.',
    );
  const newest = monthOf(span.last);
  const days = monthSpan(newest)!;
  if (days.until - 1 === span.last || days.from <= span.first) return { month: newest, ...days };
  const month = monthOf(days.from - 1);
  return { month, ...monthSpan(month)! };
}
