import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { formatDay } from '../../pipeline/site/day.ts';
import type { Site } from '../../pipeline/site/site.ts';
import type { Transformed } from '../../pipeline/transform/transform.ts';
import { folderOf, readFleet } from './read-fleet.ts';

/**
 * What fell due of drain flushes and what became of it, and how many were missed in a row when each day began, against R 4.2.2, which walks through the same exports day by day:
 * see flushes.R. Nothing is left to tolerance.
 */
const FLEET = 'flushes';

/** Rows of what R wrote, after its header. */
const linesOf = (file: string): string[] =>
  readFileSync(new URL(file, folderOf(FLEET)), 'utf8')
    .trimEnd()
    .split('\n')
    .slice(1);

describe('drain flushes, as R has them', () => {
  let site: Site;
  let transformed: Transformed;

  beforeAll(async () => {
    const read = await readFleet(FLEET, '2025-01-01');
    expect(read.reading.problems).toEqual([]);
    ({ site, transformed } = read);
  });

  it('stand under the settings that R had', () => {
    for (const unit of ['U1', 'U2', 'U3'])
      expect(site.policyOf(unit, 'drain_flush')).toMatchObject({
        every: 7,
        counted_in: 'calendar_days',
        grace_days: 1,
        unrecorded_means: 'missed',
      });
    expect(site.policyOf('U4', 'drain_flush')).toBeUndefined();
    expect(site.flushAfterChamber('U4')).toMatchObject({ grace_days: 1, unrecorded_means: 'missed' });
    expect(formatDay(transformed.until)).toBe('2025-01-01');
  });

  it('fell due on the same days, and the same became of them', () => {
    const own = transformed.histories.flatMap(({ cleaning }) =>
      cleaning.due
        .filter(({ task }) => task === 'drain_flush')
        .map(({ unit, due, state, done }) => `${unit},${due},${state},${done ?? ''}`),
    );
    const wanted = linesOf('expected-tasks.csv');
    expect(new Set(wanted.map((line) => line.split(',')[2]))).toEqual(
      new Set(['done', 'done_late', 'missed']),
    );
    expect(own).toEqual(wanted);
  });

  it('were missed in a row as often on each day', () => {
    const own = transformed.panel.map(
      ({ unit, day, flushes_missed_in_a_row: missed }) => `${unit},${day},${missed ?? ''}`,
    );
    const wanted = linesOf('expected-missed.csv');
    expect(new Set(wanted.map((line) => line.split(',')[2]))).toEqual(new Set(['', '0', '1', '2', '3']));
    expect(own).toEqual(wanted);
  });
});
