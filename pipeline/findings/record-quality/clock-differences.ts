import { median } from 'simple-statistics';
import { groupBy } from '../../group-by.ts';
import { monthOf } from '../../site/day.ts';
import type { AirRemovalTest, Cycle, LeakTest } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { medianInterval } from '../../statistics/intervals/median-interval.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { ClockDifference } from './record-quality-schema.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** A test is matched by its cycle number to the cycle within this time, and without one to the one test cycle that started or ended so near. */
const BY_NUMBER_WITHIN = 36 * HOUR;
const BY_TIME_WITHIN = 6 * HOUR;
/** A test is recorded from the end of its cycle to this long after it (common practice, no source). */
const RECORDED_WITHIN_MINUTES = 60;
/** Stamps are rounded to the minute on both sides. */
const SLACK_MINUTES = 2;
const LEAST_MATCHED = 10;
const LEAST_IN_MONTH = 5;
/** Months whose medians differ by so much show a clock that changed. */
const CHANGE_MINUTES = 30;
/** What a test's record would lie after the end of its cycle on the same clock, minutes. */
const USUAL_MINUTES = 5;

type Test = AirRemovalTest | LeakTest;

/**
 * How far the clock of the test records runs from that of the cycle log, of a unit, for each source: time of the test minus end of its own cycle. It can't tell
 * reading late from a clock that runs ahead, so a difference of less than an hour after the end is no difference; before the end is.
 */
export function clockDifferences(
  site: Site,
  { unit, cycles, tests, leak_tests }: Pick<UnitHistory, 'unit' | 'cycles' | 'tests' | 'leak_tests'>,
): ClockDifference[] {
  const numbers = new Set([...tests, ...leak_tests].map(({ cycle_number }) => cycle_number));
  const byNumber = groupBy(
    cycles.filter(({ cycle_number }) => cycle_number !== undefined && numbers.has(cycle_number)),
    ({ cycle_number }) => cycle_number!,
  );
  return (['air_removal_tests', 'leak_tests'] as const).flatMap((kind) => {
    const ofTests: readonly Test[] = kind === 'leak_tests' ? leak_tests : tests;
    const cycleKind = kind === 'leak_tests' ? 'leak_test' : 'air_removal_test';
    const groups = groupBy(
      ofTests.filter(({ time_mark }) => time_mark !== 'day'),
      ({ origin }) => origin.source,
    );
    const ofKind = cycles.filter((cycle) => cycle.kind === cycleKind && cycle.end !== undefined);
    return [...groups].map(([source, list]): ClockDifference => {
      const declared = site.sources.find(({ name }) => name === source);
      const { clock } = site.sites.get(declared?.site ?? '') ?? site.sites.values().next().value!;
      const matches = list.flatMap((test) => {
        const end = endOfCycle(test, byNumber, ofKind);
        return end === undefined
          ? []
          : [{ minutes: (test.time - end) / MINUTE, month: monthOf(clock.operatingDay(test.time)) }];
      });
      return {
        source,
        kind,
        unit,
        matched: matches.length,
        unmatched: list.length - matches.length,
        ...judge(matches, declared?.clock_offset_minutes ?? 0),
      };
    });
  });
}

/** @param corrected `clock_offset_minutes` with which the source was read; what is suggested stands in its place */
function judge(
  matches: readonly { minutes: number; month: string }[],
  corrected: number,
): Pick<
  ClockDifference,
  | 'median_minutes'
  | 'low_minutes'
  | 'high_minutes'
  | 'before_end'
  | 'months'
  | 'verdict'
  | 'suggested_offset_minutes'
> {
  const values = matches.map(({ minutes }) => minutes);
  const interval = medianInterval(values, 0.95);
  const before = values.filter((minutes) => minutes < -SLACK_MINUTES).length;
  const months = [...groupBy(matches, ({ month }) => month)]
    .filter(([, list]) => list.length >= LEAST_IN_MONTH)
    .map(([month, list]) => ({
      month,
      matched: list.length,
      median_minutes: tenth(median(list.map(({ minutes }) => minutes))),
    }));
  if (values.length < LEAST_MATCHED || !interval.computable)
    return {
      median_minutes: null,
      low_minutes: null,
      high_minutes: null,
      before_end: before,
      months,
      verdict: 'too_few',
      suggested_offset_minutes: null,
    };
  const medians = months.map(({ median_minutes }) => median_minutes);
  const changes = medians.length > 1 && Math.max(...medians) - Math.min(...medians) >= CHANGE_MINUTES;
  const verdict = changes
    ? 'changes'
    : interval.interval.high < -SLACK_MINUTES
      ? 'test_clock_behind'
      : interval.interval.low > RECORDED_WITHIN_MINUTES
        ? 'test_clock_ahead'
        : 'agree';
  const differs = verdict === 'test_clock_behind' || verdict === 'test_clock_ahead';
  return {
    median_minutes: tenth(interval.estimate),
    low_minutes: tenth(interval.interval.low),
    high_minutes: tenth(interval.interval.high),
    before_end: before,
    months,
    verdict,
    suggested_offset_minutes: differs ? Math.round(interval.estimate - USUAL_MINUTES + corrected) : null,
  };
}

/** End of the cycle that a test belongs to; undefined where none, or more than one, may be it. */
function endOfCycle(
  test: Test,
  byNumber: ReadonlyMap<number, readonly Cycle[]>,
  ofKind: readonly Cycle[],
): number | undefined {
  if (test.cycle_number !== undefined) {
    const near = (byNumber.get(test.cycle_number) ?? []).filter(
      ({ start, end }) => end !== undefined && Math.abs(start - test.time) <= BY_NUMBER_WITHIN,
    );
    return near.length === 1 ? near[0]!.end : undefined;
  }
  const near = ofKind.filter(({ end }) => Math.abs(end! - test.time) <= BY_TIME_WITHIN);
  return near.length === 1 ? near[0]!.end : undefined;
}

const tenth = (minutes: number): number => Math.round(minutes * 10) / 10 + 0;
