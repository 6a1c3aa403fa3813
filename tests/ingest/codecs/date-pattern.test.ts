import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { datePattern } from '../../../pipeline/ingest/codecs/date-pattern.ts';
import { monthOfName } from '../../../pipeline/ingest/codecs/month-names.ts';

const wall = (pattern: string, text: string): string | undefined => {
  const read = datePattern(pattern)(text);
  return read && new Date(read.wallMs).toISOString().slice(0, 23) + (read.dayOnly ? ' day' : '');
};

describe('date pattern', () => {
  it.each([
    ['dd.MM.yyyy HH:mm', '03.02.2025 06:30', '2025-02-03T06:30:00.000'],
    ['dd.MM.yyyy HH:mm:ss', '03.02.2025 06:30', '2025-02-03T06:30:00.000'],
    ['dd.MM.yyyy HH:mm:ss', '03.02.2025', '2025-02-03T00:00:00.000 day'],
    ['MM/dd/yyyy hh:mm a', '02/03/2025 12:05 AM', '2025-02-03T00:05:00.000'],
    ['MM/dd/yyyy hh:mm a', '02/03/2025 12:05 p.m.', '2025-02-03T12:05:00.000'],
    ['MM/dd/yyyy hh:mm a', '02/03/2025', '2025-02-03T00:00:00.000 day'],
    ['M/d/yy H:mm', '2/3/25 6:30', '2025-02-03T06:30:00.000'],
    ['d MMM yyyy HH:mm', '3 Févr. 2025 06:30', '2025-02-03T06:30:00.000'],
    ['HH:mm dd.MM.yyyy', '06:30 03.02.2025', '2025-02-03T06:30:00.000'],
    ['HH:mm dd.MM.yyyy', '03.02.2025', '2025-02-03T00:00:00.000 day'],
    ["yyyyMMdd'T'HHmmss", '20250203T063015', '2025-02-03T06:30:15.000'],
    ['yyyyMMddHHmmss', '20250203063015', '2025-02-03T06:30:15.000'],
    ['EEE dd/MM/yyyy HH:mm', 'Mon 03/02/2025 06:30', '2025-02-03T06:30:00.000'],
    ['EEE, dd.MM.yyyy HH:mm', 'Montag, 03.02.2025 24:00', '2025-02-04T00:00:00.000'],
    ['EEE d MMM yyyy', 'lun. 3 févr. 2025', '2025-02-03T00:00:00.000 day'],
    ['EEE dd-MM-yyyy', 'mié 05-02-2025', '2025-02-05T00:00:00.000 day'],
    ['M/d/yyyy h:mm:ss a', '2/3/2025 6:30:05 Pm', '2025-02-03T18:30:05.000'],
    ['yyyy-MM-dd HH:mm:ss.SSS', '2025-02-03 06:30:15.25', '2025-02-03T06:30:15.250'],
    ['yyyy-MM-dd HH:mm:ss.SSS', '2025-02-03 06:30:15', '2025-02-03T06:30:15.000'],
    ["dd.MM.yyyy, HH:mm 'Uhr'", '03.02.2025, 06:30 Uhr', '2025-02-03T06:30:00.000'],
    ['dd.MM.yyyy HH:mm', '03.02.2025  24:00', '2025-02-04T00:00:00.000'],
    ['dd.MM.yyyy', '29.02.2024', '2024-02-29T00:00:00.000 day'],
  ])('%s reads "%s"', (pattern, text, expected) => {
    expect(wall(pattern, text)).toBe(expected);
  });

  it.each([
    ['EEE dd/MM/yyyy', 'Tue 03/02/2025'],
    ['EEE dd/MM/yyyy', 'Foo 03/02/2025'],
    ['dd.MM.yyyy HH:mm', '3.2.2025 6:30'],
    ['dd.MM.yyyy HH:mm', '29.02.2025 06:30'],
    ['dd.MM.yyyy HH:mm', '31.04.2025 06:30'],
    ['dd.MM.yyyy HH:mm', '03.13.2025 06:30'],
    ['dd.MM.yyyy HH:mm', '03.02.2025 24:10'],
    ['dd.MM.yyyy HH:mm', '03.02.2025 06:60'],
    ['dd.MM.yyyy HH:mm', '2025-02-03 06:30'],
    ['dd.MM.yyyy HH:mm', '03.02.2025 06:30 x'],
    ['d MMM yyyy', '3 Foo 2025'],
    ['MM/dd/yyyy hh:mm a', '02/03/2025 13:05 PM'],
    ['MM/dd/yyyy hh:mm a', '02/03/2025 00:05 AM'],
    ['yyyy-MM-dd HH:mm:ss', '2025-02-30 06:30:00'],
    ['yyyy-MM-dd HH:mm:ss', '02/03/2025'],
    ['yyyy-MM-dd HH:mm:ss', '2025-02-03 06:30:00 +15:00'],
    ['yyyy-MM-dd HH:mm:ss', '0001-02-03'],
  ])('%s refuses "%s"', (pattern, text) => {
    expect(datePattern(pattern)(text)).toBeUndefined();
  });

  // POSIX.1-2017, strptime, %y: 69 to 99 are 1969 to 1999, 00 to 68 are 2000 to 2068.
  it.each([
    ['68', 2068],
    ['69', 1969],
    ['00', 2000],
    ['99', 1999],
  ])('reads two-digit year %s as POSIX strptime does', (text, year) => {
    expect(wall('yy-MM-dd', `${text}-01-01`)?.slice(0, 4)).toBe(String(year));
  });

  it.each([
    'dd.MM HH:mm',
    'DD.MM.YYYY',
    'mm.dd.yyyy',
    'dd.MM.yyyy hh:mm',
    'dd.MM.yyyy HH:mm a',
    'yyyy-MM-dd mm:ss',
    'yyyy-MM-dd yyyy',
    'yyyy-MM-dd HH:mm HH:mm',
  ])('refuses the pattern %s with a message for the site', (pattern) => {
    expect(() => datePattern(pattern)).toThrow(
      expect.objectContaining({ code: 'date_pattern', message: expect.stringContaining(`"${pattern}"`) }),
    );
  });

  it('takes special characters of the pattern as themselves', () => {
    expect(wall('(yyyy) [MM] dd* HH+mm', '(2025) [02] 03* 06+30')).toBe('2025-02-03T06:30:00.000');
    expect(wall('(yyyy) [MM] dd* HH+mm', '(2025) [02] 0333306+30')).toBeUndefined();
  });
});

describe('the default pattern as ISO 8601', () => {
  const read = datePattern('yyyy-MM-dd HH:mm:ss');
  const instant = (text: string): number | undefined => {
    const time = read(text);
    return time && time.wallMs - (time.offsetMinutes ?? 0) * 60_000;
  };

  // Temporal's own parser is the outside reference for offsets and fractions.
  it.each([
    '2025-02-03T06:30:00Z',
    '2025-02-03T06:30:15.123+01:00',
    '2025-02-03T06:30:15,5-03:30',
    '2025-02-03T06:30+05',
    '2025-02-03T06:30:15.123456789-0800',
    '2024-02-29T23:59:59+14:00',
  ])('reads %s as Temporal does', (text) => {
    expect(instant(text)).toBe(Temporal.Instant.from(text.replace(',', '.')).epochMilliseconds);
  });

  it('reads blank or T, with or without seconds, or a date alone', () => {
    expect(instant('2025-02-03 06:30')).toBe(Date.UTC(2025, 1, 3, 6, 30));
    expect(instant('2025-02-03t06:30:05')).toBe(Date.UTC(2025, 1, 3, 6, 30, 5));
    expect(read('2025-02-03')).toEqual({
      wallMs: Date.UTC(2025, 1, 3),
      dayOnly: true,
      offsetMinutes: undefined,
    });
  });
});

describe('months by name', () => {
  // Reference: the abbreviated month names of Unicode CLDR as the runtime's ICU gives them.
  it.each(['en', 'en-GB', 'de', 'de-AT', 'fr', 'fr-CA', 'es', 'es-MX'])(
    'knows the abbreviations of %s',
    (locale) => {
      for (const style of ['short', 'long'] as const) {
        for (const context of [{}, { day: 'numeric' } as const]) {
          const format = new Intl.DateTimeFormat(locale, { month: style, timeZone: 'UTC', ...context });
          for (let month = 0; month < 12; month++) {
            const name = format
              .formatToParts(Date.UTC(2025, month, 15))
              .find(({ type }) => type === 'month')!.value;
            expect(monthOfName(name), `${locale} ${name}`).toBe(month + 1);
          }
        }
      }
    },
  );
});

describe('offset from UTC', () => {
  it.each([
    ['dd/MM/yyyy HH:mm XXX', '03/02/2025 06:30 +02:00', 120],
    ['dd/MM/yyyy HH:mmXXX', '03/02/2025 06:30Z', 0],
    ["yyyyMMdd'T'HHmmssXXX", '20250203T063000-0330', -210],
    ['MM/dd/yyyy hh:mm a XXX', '02/03/2025 06:30 am +05', 300],
  ])('%s reads "%s"', (pattern, text, offsetMinutes) => {
    expect(datePattern(pattern)(text)).toEqual({
      wallMs: Date.UTC(2025, 1, 3, 6, 30),
      dayOnly: false,
      offsetMinutes,
    });
  });

  it('must be told to be there, and needs an hour', () => {
    expect(datePattern('dd/MM/yyyy HH:mm')('03/02/2025 06:30 +02:00')).toBeUndefined();
    expect(datePattern('dd/MM/yyyy HH:mm XXX')('03/02/2025 06:30')).toBeUndefined();
    expect(() => datePattern('dd/MM/yyyy XXX')).toThrow('hour');
  });
});

// Names of days as the ICU library of the runtime writes them (Unicode CLDR), for a week of which 2 February 2025 is the Sunday.
describe('days of the week by name', () => {
  it.each(['en-GB', 'en-US', 'de', 'fr', 'es'])('%s', (locale) => {
    for (const weekday of ['long', 'short'] as const)
      for (let day = 2; day <= 8; day++) {
        const name = new Intl.DateTimeFormat(locale, { weekday, timeZone: 'UTC' }).format(
          Date.UTC(2025, 1, day),
        );
        expect(wall('EEE dd/MM/yyyy', `${name} 0${day}/02/2025`), name).toBe(
          `2025-02-0${day}T00:00:00.000 day`,
        );
      }
  });
});

describe('several patterns', () => {
  it.each([
    ['yyyy-MM-dd | dd.MM.yyyy', '2025-02-03', '2025-02-03T00:00:00.000 day'],
    ['yyyy-MM-dd | dd.MM.yyyy', '03.02.2025', '2025-02-03T00:00:00.000 day'],
    ['dd/MM/yyyy | MM/dd/yyyy', '13/02/2025', '2025-02-13T00:00:00.000 day'],
    ['dd/MM/yyyy | MM/dd/yyyy', '02/02/2025', '2025-02-02T00:00:00.000 day'],
    ['dd/MM/yyyy | MM/dd/yyyy', '03/02/2025', undefined],
  ])('%s: "%s"', (pattern, text, expected) => expect(wall(pattern, text)).toBe(expected));
});
