import { describe, expect, it } from 'vitest';
import { chamberSummary } from '../../../pipeline/findings/summaries/chamber.ts';
import { formatDay, parseDay } from '../../../pipeline/site/day.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cleaning, ordinaryDay, recordsOf, siteOf, test_ } from '../../transform/build.ts';

const FIRST = parseDay('2025-03-03')!;
const date = (day: number) => formatDay(FIRST + day);

/** Days of use from the first on, a chamber cleaning on the evening of the first, the strainer's log up to a day; the record ends before `until`. */
function summary(
  means: string,
  logged = 40,
  more: { until?: number; policy?: string; cleaned?: number[] } = {},
) {
  const { until = 40, policy = 'every: 30, grace_days: 3', cleaned = [0] } = more;
  const site = siteOf(`cleaning: [{ task: chamber, ${policy}, unrecorded_means: ${means} }]`);
  // The panel is asked for one day more, which is what the sheet of the record before it speaks of.
  const made = (end: number) => {
    const days = Array.from({ length: end }, (_, day) => ordinaryDay(date(day)));
    const cleanings = [
      ...cleaned.map((day) => cleaning('chamber', `${date(day)} 20:00`)),
      ...Array.from({ length: logged }, (_, day) => cleaning('drain_strainer', `${date(day)} 05:00`)),
    ];
    const records = {
      cycles: days.flatMap((of) => of.cycles),
      air_removal_tests: days.flatMap((of) => of.tests),
      cleanings,
    };
    return transform(site, recordsOf(records), FIRST + end);
  };
  const { histories } = made(until);
  const sheet = chamberSummary(site, histories[0]!, FIRST + until);
  const panel = made(until + 1).panel.at(-1)!;
  return {
    sheet: [sheet.clock_days, sheet.days_past_due],
    panel: [panel.chamber_clock_days, panel.chamber_days_past_due],
  };
}

describe('chamber cleaning on the sheet of a unit', () => {
  // Due on day 30 after the cleaning of day 0, so that day 40 is ten days past due; the grace says when that counts, not how much.
  it.each([
    ['missed', 40, 10],
    ['done', 40, 0],
    ['not_recorded', 40, null],
    // The log ended twenty days before: blank since then is not missed.
    ['missed', 20, null],
  ] as const)(
    'where blanks mean %s and the log goes to day %i, is %s days past due',
    (means, logged, past) => {
      expect(summary(means, logged).sheet).toEqual([40, past]);
    },
  );

  it('says what the panel says of the day after, within the grace and past it, in what the policy counts', () => {
    for (const policy of [
      'every: 30, grace_days: 3',
      'every: 30, counted_in: days_of_use, grace_days: 3',
      'every: 120, counted_in: cycles, grace_days: 3',
    ])
      for (const until of [29, 30, 31, 33, 34, 40])
        for (const means of ['missed', 'not_recorded']) {
          const { sheet, panel } = summary(means, 41, { until, policy });
          expect(sheet, `${policy}, ${means}, day ${until}`).toEqual(panel);
        }
    expect(summary('missed', 41, { until: 33 }).sheet).toEqual([33, 0]);
    expect(summary('missed', 41, { until: 34 }).sheet).toEqual([34, 4]);
  });

  it('counts a cleaning of the last evening', () => {
    expect(summary('missed', 40, { cleaned: [0, 39] }).sheet).toEqual([1, 0]);
  });

  it('is not known before the first record, until an interval has passed since the first day of use', () => {
    expect(summary('missed', 20, { until: 20, cleaned: [] }).sheet).toEqual([null, null]);
    // The task must be logged somewhere for a blank to say something: here no unit has a record of it.
    expect(summary('missed', 40, { cleaned: [] }).sheet).toEqual([null, null]);
  });
});

describe('chamber cleaning records on the sheet of a unit', () => {
  it('are not judged where of the passing test only the date is known', () => {
    const site = siteOf('cleaning: [{ task: chamber, every: 30 }]');
    const { cycles } = ordinaryDay(date(3));
    const { histories } = transform(
      site,
      recordsOf({
        cycles: cycles.filter((of) => of.kind !== 'air_removal_test'),
        air_removal_tests: [test_(`${date(3)} 04:00`, 'pass', { time_mark: 'day' })],
        cleanings: [cleaning('chamber', `${date(3)} 05:00`)],
      }),
      FIRST + 10,
    );
    expect(chamberSummary(site, histories[0]!, FIRST + 10)).toMatchObject({
      records: 1,
      supported: 0,
      no_return: 0,
      not_judged: 1,
    });
  });
});
