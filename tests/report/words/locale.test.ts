import { describe, expect, it } from 'vitest';
import { deLocale } from '../../../pipeline/report/words/locale/de.ts';
import { enLocale } from '../../../pipeline/report/words/locale/en.ts';
import { formatOf } from '../../../pipeline/report/words/locale/format.ts';

/**
 * Checked against CLDR as Node's Intl carries it: British English, as it sets the day before the month, and German. Where our tables differ on purpose, it is said.
 */
const cases = [
  { locale: enLocale, tag: 'en-GB' },
  { locale: deLocale, tag: 'de-DE' },
];

describe.each(cases)('locale $tag against CLDR', ({ locale, tag }) => {
  const format = formatOf(locale);
  const months = Array.from({ length: 12 }, (_, index) => `2026-${String(index + 1).padStart(2, '0')}-05`);
  const intl = (options: Intl.DateTimeFormatOptions) => (date: string) =>
    new Intl.DateTimeFormat(tag, { timeZone: 'UTC', ...options }).format(new Date(`${date}T00:00:00Z`));

  it('names months and days', () => {
    expect(months.map(format.monthName)).toEqual(months.map(intl({ month: 'long' })));
    // 5 January 2026 was a Monday.
    const week = [5, 6, 7, 8, 9, 10, 11].map((day) => `2026-01-${String(day).padStart(2, '0')}`);
    expect([1, 2, 3, 4, 5, 6, 7].map(format.weekday)).toEqual(week.map(intl({ weekday: 'long' })));
    expect([1, 2, 3, 4, 5, 6, 7].map(format.weekdayShort)).toEqual(week.map(intl({ weekday: 'short' })));
  });

  it('writes dates', () => {
    expect(months.map((month) => format.date(month).replace('\u00a0', ' '))).toEqual(
      months.map(intl({ day: 'numeric', month: 'long', year: 'numeric' })),
    );
  });

  it('writes numbers', () => {
    const values = [0, 7, 999, 1000, 12_345.678, 1_234_567.05, 0.25];
    for (const digits of [0, 1, 2]) {
      const number = new Intl.NumberFormat(tag, {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
      });
      expect(values.map((value) => format.fixed(value, digits))).toEqual(
        values.map((value) => number.format(value)),
      );
    }
  });

  it('writes percent', () => {
    const number = new Intl.NumberFormat(tag, { style: 'percent', maximumFractionDigits: 1 });
    expect([0.033, 0.42, 1].map(format.percent)).toEqual(
      [0.033, 0.42, 1].map((share) => number.format(share)),
    );
    expect([0.9, 0.95, 0.975].map(format.level)).toEqual(
      [0.9, 0.95, 0.975].map((level) => number.format(level)),
    );
  });

  it('writes lists', () => {
    // German, and English with no comma before the last, as the style of British English has it.
    const list = new Intl.ListFormat(tag, { type: 'conjunction' });
    for (const items of [['a'], ['a', 'b'], ['a', 'b', 'c', 'd']])
      expect(format.list(items)).toBe(list.format(items));
  });
});

describe('short months', () => {
  it('are those that CLDR sets in a date, without the point and "Sep" for "Sept"', () => {
    const month = (tag: string, index: number) =>
      new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short', timeZone: 'UTC' })
        .formatToParts(new Date(Date.UTC(2026, index, 5)))
        .find((part) => part.type === 'month')!
        .value.replace('.', '')
        .replace('Sept', 'Sep');
    for (let index = 0; index < 12; index++) {
      expect(enLocale.monthsShort[index]).toBe(month('en-GB', index));
      expect(deLocale.monthsShort[index]).toBe(month('de-DE', index));
    }
  });
});

describe('German text of numbers', () => {
  const format = formatOf(deLocale);
  it('has bounds, spans and figures', () => {
    expect(format.pValue(0.0004)).toBe('unter 0,001');
    expect(format.percent(0.0003)).toBe('unter 0,1\u00a0%');
    expect(format.span('2026-03-01', '2026-03-31')).toBe('1. bis 31.\u00a0März 2026');
    expect(format.span('2025-04-01', '2026-03-31')).toBe('1.\u00a0April 2025 bis 31.\u00a0März 2026');
    expect(format.time('2026-03-03 06:30')).toBe('3.\u00a0März 2026, 06:30');
    expect(format.bytes(2_345_678)).toBe('2,3 MB');
  });
  it('never has powers of ten', () => {
    expect([0.0000123456, 1_234_567, -0.5, 0, 16.96].map((value) => format.figures(value))).toEqual([
      '0,0000123',
      '1.230.000',
      '-0,5',
      '0',
      '17',
    ]);
    expect([1.25, -1.25, 0].map((value) => format.change(value, 2))).toEqual(['+1,3', '-1,3', '0']);
  });
});
