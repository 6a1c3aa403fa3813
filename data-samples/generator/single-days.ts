import { dayNumber } from './clock.ts';

/** Single days on which something rare happens, as "unit day". */
const on = (unit: string, ...days: string[]): string[] => days.map((day) => `${unit} ${dayNumber(day)}`);

/** Two tests that were not in order, each followed by a good one. */
export const INVALID_TESTS = new Set([...on('Q1', '2025-10-14'), ...on('T4', '2026-06-09')]);

/** Passes whose heat-up took about half as long again. */
export const LONG_HEAT_UP = new Set([
  ...on('Q4', '2026-08-27', '2026-09-09', '2026-09-22'),
  ...on('Q6', '2025-09-03', '2026-02-18', '2026-09-15'),
]);

/** The night on which clocks went back while Q3 worked. */
export const REPEATED_HOUR = on('Q3', '2025-11-01')[0]!;
