import { expect, test } from 'vitest';
import { at, dayNumber, isoDay, operatingDay, wall, weekday } from '../../data-samples/generator/clock.ts';

// Offsets by the IANA time zone database: Newfoundland UTC-03:30, in summer UTC-02:30; Nova Scotia UTC-04:00, in summer UTC-03:00.
const ZONE = 'America/St_Johns';

test.each([
  ['America/St_Johns', '2025-07-01', 6 * 60, '2025-07-01T08:30:00.000Z'],
  ['America/St_Johns', '2026-01-15', 6 * 60, '2026-01-15T09:30:00.000Z'],
  ['America/Halifax', '2025-07-01', 6 * 60, '2025-07-01T09:00:00.000Z'],
  ['America/St_Johns', '2025-11-01', 27 * 60, '2025-11-02T06:30:00.000Z'], // 03:00 on the next day, clocks back since
])('%s %s, minute %s', (zone, day, minutes, instant) => {
  expect(new Date(at(zone, dayNumber(day), minutes)).toISOString()).toBe(instant);
});

test('the repeated hour shows the same wall time twice', () => {
  const first = Date.parse('2025-11-02T04:00:00Z');
  expect(wall(ZONE, first).toISOString().slice(11, 16)).toBe('01:30');
  expect(
    wall(ZONE, first + 3_600_000)
      .toISOString()
      .slice(11, 16),
  ).toBe('01:30');
});

test('the operating day opens at 04:00', () => {
  const day = dayNumber('2025-06-10');
  expect(operatingDay(ZONE, at(ZONE, day, 239))).toBe(day - 1);
  expect(operatingDay(ZONE, at(ZONE, day, 240))).toBe(day);
});

test('days and weekdays', () => {
  expect(isoDay(dayNumber('2026-02-28') + 1)).toBe('2026-03-01');
  expect(weekday(dayNumber('2026-09-30'))).toBe(3); // A Wednesday.
});
