import { describe, expect, it } from 'vitest';
import { format } from '../../../pipeline/report/words/en/format.ts';

describe('format', () => {
  it('writes dates and spans', () => {
    expect(format.date('2026-03-03')).toBe('3 March 2026');
    expect(format.time('2026-03-03 06:30')).toBe('3 March 2026, 06:30');
    expect(format.span('2026-03-01', '2026-03-31')).toBe('1 to 31 March 2026');
    expect(format.span('2025-04-01', '2026-03-31')).toBe('1 April 2025 to 31 March 2026');
    expect(format.month('2026-12')).toBe('December 2026');
  });

  it('writes shares with one decimal under ten per cent, and never 0% for a share above 0', () => {
    expect([0, 0.0003, 0.033, 0.0994, 0.0996, 0.42, 0.9996, 1].map(format.percent)).toEqual([
      '0%',
      'under 0.1%',
      '3.3%',
      '9.9%',
      '10%',
      '42%',
      '100%',
      '100%',
    ]);
  });

  it('writes ratios with two figures', () => {
    expect([0, 0.004, 0.047, 0.46, 0.996, 1.04, 5.43, 9.96, 39.2, 356, 12_345].map(format.ratio)).toEqual([
      '0',
      '0.004',
      '0.047',
      '0.46',
      '1.0',
      '1.0',
      '5.4',
      '10',
      '39',
      '356',
      '12,345',
    ]);
  });

  it('writes p as a bound where it is small', () => {
    expect([0.0001, 0.0104, 0.0996, 0.1, 0.8, 1].map(format.pValue)).toEqual([
      'under 0.001',
      '0.010',
      '0.100',
      '0.10',
      '0.80',
      '1.00',
    ]);
  });

  it('writes lists, counts and sizes', () => {
    expect(format.list(['a', 'b', 'c'])).toBe('a, b and c');
    expect(format.list([])).toBe('');
    expect(format.count(1, 'day', 'days')).toBe('1 day');
    expect(format.count(1200, 'day', 'days')).toBe('1,200 days');
    expect([999, 1000, 45_400, 999_600, 2_345_678].map(format.bytes)).toEqual([
      '999 bytes',
      '1 kB',
      '45 kB',
      '1.0 MB',
      '2.3 MB',
    ]);
  });
});
