import { describe, expect, it } from 'vitest';
import { formatDay, parseDay } from '../../pipeline/site/day.ts';
import type { AirRemovalTest, Records, Service } from '../../pipeline/site/records.ts';
import { lookBacks } from '../../pipeline/transform/look-back.ts';
import { isOver, possibleTime } from '../../pipeline/transform/possible-time.ts';
import { requalifications } from '../../pipeline/transform/service/requalification.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import { at, cleaning, cycle, ordinaryDay, recordsOf, service, siteOf, test_ } from './build.ts';

// Records of which only the date is known, whose instant is that at which the operating day opens (04:00). What is expected follows by hand from the rule that such a
// record may be of any time of its day, and that an order which isn't known is neither work done nor work left undone (the project's own definitions; common
// practice, no source).

const DAY = { time_mark: 'day' } as const;
const UNTIL = parseDay('2025-04-01')!;
const historyOf = (some: Partial<Records>) => transform(siteOf(), recordsOf(some), UNTIL).histories[0]!;
const testOf = (date: string, result: AirRemovalTest['result']) => test_(`${date} 04:00`, result, DAY);
/** Ordinary days without the cycles of their tests, so that a test by date stays one. */
const daysOf = (list: readonly string[]) => ({
  cycles: list.flatMap((date) => ordinaryDay(date).cycles.filter((of) => of.kind !== 'air_removal_test')),
});
const MONDAY_ON = Array.from({ length: 7 }, (_, index) => formatDay(parseDay('2025-03-03')! + index));

describe('the possible time of a record', () => {
  const { clock } = siteOf().sites.get('s')!;

  it('is the time, or with a date alone the whole operating day, also where the clock is put forward (23 hours)', () => {
    expect(possibleTime(at('2025-03-04 07:25'), 'time', clock)).toEqual({
      earliest: at('2025-03-04 07:25'),
      latest: at('2025-03-04 07:25'),
    });
    expect(possibleTime(at('2025-03-08 04:00'), 'day', clock)).toEqual({
      earliest: at('2025-03-08 04:00'),
      latest: at('2025-03-09 04:00') - 1,
    });
    expect(at('2025-03-09 04:00') - at('2025-03-08 04:00')).toBe(23 * 3_600_000);
  });

  it('is over by a first cycle where its latest is', () => {
    for (const mark of ['time', 'day'] as const)
      for (const written of [
        '2025-03-03 04:00',
        '2025-03-04 04:00',
        '2025-03-04 05:30',
        '2025-03-05 04:00',
      ]) {
        const time = at(written);
        const day = clock.operatingDay(time);
        const first = at('2025-03-04 05:00');
        const wanted = possibleTime(time, mark, clock).latest <= first;
        expect(isOver({ day, time, time_mark: mark }, parseDay('2025-03-04')!, first), written).toBe(wanted);
      }
  });
});

describe('cleanings by date', () => {
  const failing = { ...daysOf(MONDAY_ON), air_removal_tests: [test_('2025-03-05 07:25', 'fail')] };

  it('are reactive on the day of a failed test, as they are with a time after it', () => {
    const reactive = (...cleanings: Records['cleanings']) =>
      historyOf({ ...failing, cleanings }).cleanings.map((of) => of.reactive);
    expect(reactive(cleaning('chamber', '2025-03-05 04:00', DAY))).toEqual([true]);
    expect(reactive(cleaning('chamber', '2025-03-05 10:00'))).toEqual([true]);
    expect(reactive(cleaning('chamber', '2025-03-05 05:00'))).toEqual([false]);
    expect(reactive(cleaning('chamber', '2025-03-04 04:00', DAY))).toEqual([false]);
    expect(reactive(cleaning('chamber', '2025-03-07 04:00', DAY))).toEqual([true]);
    expect(reactive(cleaning('chamber', '2025-03-08 04:00', DAY))).toEqual([false]);
  });

  it('don’t hide one of the same day that has a time', () => {
    const { panel } = transform(
      siteOf('cleaning: [{ task: chamber, every: 30 }]'),
      recordsOf({
        ...daysOf(MONDAY_ON),
        cleanings: [cleaning('chamber', '2025-03-05 04:00', DAY), cleaning('chamber', '2025-03-05 05:30')],
      }),
      UNTIL,
    );
    expect(panel.slice(1, 4).map((row) => row.chamber_clock_days)).toEqual([null, 0, 1]);
  });
});

describe('a failed test by date', () => {
  it('has a list of the production since the last pass to the end of its day', () => {
    const tests = MONDAY_ON.slice(0, 5).map((date) => testOf(date, date === '2025-03-07' ? 'fail' : 'pass'));
    const history = historyOf({ ...daysOf(MONDAY_ON), air_removal_tests: tests });
    const [list, ...more] = lookBacks(history, parseDay('2025-03-01')!, UNTIL);
    expect(more).toEqual([]);
    expect(list).toMatchObject({ failed_by_date: true, last_pass_by_date: true });
    expect(list!.cycles.map((of) => of.start)).toEqual(
      ['2025-03-06 08:00', '2025-03-06 09:00', '2025-03-07 08:00', '2025-03-07 09:00'].map(at),
    );
  });

  it('is not taken to be answered by a pass of the same day that may have come after it', () => {
    const history = historyOf({
      ...daysOf(MONDAY_ON),
      air_removal_tests: [
        test_('2025-03-03 07:25', 'pass'),
        test_('2025-03-05 07:25', 'fail'),
        testOf('2025-03-05', 'pass'),
      ],
    });
    const [list] = lookBacks(history, parseDay('2025-03-01')!, UNTIL);
    expect(list).toMatchObject({ failed_by_date: false, last_pass_at: at('2025-03-03 07:25') });
    expect(list!.cycles).toHaveLength(4);
  });

  it('leaves open whether a test came first, also beside a late one', () => {
    const timings = (...air_removal_tests: AirRemovalTest[]) =>
      transform(siteOf(), recordsOf({ ...daysOf(['2025-03-03']), air_removal_tests }), UNTIL).panel.map(
        (row) => row.test_timing,
      );
    const late = test_('2025-03-03 12:00', 'pass');
    expect(timings(late)).toEqual(['late']);
    expect(timings(testOf('2025-03-03', 'pass'), late)).toEqual(['no_time']);
    expect(timings(testOf('2025-03-03', 'pass'), test_('2025-03-03 07:25', 'pass'))).toEqual(['in_time']);
  });
});

describe('the return after a chamber cleaning', () => {
  const supportOf = (air_removal_tests: AirRemovalTest[], warmUp = true) =>
    historyOf({
      cycles: [
        cycle('2025-03-03 08:00'),
        ...(warmUp ? [cycle('2025-03-05 08:00', { kind: 'warm_up' })] : []),
        cycle('2025-03-05 10:00'),
      ],
      air_removal_tests,
      cleanings: [cleaning('chamber', '2025-03-05 07:00', { minutes: 60 })],
    }).cleanings[0]!.support!;

  it('can’t be judged by a passing test of that day of which only the date is known', () => {
    expect(supportOf([testOf('2025-03-05', 'pass')])).toMatchObject({ hot: false, no_return: null });
    expect(supportOf([test_('2025-03-05 09:30', 'pass')]).no_return).toBe(false);
  });

  it('is lacking where no order could make it whole', () => {
    expect(supportOf([]).no_return).toBe(true);
    expect(supportOf([testOf('2025-03-04', 'pass')]).no_return).toBe(true);
    expect(supportOf([testOf('2025-03-06', 'pass')]).no_return).toBe(true);
    expect(supportOf([testOf('2025-03-05', 'pass')], false).no_return).toBe(true);
  });

  it('is made by a passing test by date on a day between', () => {
    const { cleanings } = historyOf({
      cycles: [
        cycle('2025-03-03 08:00'),
        cycle('2025-03-06 08:00', { kind: 'warm_up' }),
        cycle('2025-03-07 10:00'),
      ],
      air_removal_tests: [testOf('2025-03-06', 'pass')],
      cleanings: [cleaning('chamber', '2025-03-05 07:00', { minutes: 60 })],
    });
    expect(cleanings[0]!.support!.no_return).toBe(false);
  });
});

describe('service by date', () => {
  const outOf = (...some: Service[]) =>
    [...historyOf({ ...daysOf(MONDAY_ON), service: some }).out_of_service].map(formatDay);

  it('takes in its last day, and a single day', () => {
    expect(outOf(service('repair', '2025-03-03 04:00', '2025-03-03 04:00', DAY))).toEqual(['2025-03-03']);
    expect(outOf(service('repair', '2025-03-03 04:00', undefined, DAY))).toEqual(['2025-03-03']);
    expect(outOf(service('out_of_service', '2025-03-05 04:00', '2025-03-07 04:00', DAY))).toEqual([
      '2025-03-05',
      '2025-03-06',
      '2025-03-07',
    ]);
    // With times, the unit was back before the first cycle of the 7th at 06:00.
    expect(outOf(service('out_of_service', '2025-03-05 05:00', '2025-03-07 05:00'))).toEqual([
      '2025-03-05',
      '2025-03-06',
    ]);
  });

  it('doesn’t make a failed test of its last day one that came after the repair', () => {
    const { tests, episodes } = historyOf({
      ...daysOf(MONDAY_ON),
      air_removal_tests: [test_('2025-03-05 07:25', 'fail'), test_('2025-03-06 07:25', 'pass')],
      service: [service('repair', '2025-03-05 04:00', '2025-03-05 04:00', DAY)],
    });
    expect(tests.map((of) => of.role)).toEqual(['day_result', 'day_result']);
    expect(episodes).toHaveLength(1);
  });
});

describe('the return after a major repair', () => {
  const production = cycle('2025-03-06 15:00');
  const repairTo = (to: string, fields: Partial<Service> = {}) =>
    service('repair', '2025-03-04 04:00', to, { major: true, ...fields });
  const found = (
    air_removal_tests: AirRemovalTest[],
    repair = repairTo('2025-03-06 09:00'),
    cycles = [production],
  ) => {
    const history = historyOf({ cycles, air_removal_tests, service: [repair] });
    const [of] = requalifications(history, history.cycles, history.tests, 3);
    return [of!.passes_in_a_row, of!.state];
  };
  const three = (time: (index: number) => AirRemovalTest) => [0, 1, 2].map(time);
  const byDate = (date: string) => three(() => testOf(date, 'pass'));

  it('can’t be judged by tests by date on its day, and is incomplete where they are too few or on other days', () => {
    expect(found(byDate('2025-03-06'))).toEqual([0, 'not_judged']);
    expect(found(byDate('2025-03-06').slice(1))).toEqual([0, 'incomplete']);
    expect(found(byDate('2025-03-05'))).toEqual([0, 'incomplete']);
    expect(found(byDate('2025-03-07'))).toEqual([0, 'incomplete']);
    expect(found(byDate('2025-03-06'), undefined, [])).toEqual([0, 'not_judged']);
  });

  it('counts tests by date on days between', () => {
    const later = [cycle('2025-03-08 08:00')];
    expect(found(byDate('2025-03-07'), undefined, later)).toEqual([3, 'complete']);
    // A failed test of the same day may be the last of them, or the first.
    expect(found([...byDate('2025-03-07'), testOf('2025-03-07', 'fail')], undefined, later)).toEqual([
      0,
      'not_judged',
    ]);
  });

  it('can’t be judged where the repair ended by date on a day with tests or production, unless all orders agree', () => {
    const ended = repairTo('2025-03-06 04:00', DAY);
    const timed = three((index) => test_(`2025-03-06 1${index}:00`, 'pass'));
    expect(found(timed, ended)).toEqual([0, 'not_judged']);
    const nextDay = three((index) => test_(`2025-03-07 0${index + 5}:00`, 'pass'));
    expect(found(nextDay, ended, [cycle('2025-03-07 09:00')])).toEqual([3, 'complete']);
    // Production of that day may have come before the repair began or ended: then none has come since.
    expect(found([], ended, [production])).toEqual([0, 'not_judged']);
    expect(found([], ended, [production, cycle('2025-03-07 09:00')])).toEqual([0, 'incomplete']);
    expect(found([], ended, [])).toEqual([0, 'no_production_yet']);
  });
});
