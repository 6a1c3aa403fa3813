import { describe, expect, it } from 'vitest';
import { cyclesWithoutPass } from '../../../pipeline/findings/lists/cycles-without-pass.ts';
import { cyclesWithoutPassSchema } from '../../../pipeline/findings/lists/cycles-without-pass-schema.ts';
import { parseDay } from '../../../pipeline/site/day.ts';
import type { AirRemovalTest, Records } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cycle, recordsOf, siteOf, test_ } from '../../transform/build.ts';

// What is expected follows by hand from the rule that a unit stays out of use from a failed test until one passes (the project's own caution; common practice, no source).

const MARCH = parseDay('2025-03-01')!;
const APRIL = parseDay('2025-04-01')!;
const on = (date: string, result: AirRemovalTest['result']) =>
  test_(`${date} 04:00`, result, { time_mark: 'day' });
const RUN = ['2025-03-03 08:00', '2025-03-03 12:00', '2025-03-04 08:00', '2025-03-05 08:00'];

function listsOf(
  air_removal_tests: AirRemovalTest[],
  cycles: Records['cycles'] = RUN.map((start) => cycle(start)),
  from = MARCH,
) {
  const { histories, panel } = transform(siteOf(), recordsOf({ cycles, air_removal_tests }), APRIL);
  const lists = cyclesWithoutPass(histories[0]!, panel, from, APRIL);
  for (const list of lists) cyclesWithoutPassSchema.parse(list);
  return lists.map(({ why, failed, ended, cycles: listed }) => ({
    why,
    failed,
    ended,
    ran: listed.map(({ started, certain }) => (certain ? started : `${started} perhaps`)),
  }));
}

describe('cycles after a failed test', () => {
  it('are all up to the next pass, and with none on record all to the end', () => {
    const failed = test_('2025-03-03 07:08', 'fail');
    expect(listsOf([failed, test_('2025-03-04 07:00', 'pass'), test_('2025-03-05 07:00', 'pass')])).toEqual([
      { why: 'after_failure', failed: '2025-03-03 07:08', ended: '2025-03-04 07:00', ran: RUN.slice(0, 2) },
    ]);
    expect(listsOf([failed])).toEqual([
      { why: 'after_failure', failed: '2025-03-03 07:08', ended: null, ran: RUN },
    ]);
  });

  it('are none where a retest passed before production, and those between where it came later', () => {
    const day = [test_('2025-03-04 07:00', 'pass'), test_('2025-03-05 07:00', 'pass')];
    const failed = test_('2025-03-03 07:08', 'fail');
    expect(listsOf([failed, test_('2025-03-03 07:50', 'pass'), ...day])).toEqual([]);
    expect(listsOf([failed, test_('2025-03-03 09:00', 'pass'), ...day]).map(({ ran }) => ran)).toEqual([
      [RUN[0]],
    ]);
  });

  it('count a failed retest, an invalid one neither way, and several failures as one list', () => {
    const lists = listsOf([
      test_('2025-03-03 07:00', 'pass'),
      test_('2025-03-03 10:00', 'fail'),
      test_('2025-03-04 07:00', 'invalid'),
      test_('2025-03-04 07:30', 'fail'),
      test_('2025-03-05 07:00', 'pass'),
    ]);
    expect(lists).toEqual([
      {
        why: 'after_failure',
        failed: '2025-03-03 10:00',
        ended: '2025-03-05 07:00',
        ran: RUN.slice(1, 3),
      },
    ]);
  });

  it('are those of the month where the failure lies before it', () => {
    expect(
      listsOf([test_('2025-03-03 07:08', 'fail')], undefined, parseDay('2025-03-05')!).map(({ ran }) => ran),
    ).toEqual([[RUN[3]]]);
  });

  it('are those of liquids too, and no test, warm-up or stopped cycle', () => {
    const lists = listsOf(
      [test_('2025-03-03 07:08', 'fail')],
      [
        cycle('2025-03-03 07:20', { kind: 'warm_up' }),
        cycle('2025-03-03 08:00', { kind: 'liquids' }),
        cycle('2025-03-03 09:00', { kind: 'qualification' }),
      ],
    );
    expect(lists.map(({ ran }) => ran)).toEqual([['2025-03-03 08:00']]);
  });
});

describe('where only dates are known', () => {
  it('the whole day of the failure and that of the pass are listed, and only what lies surely between is certain', () => {
    expect(listsOf([on('2025-03-03', 'fail'), on('2025-03-05', 'pass')])).toContainEqual({
      why: 'after_failure',
      failed: '2025-03-03 04:00',
      ended: '2025-03-05 04:00',
      ran: [`${RUN[0]} perhaps`, `${RUN[1]} perhaps`, RUN[2], `${RUN[3]} perhaps`],
    });
  });

  it('a pass of the same date, later in the records, ends the list with the day; nothing of it is certain', () => {
    const rest = [test_('2025-03-04 07:00', 'pass'), test_('2025-03-05 07:00', 'pass')];
    expect(
      listsOf([on('2025-03-03', 'fail'), on('2025-03-03', 'pass'), ...rest]).map(({ ran }) => ran),
    ).toEqual([[`${RUN[0]} perhaps`, `${RUN[1]} perhaps`]]);
  });

  it('a pass by date is not taken to have followed a failure of that day whose time is known', () => {
    const rest = [test_('2025-03-04 09:00', 'pass'), test_('2025-03-05 07:00', 'pass')];
    const [list] = listsOf([on('2025-03-03', 'pass'), test_('2025-03-03 10:00', 'fail'), ...rest]);
    expect(list!.ran).toEqual([`${RUN[1]} perhaps`, `${RUN[2]} perhaps`]);
  });
});

describe('days with no test in time', () => {
  it('list the cycles before a late test, and all of a day with none; each cycle stands once', () => {
    expect(listsOf([test_('2025-03-03 10:00', 'pass'), test_('2025-03-04 07:00', 'pass')])).toEqual([
      { why: 'before_late_test', failed: null, ended: '2025-03-03 10:00', ran: [RUN[0]] },
      { why: 'no_test', failed: null, ended: null, ran: [RUN[3]] },
    ]);
    expect(
      listsOf([test_('2025-03-03 07:08', 'fail'), test_('2025-03-05 07:00', 'pass')]).map(({ why }) => why),
    ).toEqual(['after_failure']);
  });
});
