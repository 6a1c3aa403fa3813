import { describe, expect, it } from 'vitest';
import { settingsInForce } from '../../../pipeline/findings/lists/settings.ts';
import { unitEvents } from '../../../pipeline/findings/lists/unit-events.ts';
import { recordsUntil } from '../../../pipeline/findings/record-quality/records-until.ts';
import { parseDay } from '../../../pipeline/site/day.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { at, cleaning, ordinaryDay, recordsOf, service, siteOf } from '../../transform/build.ts';

const UNTIL = parseDay('2025-04-01')!;
const day = (date: string, result: 'pass' | 'fail' = 'pass') => ordinaryDay(date, result);
const days = [day('2025-03-03'), day('2025-03-04', 'fail'), day('2025-03-05'), day('2025-03-06')];
const records = recordsOf({
  cycles: days.flatMap((of) => of.cycles),
  air_removal_tests: days.flatMap((of) => of.tests),
  cleanings: [
    cleaning('chamber', '2025-03-03 18:00'),
    // A cycle runs from 08:00 to 08:45.
    cleaning('chamber', '2025-03-05 08:30', { start: at('2025-03-05 08:10') }),
    cleaning('professional', '2025-03-06 12:00', { time_mark: 'day' }),
    cleaning('professional', '2025-03-20 12:00'),
    cleaning('drain_strainer', '2025-03-03 05:50'),
  ],
  service: [
    service('professional_cleaning', '2025-03-20 08:00', '2025-03-20 15:00'),
    service('repair', '2025-03-21 08:00', '2025-03-22 15:00', { major: true }),
  ],
});

describe('events of a unit', () => {
  it('are its chamber cleanings, failed days and service, each once and in order', () => {
    const [history] = transform(siteOf(), records, UNTIL).histories;
    expect(
      unitEvents(history!, false).map(({ date, to, what, detail, time }) => [date, to, what, detail, time]),
    ).toEqual([
      ['2025-03-03', null, 'chamber_cleaning', 'counts', '2025-03-03 18:00'],
      ['2025-03-04', null, 'failed_test', null, '2025-03-04 07:25'],
      ['2025-03-05', null, 'chamber_cleaning', 'contradicted', '2025-03-05 08:30'],
      ['2025-03-06', null, 'professional_cleaning', null, null],
      // The service record of that day is kept, not the one of the cleaning log.
      ['2025-03-20', '2025-03-20', 'professional_cleaning', null, '2025-03-20 08:00'],
      ['2025-03-21', '2025-03-22', 'repair', 'major', '2025-03-21 08:00'],
    ]);
  });

  it('count contradicted cleanings where the site says so', () => {
    const [history] = transform(siteOf(), records, UNTIL).histories;
    const details = unitEvents(history!, true).filter((of) => of.what === 'chamber_cleaning');
    expect(details.map((of) => of.detail)).toEqual(['counts', 'counts']);
  });
});

describe('records up to a day', () => {
  it('leave out what came later, by the operating day of the unit', () => {
    const kept = recordsUntil(siteOf(), records, parseDay('2025-03-05')!);
    expect(kept.air_removal_tests).toHaveLength(2);
    expect(kept.service).toEqual([]);
    // 01:30 belongs to the operating day before, which begins at 04:00.
    const late = recordsOf({ cleanings: [cleaning('chamber', '2025-03-05 01:30')] });
    expect(recordsUntil(siteOf(), late, parseDay('2025-03-05')!).cleanings).toHaveLength(1);
  });
});

describe('settings in force', () => {
  it('hold those of the case for an interval, and say what was left out', () => {
    const settings = new Map(
      settingsInForce(siteOf('interval: { longest_by_instructions: 42, costs: { labour_hour: 40 } }'), [
        'U1',
      ]).map((row) => [row.name, row]),
    );
    expect(settings.get('interval.longest_by_instructions')).toMatchObject({
      value: '42',
      default: 'left out',
    });
    expect(settings.get('interval.costs.labour_hour')).toMatchObject({ value: '40', default: 'left out' });
    expect(settings.get('interval.costs.abort')).toMatchObject({ value: 'left out', default: 'left out' });
    expect(settings.get('interval.cleaning.cool_down_hours')).toMatchObject({ value: '4.5', default: '4.5' });
    expect(settings.get('interval.water.condensate_points')).toMatchObject({ value: '["condensate"]' });
    expect(settings.get('interval.costs.labour_hour')?.description).toBe(
      'An hour of labour, in the currency',
    );
    for (const row of settings.values()) {
      expect(row.value).not.toMatch(/undefined|\[object/);
      expect(row.description, row.name).not.toBe('');
    }
  });
});
