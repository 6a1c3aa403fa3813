import { describe, expect, it } from 'vitest';
import { countedSince, reviewPeriod, type Span } from '../../pipeline/findings/period.ts';
import { parseDay } from '../../pipeline/site/day.ts';

const day = (text: string): number => parseDay(text)!;
const span = (first: string, last: string, ...lone: string[]): NonNullable<Span> => ({
  first: day(first),
  last: day(last),
  lone: lone.map(day),
});

describe('the period of a review', () => {
  it('is the last month of which the records hold the last day, else the one before', () => {
    expect(reviewPeriod(undefined, span('2026-01-05', '2026-03-31')).month).toBe('2026-03');
    expect(reviewPeriod(undefined, span('2026-01-05', '2026-03-30')).month).toBe('2026-02');
    expect(reviewPeriod(undefined, span('2026-03-05', '2026-03-30')).month).toBe('2026-03');
  });

  it('is not moved by lone records; those before it are left out', () => {
    const both = span('2026-01-05', '2026-03-31', '2014-02-01', '2016-05-10', '2036-05-10');
    expect(reviewPeriod(undefined, both)).toEqual({
      month: '2026-03',
      from: day('2026-03-01'),
      until: day('2026-04-01'),
      since: day('2016-05-11'),
    });
    expect(reviewPeriod(undefined, span('2026-01-05', '2026-03-31', '2036-05-10'))).not.toHaveProperty(
      'since',
    );
    expect(countedSince(both)).toEqual({ since: day('2016-05-11') });
  });

  it('is the month asked for, also one of a lone record, which counts then', () => {
    const both = span('2026-01-05', '2026-03-31', '2014-02-01', '2016-05-10', '2036-05-10');
    expect(reviewPeriod('2026-01', both)).toMatchObject({
      from: day('2026-01-01'),
      since: day('2016-05-11'),
    });
    expect(reviewPeriod('2016-05', both)).toMatchObject({
      from: day('2016-05-01'),
      since: day('2016-05-01'),
    });
    expect(reviewPeriod('2036-05', both)).toMatchObject({
      until: day('2036-06-01'),
      since: day('2016-05-11'),
    });
    for (const month of ['2016-06', '2025-12', '2026-04', '2036-04', '2036-06'])
      expect(() => reviewPeriod(month, both)).toThrow(
        `--month must be a month with cycles or tests, found "${month}"; the records run from 2026-01-05 to 2026-03-31`,
      );
  });
});
