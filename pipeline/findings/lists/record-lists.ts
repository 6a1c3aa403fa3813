import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import { formatWall } from '../../site/wall-clock.ts';
import { isProduction } from '../../transform/cycles/class-cycles.ts';
import { lookBacks } from '../../transform/look-back.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { requalifications } from '../../transform/service/requalification.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';

/** The lists of single records that are made unit by unit. */
export type RecordLists = Pick<
  Review,
  | 'contradicted_records'
  | 'incomplete_returns'
  | 'test_timing'
  | 'look_backs'
  | 'cycles_without_pass'
  | 'requalifications'
  | 'early_stops'
>;

/** Abort texts and how often each stands. */
export type TextCounts = [text: string, count: number][];

/** The lists of single records of a unit that a review prints. Each takes its history and the month as operating days. */
type Lister<K extends keyof Review> = (history: UnitHistory, from: Day, until: Day) => Review[K];

/** Chamber cleaning records that the cycle log contradicts, over the whole record. */
export const contradictedRecords: Lister<'contradicted_records'> = ({ unit, clock, cleanings }, from) =>
  cleanings
    .filter((cleaning) => cleaning.contradicted)
    .map((cleaning) => ({
      unit,
      task: cleaning.task,
      time: formatWall(clock.wallOf(cleaning.time)),
      in_month: cleaning.day >= from,
      running: cleaning.support!.running,
      hot: cleaning.support!.hot,
      idle_hours: cleaning.support!.idle_hours,
      file: cleaning.origin.file,
      sheet: cleaning.origin.sheet,
      row: cleaning.origin.row,
    }));

/** Chamber cleanings after which production came before a warm-up and a passing air-removal test. */
export const incompleteReturns: Lister<'incomplete_returns'> = ({ unit, clock, cleanings }, from) =>
  cleanings
    .filter((cleaning) => cleaning.support?.no_return)
    .map((cleaning) => ({
      unit,
      cleaned: formatWall(clock.wallOf(cleaning.time)),
      in_month: cleaning.day >= from,
      file: cleaning.origin.file,
      sheet: cleaning.origin.sheet,
      row: cleaning.origin.row,
    }));

/**
 * Days of the month whose test is missing or late, or with production after a failed test and before one passed. A day may be here for two reasons.
 *
 * @param rows of the panel of the unit
 * @param withoutPass see `cyclesWithoutPass`, of the same days
 */
export function testTimingList(
  { unit, clock, cycles, tests }: UnitHistory,
  rows: readonly UnitDay[],
  from: Day,
  withoutPass: Review['cycles_without_pass'],
): Review['test_timing'] {
  const wall = (at: number) => formatWall(clock.wallOf(at));
  const cyclesOf = groupBy(
    cycles.filter(({ day }) => day >= from),
    ({ day }) => day,
  );
  const afterFailure = new Set(
    withoutPass.flatMap((list) => (list.why === 'after_failure' ? list.cycles.map(({ date }) => date) : [])),
  );
  return rows
    .filter((row) => row.day >= from)
    .flatMap(({ day, date, test_timing }) => {
      const timings = [
        ...(test_timing === 'missing' || test_timing === 'late' ? [test_timing] : []),
        ...(afterFailure.has(date) ? ['after_failure' as const] : []),
      ];
      if (timings.length === 0) return [];
      const production = cyclesOf.get(day)!.find(isProduction)!;
      const ended = tests.find((test) => test.day === day && test.role !== 'invalid')?.ended_at ?? null;
      return timings.map((timing) => ({
        unit,
        date,
        timing,
        test_ended: ended === null ? null : wall(ended),
        first_production: wall(production.start),
      }));
    });
}

/** Look-back lists of the month's failed tests. */
export const lookBackLists: Lister<'look_backs'> = (history, from, until) => {
  const wall = (at: number) => formatWall(history.clock.wallOf(at));
  return lookBacks(history, from, until).map((list) => ({
    ...list,
    failed: wall(list.failed_at),
    last_pass: list.last_pass_at === null ? null : wall(list.last_pass_at),
    cycles: list.cycles.map((cycle) => ({ ...cycle, started: wall(cycle.start) })),
  }));
};

/** Returns to service after major service, over the whole record. */
export const requalificationList = (
  history: UnitHistory,
  from: Day,
  rules: Rules,
): Review['requalifications'] =>
  requalifications(history, history.cycles, history.tests, rules.requalification_tests).map((of) => ({
    ...of,
    ended: formatWall(history.clock.wallOf(of.ended_at)),
    in_month: of.day >= from,
  }));

/** Unexplained early stops of the month: each may be a cleaning that nobody recorded. */
export const earlyStops: Lister<'early_stops'> = ({ unit, clock, cycles }, from) =>
  cycles
    .filter((cycle) => cycle.standing === 'early_stop' && cycle.day >= from)
    .map((cycle) => ({
      unit,
      start: formatWall(clock.wallOf(cycle.start)),
      minutes: cycle.end === undefined ? null : (cycle.end - cycle.start) / 60_000,
      file: cycle.origin.file,
      row: cycle.origin.row,
    }));

/** Abort texts that no row of the site's table matches, and how often each stands. */
export function countUnclassified({ cycles }: UnitHistory): TextCounts {
  const counts = new Map<string, number>();
  for (const { abort_class, abort_text = '' } of cycles)
    if (abort_class === 'unclassified') counts.set(abort_text, (counts.get(abort_text) ?? 0) + 1);
  return [...counts];
}

/** The same as a list, most frequent first. */
export function unclassifiedTexts(counts: TextCounts): Review['unclassified_abort_texts'] {
  return counts
    .map(([text, count]) => ({ text, count }))
    .sort((a, b) => b.count - a.count || (a.text < b.text ? -1 : 1));
}
