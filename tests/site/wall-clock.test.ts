import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { formatDay } from '../../pipeline/site/day.ts';
import { isZone, wallClock } from '../../pipeline/site/wall-clock.ts';

const wall = (text: string): number => Date.parse(`${text}Z`);

describe('wall clock', () => {
  const berlin = wallClock('Europe/Berlin', '04:00');
  it('reads a wall time that occurs twice both ways, and moves one that never occurred on', () => {
    // Clocks in Berlin: back on 26 October 2025 at 03:00, forward on 30 March 2025 at 02:00 (time zone database).
    const twice = berlin.instantOf(wall('2025-10-26T02:30'));
    expect(twice).toEqual({
      at: Date.parse('2025-10-26T00:30Z'),
      mark: 'ambiguous',
      later: Date.parse('2025-10-26T01:30Z'),
    });
    expect(berlin.instantOf(wall('2025-03-30T02:30'))).toEqual({
      at: Date.parse('2025-03-30T01:30Z'),
      mark: 'shifted',
    });
  });

  it('names the operating day by the date on which it opened', () => {
    expect(formatDay(berlin.operatingDay(Date.parse('2025-06-02T01:59Z')))).toBe('2025-06-01');
    expect(formatDay(berlin.operatingDay(Date.parse('2025-06-02T02:00Z')))).toBe('2025-06-02');
    expect(berlin.opensAt(berlin.operatingDay(Date.parse('2025-06-02T02:00Z')))).toBe(
      Date.parse('2025-06-02T02:00Z'),
    );
  });

  it.each(['America/St_Johns', 'Australia/Lord_Howe', 'Europe/Lisbon', 'Asia/Kolkata', 'Pacific/Apia'])(
    'agrees with Temporal in %s, to the instant and back',
    (zone) => {
      const clock = wallClock(zone, '04:00');
      const minutes = fc.integer({ min: 0, max: 40 * 365 * 24 * 60 });
      fc.assert(
        fc.property(minutes, (minute) => {
          const at = Date.UTC(1990, 0, 1) + minute * 60_000;
          const zoned = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);
          const plain = zoned.toPlainDateTime();
          expect(clock.wallOf(at)).toBe(wall(plain.toString({ smallestUnit: 'minute' })));
          const read = clock.instantOf(clock.wallOf(at));
          expect(read.at).toBe(plain.toZonedDateTime(zone, { disambiguation: 'earlier' }).epochMilliseconds);
          expect([read.at, read.later]).toContain(at);
        }),
        { seed: 7, numRuns: 400 },
      );
    },
  );

  it('knows a zone from a slip', () => {
    expect(isZone('Europe/Berlin')).toBe(true);
    expect(isZone('Europe/Berlyn')).toBe(false);
  });
});
