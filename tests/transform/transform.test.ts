// Over 300 lines: one record followed through all steps of the stage.
import { describe, expect, it } from 'vitest';
import { formatDay, parseDay } from '../../pipeline/site/day.ts';
import type { Records } from '../../pipeline/site/records.ts';
import { lookBacks } from '../../pipeline/transform/look-back.ts';
import { requalifications } from '../../pipeline/transform/service/requalification.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import { at, cleaning, cycle, ordinaryDay, recordsOf, service, siteOf, test_ } from './build.ts';

const UNTIL = parseDay('2025-04-01')!;
const dates = (from: string, count: number) =>
  Array.from({ length: count }, (_, index) => formatDay(parseDay(from)! + index));
const daysOf = (list: string[], results: Record<string, 'pass' | 'fail'> = {}) => {
  const days = list.map((date) => ordinaryDay(date, results[date] ?? 'pass'));
  return { cycles: days.flatMap((day) => day.cycles), air_removal_tests: days.flatMap((day) => day.tests) };
};
const run = (some: Partial<Records>, yaml = '') => transform(siteOf(yaml), recordsOf(some), UNTIL);
const CHAMBER =
  'cleaning: [{ task: chamber, every: 7, unrecorded_means: missed }, { task: drain_strainer, every: 1, counted_in: days_of_use, unrecorded_means: missed }]';

describe('lone records', () => {
  it('that lie before the first day that counts make no day, and are none of those after the period', () => {
    const lone = {
      cycles: [cycle('2015-03-03 10:00')],
      air_removal_tests: [test_('2015-03-03 06:00', 'pass')],
    };
    const own = daysOf(dates('2025-03-03', 7));
    const cleanings = [cleaning('chamber', '2015-03-02 10:00')];
    const records = recordsOf({
      cycles: [...lone.cycles, ...own.cycles, cycle('2025-04-02 10:00')],
      air_removal_tests: [...lone.air_removal_tests, ...own.air_removal_tests],
      cleanings,
    });
    const { panel, histories, later_records } = transform(
      siteOf(CHAMBER),
      records,
      UNTIL,
      parseDay('2015-03-04')!,
    );
    expect(panel.map((row) => row.date)).toEqual(dates('2025-03-03', 7));
    expect(later_records).toBe(1);
    expect(histories[0]!.cleanings).toHaveLength(1);
    expect(transform(siteOf(CHAMBER), records, UNTIL).panel).toHaveLength(8);
  });
});

describe('cycles', () => {
  it('puts a cycle after midnight on the operating day that opened before', () => {
    const { histories } = run({ cycles: [cycle('2025-03-04 01:30')] });
    expect(formatDay(histories[0]!.cycles[0]!.day)).toBe('2025-03-03');
  });

  const early = { outcome: 'aborted', minutes: 2, abort_text: 'Stopped by operator' } as const;
  it('calls a short operator stop after a chamber cleaning a purge, and the same with no cleaning near an early stop', () => {
    const { histories, panel } = run({
      cycles: [
        cycle('2025-03-03 10:00', early),
        cycle('2025-03-03 12:00'),
        cycle('2025-03-05 10:00', early),
        cycle('2025-03-05 12:00'),
      ],
      cleanings: [cleaning('chamber', '2025-03-03 09:30')],
    });
    expect(histories[0]!.cycles.map((of) => of.standing)).toEqual([
      'purge',
      'completed',
      'early_stop',
      'completed',
    ]);
    expect(panel.map((day) => [day.purges, day.early_stops, day.production_cycles])).toEqual([
      [1, 0, 1],
      [0, 1, 1],
    ]);
  });

  it('is no purge with an alarm, five minutes on, after exposure began, or after the next completed cycle and four hours', () => {
    const { histories } = run({
      cycles: [
        cycle('2025-03-03 10:00', { ...early, abort_text: 'Steam supply low' }),
        cycle('2025-03-03 10:20', { ...early, minutes: 5 }),
        cycle('2025-03-03 10:40', { ...early, exposure_s: 20 }),
        cycle('2025-03-03 11:00'),
        cycle('2025-03-03 14:00', early),
      ],
      cleanings: [cleaning('chamber', '2025-03-03 09:30')],
    });
    expect(histories[0]!.cycles.map((of) => of.standing)).toEqual([
      'abort',
      'abort',
      'abort',
      'completed',
      'early_stop',
    ]);
  });

  it('is a purge until the next warm-up, for as long as the operating day of the record lasts', () => {
    // The operating day opens at 04:00 local, so that the second stop is of the day of the record and the third of the next; the last comes after a warm-up.
    const { histories } = run({
      cycles: [
        cycle('2025-03-03 15:00', early),
        cycle('2025-03-04 03:30', early),
        cycle('2025-03-04 05:30', early),
        cycle('2025-03-10 10:00', early),
        cycle('2025-03-11 06:00', { kind: 'warm_up' }),
        cycle('2025-03-12 13:00', { kind: 'warm_up', minutes: 30 }),
        cycle('2025-03-12 14:00', early),
      ],
      cleanings: [cleaning('chamber', '2025-03-03 09:30'), cleaning('chamber', '2025-03-12 08:30')],
    });
    expect(histories[0]!.cycles.map((of) => of.standing)).toEqual([
      'purge',
      'purge',
      'early_stop',
      'early_stop',
      'completed',
      'completed',
      'early_stop',
    ]);
  });

  it('classes aborts by the table, the site’s rows first, and lists text that no row matches', () => {
    const { histories } = run(
      {
        cycles: ['Evacuation too slow', 'Door open', 'xyzzy'].map((abort_text, index) =>
          cycle(`2025-03-03 1${index}:00`, { outcome: 'aborted', abort_text }),
        ),
      },
      'rules: { abort_texts: [{ contains: door, class: electronics }] }',
    );
    expect(histories[0]!.cycles.map((of) => of.abort_class)).toEqual([
      'slow_evacuation',
      'electronics',
      'unclassified',
    ]);
  });
});

describe('air-removal tests', () => {
  it('counts the first valid test of the day; retest, invalid and qualification stand beside it', () => {
    const { histories } = run({
      cycles: [cycle('2025-03-04 07:00', { kind: 'qualification', cycle_number: 9 })],
      air_removal_tests: [
        test_('2025-03-03 07:00', 'invalid'),
        test_('2025-03-03 07:40', 'fail'),
        test_('2025-03-03 08:20', 'pass'),
        test_('2025-03-04 07:30', 'pass', { cycle_number: 9 }),
      ],
    });
    expect(histories[0]!.tests.map((of) => of.role)).toEqual([
      'invalid',
      'day_result',
      'retest',
      'qualification',
    ]);
  });

  it('counts failures of one episode once: at risk are its first day and the days after the passing day that ends it', () => {
    const list = dates('2025-03-03', 5);
    const { panel, histories } = run(daysOf(list, { '2025-03-04': 'fail', '2025-03-05': 'fail' }));
    expect(histories[0]!.episodes).toEqual([
      { from: parseDay('2025-03-04'), to: parseDay('2025-03-06'), failed_days: 2 },
    ]);
    expect(panel.map((day) => [day.date, day.failed, day.inside_episode, day.at_risk])).toEqual([
      ['2025-03-03', 0, 0, 1],
      ['2025-03-04', 1, 0, 1],
      ['2025-03-05', 1, 1, 0],
      ['2025-03-06', 0, 1, 0],
      ['2025-03-07', 0, 0, 1],
    ]);
  });

  it('says missing, late and in time by the first production cycle', () => {
    const late = ordinaryDay('2025-03-04');
    late.cycles[1]!.start = at('2025-03-04 08:10');
    late.cycles[1]!.end = at('2025-03-04 08:35');
    late.tests[0]!.time = at('2025-03-04 08:40');
    const { panel } = run({
      cycles: [...ordinaryDay('2025-03-03').cycles, ...late.cycles, cycle('2025-03-05 09:00')],
      air_removal_tests: [...ordinaryDay('2025-03-03').tests, ...late.tests],
    });
    expect(panel.map((day) => day.test_timing)).toEqual(['in_time', 'late', 'missing']);
  });

  it('lists the production cycles since the last passing test after a failure', () => {
    const { histories } = run(daysOf(dates('2025-03-03', 3), { '2025-03-05': 'fail' }));
    const [list, ...more] = lookBacks(histories[0]!, parseDay('2025-03-01')!, UNTIL);
    expect(more).toEqual([]);
    expect(list!.last_pass_at).toBe(at('2025-03-04 07:25'));
    expect(list!.cycles.map((of) => of.start)).toEqual([at('2025-03-04 08:00'), at('2025-03-04 09:00')]);
  });
});

describe('service', () => {
  it('begins an era on the day a repair ended; a day is out of service by its first cycle, so a failure before the repair counts', () => {
    const { panel } = run({
      ...daysOf(dates('2025-03-03', 5), { '2025-03-04': 'fail' }),
      service: [service('repair', '2025-03-04 10:00', '2025-03-06 12:00')],
    });
    expect(panel.map((day) => [day.era, day.out_of_service, day.failed, day.at_risk])).toEqual([
      [0, 0, 0, 1],
      [0, 0, 1, 1],
      [0, 1, 0, 0],
      [1, 1, 0, 0],
      [1, 0, 0, 1],
    ]);
  });

  it.each([
    [3, 'complete'],
    [2, 'incomplete'],
  ])('finds %i passing tests before production after a major repair %s', (passes, state) => {
    const tests = Array.from({ length: passes }, (_, index) => test_(`2025-03-06 1${index}:00`, 'pass'));
    const { histories } = run({
      cycles: [cycle('2025-03-06 15:00')],
      air_removal_tests: tests,
      service: [service('repair', '2025-03-04 10:00', '2025-03-06 09:00', { major: true })],
    });
    const [found] = requalifications(histories[0]!, histories[0]!.cycles, histories[0]!.tests, 3);
    expect(found).toMatchObject({ passes_in_a_row: passes, state });
  });
});

describe('cleaning', () => {
  it('dates the strainer by the first cycle: done, done late, missed by the site’s rule, missed by its record', () => {
    const { histories } = run(
      {
        ...daysOf(dates('2025-03-03', 4)),
        cleanings: [
          cleaning('drain_strainer', '2025-03-03 05:50'),
          cleaning('drain_strainer', '2025-03-04 06:30'),
          cleaning('drain_strainer', '2025-03-06 05:00', { state: 'missed' }),
        ],
      },
      CHAMBER,
    );
    const due = histories[0]!.cleaning.due.filter((of) => of.task === 'drain_strainer');
    expect(due.map((of) => of.state)).toEqual(['done', 'done_late', 'missed', 'missed']);
  });

  it('never takes a blank as missed without the site’s rule', () => {
    const { histories, panel } = run(daysOf(dates('2025-03-03', 8)));
    expect(new Set(histories[0]!.cleaning.due.map((of) => of.state))).toEqual(new Set(['not_recorded']));
    expect(panel.every((day) => day.strainers_missed === null && day.chamber_overdue === null)).toBe(true);
  });

  it('follows a chamber interval: overdue from the day after it fell due, until the first cycle after the work', () => {
    const { histories, panel } = run(
      {
        ...daysOf(dates('2025-03-03', 21)),
        cleanings: [
          cleaning('chamber', '2025-03-04 05:00', { start: at('2025-03-04 04:10') }),
          cleaning('chamber', '2025-03-14 05:00'),
        ],
      },
      CHAMBER,
    );
    const days = panel.map((day) => `${day.date.slice(8)}:${day.chamber_overdue}/${day.chamber_clock_days}`);
    expect(days.slice(0, 13)).toEqual([
      '03:null/null',
      '04:0/0',
      '05:0/1',
      '06:0/2',
      '07:0/3',
      '08:0/4',
      '09:0/5',
      '10:0/6',
      '11:0/7',
      '12:1/8',
      '13:1/9',
      '14:0/0',
      '15:0/1',
    ]);
    const due = histories[0]!.cleaning.due.filter((of) => of.task === 'chamber');
    expect(due.map((of) => [formatDay(of.due), of.state, of.days_late])).toEqual([
      ['2025-03-11', 'done_late', 3],
      ['2025-03-21', 'missed', null],
    ]);
  });

  it('supports a chamber cleaning, or says running, hot, no return, or that a date can’t be judged', () => {
    const { histories } = run({
      ...daysOf(dates('2025-03-03', 5)),
      cleanings: [
        cleaning('chamber', '2025-03-04 05:30', { minutes: 60 }),
        cleaning('chamber', '2025-03-04 09:20', { minutes: 30 }),
        cleaning('chamber', '2025-03-05 11:00', { minutes: 30 }),
        cleaning('chamber', '2025-03-06 07:30', { minutes: 1 }),
        cleaning('chamber', '2025-03-07 04:00', { time_mark: 'day' }),
      ],
    });
    const words = histories[0]!.cleanings.map(({ support }) =>
      Object.entries(support!)
        .filter(([, value]) => value === true)
        .map(([name]) => name)
        .join(' '),
    );
    expect(words).toEqual(['judged', 'judged running', 'judged hot', 'judged hot no_return', '']);
  });

  it('counts contradicted records as done only in the other reading', () => {
    const { panel } = run(
      {
        ...daysOf(dates('2025-03-03', 20)),
        cleanings: [
          cleaning('chamber', '2025-03-03 05:30'),
          cleaning('chamber', '2025-03-10 10:30', { minutes: 60 }),
        ],
      },
      CHAMBER,
    );
    const on = panel.find((day) => day.date === '2025-03-12')!;
    expect([on.chamber_overdue, on.chamber_overdue_all_records]).toEqual([1, 0]);
  });

  it('calls a cleaning within two days after a failure reactive', () => {
    const { histories } = run({
      ...daysOf(dates('2025-03-03', 8), { '2025-03-04': 'fail' }),
      cleanings: [cleaning('chamber', '2025-03-06 05:00'), cleaning('chamber', '2025-03-08 05:00')],
    });
    expect(histories[0]!.cleanings.map((of) => of.reactive)).toEqual([true, false]);
  });

  it('makes a drain flush due each week on liquids units, and after each chamber cleaning', () => {
    const { histories } = transform(
      siteOf(
        'units: [{ id: U1, liquids: true }]\ncleaning: [{ task: drain_flush, every: 7, grace_days: 1, unrecorded_means: missed }]',
      ),
      recordsOf({
        ...daysOf(dates('2025-03-03', 22)),
        cleanings: [
          cleaning('drain_flush', '2025-03-10 15:00'),
          cleaning('chamber', '2025-03-12 05:00'),
          cleaning('drain_flush', '2025-03-12 05:30'),
        ],
      }),
      UNTIL,
    );
    const due = histories[0]!.cleaning.due.filter((of) => of.task === 'drain_flush');
    expect(due.map((of) => [formatDay(of.due), of.state])).toEqual([
      ['2025-03-10', 'done'],
      ['2025-03-12', 'done'],
      ['2025-03-19', 'missed'],
    ]);
  });
});

describe('the panel', () => {
  it('counts what its joins matched and is unmoved by the order of the records', () => {
    const some = daysOf(dates('2025-03-03', 10), { '2025-03-06': 'fail' });
    some.air_removal_tests.splice(4, 1);
    const forward = run(some, CHAMBER);
    const backward = run(
      { cycles: some.cycles.toReversed(), air_removal_tests: some.air_removal_tests.toReversed() },
      CHAMBER,
    );
    expect(backward.panel).toEqual(forward.panel);
    expect(forward.panel.map((day) => day.date)).toEqual(dates('2025-03-03', 10));
    expect(forward.joins.map((join) => [join.left, join.matched])).toEqual([
      [10, 10],
      [10, 9],
      [10, 10],
    ]);
  });
});

describe('the cleaning log', () => {
  it('says nothing where it was not kept: a gap is not recorded, whatever the rule for blanks', () => {
    const list = dates('2025-03-03', 29);
    const kept = list.filter((date) => date < '2025-03-08' || date > '2025-03-24');
    const { histories, panel } = run(
      {
        ...daysOf(list),
        cleanings: kept
          .filter((date) => date !== '2025-03-05')
          .map((date) => cleaning('drain_strainer', `${date} 05:50`)),
      },
      CHAMBER,
    );
    const states = histories[0]!.cleaning.due
      .filter((of) => of.task === 'drain_strainer')
      .map((of) => `${formatDay(of.due).slice(8)} ${of.state}`);
    expect(states.slice(0, 6)).toEqual([
      '03 done',
      '04 done',
      '05 missed',
      '06 done',
      '07 done',
      '08 not_recorded',
    ]);
    expect(states.slice(-8, -5)).toEqual(['24 not_recorded', '25 done', '26 done']);
    expect(panel.find((day) => day.date === '2025-03-12')!.strainers_missed).toBeNull();
    expect(panel.find((day) => day.date === '2025-03-31')!.strainers_missed).toBe(0);
  });
});
