import { describe, expect, it } from 'vitest';
import { cleaningClocks, logsOfUnit } from '../../../pipeline/findings/record-quality/cleaning-clocks.ts';
import { fitAt } from '../../../pipeline/findings/record-quality/offset-fit.ts';
import { recordQualitySchema } from '../../../pipeline/findings/record-quality/record-quality-schema.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { Records } from '../../../pipeline/site/records.ts';
import type { Site } from '../../../pipeline/site/site.ts';
import type { SiteFileInput } from '../../../pipeline/site/site-schema.ts';
import { judgeCleanings } from '../../../pipeline/transform/cleaning/judge-cleanings.ts';
import { classCycles } from '../../../pipeline/transform/cycles/class-cycles.ts';
import { recordsByUnit } from '../../../pipeline/transform/records-by-unit.ts';
import { BERLIN, readFiles } from '../../ingest/read-folder.ts';
import { qualityOf } from './quality-of.ts';
import { type LogPlan, simulateLog } from './simulate-log.ts';

const NONE = { air_removal_tests: [], leak_tests: [], service: [], inspections: [], water: [], actions: [] };
const clocksOf = (records: Pick<Records, 'cycles' | 'cleanings'>, site: SiteFileInput = BERLIN) =>
  clocksIn(readSiteFile(JSON.stringify(site), 'site.yaml'), { ...NONE, ...records });
/** Logs of units by their records alone: whole histories of hundreds of made-up logs would take minutes. */
const clocksIn = (site: Site, records: Records) =>
  cleaningClocks(
    site,
    recordsByUnit(site, records, Number.POSITIVE_INFINITY).map((unit) =>
      logsOfUnit({
        ...unit,
        cycles: classCycles(unit, site.rules),
        cleanings: judgeCleanings(unit, [], [], site.rules),
      }),
    ),
  );
const clockOf = (plan: LogPlan) => clocksOf(simulateLog(plan))[0]!;

/** Verdicts over logs of other seeds, counted. */
function verdicts(logs: number, plan: Omit<LogPlan, 'seed'>): Record<string, number> {
  const counts: Record<string, number> = {};
  for (let seed = 1; seed <= logs; seed++) {
    const { verdict } = clockOf({ ...plan, seed });
    counts[verdict] = (counts[verdict] ?? 0) + 1;
  }
  return counts;
}

describe('a record beside the cycle log', () => {
  const minute = 60_000;
  const log = {
    starts: Float64Array.of(0, 100 * minute, 200 * minute),
    began: Float64Array.of(0, 200 * minute),
    ended: Float64Array.of(40 * minute, 240 * minute),
  };
  const at = (begin: number, end: number) => ({ begin: begin * minute, end: end * minute, log });

  it.each([
    ['stands in a running cycle', at(20, 20), 0],
    ['overlaps one', at(30, 60), 0],
    ['spans one', at(-30, 300), 0],
    ['lies in a pause, soon after a cycle', at(50, 55), 2],
    ['lies in a pause, a cycle soon after it; the stop at 100 ends no pause', at(90, 175), 2],
    ['lies in a pause, away from all cycles', at(120, 125), 1],
    ['ends in the minute in which a cycle starts', at(150, 201), 2],
  ])('%s', (_, record, fit) => {
    expect(fitAt(record, 0)).toBe(fit);
  });

  it('is moved back by as much as its clock runs ahead', () => {
    expect(fitAt(at(220, 220), 30)).toBe(2);
    expect(fitAt(at(220, 220), -30)).toBe(2);
    expect(fitAt(at(220, 220), 100)).toBe(1);
  });
});

describe('the clock of a cleaning log', () => {
  // Measured with these seeds: none claimed. The night takes in every record, so that of these logs nearly all would fit better at another offset.
  it.each([
    { days: 60, contradicted: 0 },
    { days: 60, contradicted: 0.15 },
    { days: 200, contradicted: 0.05 },
    { days: 200, contradicted: 0.1 },
    { days: 200, contradicted: 0.15 },
  ])('that is right is left alone: $days records, $contradicted contradicted', (plan) => {
    const { agree = 0, cannot_tell = 0, ...claims } = verdicts(60, plan);
    expect(claims).toEqual({});
    expect(agree + cannot_tell).toBe(60);
    expect(agree).toBeGreaterThanOrEqual(58);
  });

  it.each([
    { days: 60, units: 1, contradicted: 0, least: 55 },
    { days: 60, units: 2, contradicted: 0.05, least: 57 },
    { days: 60, units: 2, contradicted: 0.1, least: 54 },
  ])(
    'that is an hour ahead is found: $days days, $units units, $contradicted contradicted',
    ({ least, ...plan }) => {
      const {
        cleaning_clock_ahead: ahead = 0,
        agree = 0,
        cannot_tell = 0,
        ...wrong
      } = verdicts(60, { ...plan, ahead: () => 60 });
      expect(wrong).toEqual({});
      expect(ahead).toBeGreaterThanOrEqual(least);
      expect(ahead + agree + cannot_tell).toBe(60);
    },
  );

  it('that is off is told with range, middle and counts, and the offset has the sign of clock_offset_minutes', () => {
    const records = simulateLog({ seed: 1, days: 60, units: 2, ahead: () => 60 });
    const found = clocksOf(records)[0]!;
    expect(found).toMatchObject({
      source: 'log',
      site: 'site',
      records: 120,
      left_out: 0,
      verdict: 'cleaning_clock_ahead',
      fit_with_offset: 120,
      suggested_offset_minutes: 60,
    });
    expect(found.low_minutes).toBeLessThanOrEqual(60);
    expect(found.high_minutes).toBeGreaterThanOrEqual(60);
    // All pairs that differ speak for the offset: two-sided 2 x 0.5 to their number, times the 109 offsets tried.
    expect(found.p! / (109 * 2 * 0.5 ** (120 - found.fit))).toBeCloseTo(1, 2);
  });

  it('that is behind is found where the work follows the last cycle, and not where it precedes the first: both times lie in a pause', () => {
    const behind = { days: 60, units: 2, ahead: () => -60 };
    expect(verdicts(30, { ...behind, when: 'after' })).toEqual({ cleaning_clock_behind: 30 });
    expect(verdicts(30, behind)).toEqual({ agree: 30 });
  });

  it('that is hours off, as in another zone, is found', () => {
    const { verdict, suggested_offset_minutes } = clockOf({
      seed: 1,
      days: 60,
      units: 2,
      ahead: () => 330,
    });
    expect([verdict, suggested_offset_minutes]).toEqual(['cleaning_clock_ahead', 330]);
  });

  it('that was put forward for the summer on one side only changes: no single offset is suggested', () => {
    // 2025-03-30 to 2025-10-25 are days 83 to 292 from 2025-01-06 on.
    const ahead = (day: number) => (day >= 83 && day < 293 ? 60 : 0);
    for (let seed = 1; seed <= 10; seed++) {
      const found = clockOf({ seed, days: 300, units: 3, contradicted: 0.1, ahead });
      expect(found).toMatchObject({
        verdict: 'changes',
        suggested_offset_minutes: null,
        low_minutes: null,
        p: null,
      });
      expect(found.months.map(({ month }) => month)).toContain('2025-07');
    }
  });

  it('is not called off where times are those of typing', () => {
    expect(verdicts(30, { days: 100, typed: 'over_the_day' })).toEqual({ cannot_tell: 30 });
    // One minute at the end of the shift lies the same hours behind each cleaning: it fits any day alike.
    expect(verdicts(30, { days: 100, typed: 'in_a_batch' })).toEqual({ cannot_tell: 30 });
    expect(clockOf({ seed: 1, days: 60, units: 3, typed: 'in_a_batch' })).toMatchObject({
      records: 0,
      left_out: 180,
      verdict: 'too_few',
    });
  });

  it('can’t be told from dates, nor from work that was not done, nor where there is no cycle log', () => {
    const { cycles, cleanings } = simulateLog({ seed: 1, days: 60, ahead: () => 60 });
    const dates = cleanings.map((cleaning) => ({ ...cleaning, time_mark: 'day' as const }));
    expect(clocksOf({ cycles, cleanings: dates })).toMatchObject([
      { records: 0, left_out: 60, fit: 0, verdict: 'too_few', months: [] },
    ]);
    const missed = cleanings.map((cleaning) => ({ ...cleaning, state: 'missed' as const }));
    expect(clocksOf({ cycles, cleanings: missed })).toEqual([]);
    expect(clocksOf({ cycles: [], cleanings })).toMatchObject([{ left_out: 60, verdict: 'too_few' }]);
    expect(clockOf({ seed: 1, days: 29, ahead: () => 60 })).toMatchObject({
      records: 29,
      verdict: 'too_few',
    });
  });

  it('is one a source and site, not one a unit', () => {
    const site: SiteFileInput = {
      sites: [
        { id: 'north', zone: 'Europe/Berlin' },
        { id: 'south', zone: 'Europe/Berlin' },
      ],
      units: [
        { id: 'S1', site: 'north' },
        { id: 'S2', site: 'north' },
        { id: 'S3', site: 'south' },
      ],
    };
    const found = clocksOf(simulateLog({ seed: 1, days: 40, units: 3 }), site);
    expect(found.map((row) => [row.source, row.site, row.records + row.left_out])).toEqual([
      ['log', 'north', 80],
      ['log', 'south', 40],
    ]);
  });

  it('is corrected only where the site says so; then it agrees, and what is suggested stands in its place', async () => {
    const { cycles, cleanings } = simulateLog({ seed: 1, days: 60, units: 2, ahead: () => 60 });
    const wall = (at: number) => new Date(at + 3_600_000).toISOString().slice(0, 16).replace('T', ' ');
    const files = {
      'cycles.csv': [
        'unit,start,end,kind,outcome',
        ...cycles.map(({ unit, start, end, kind }) =>
          [unit, wall(start), wall(end!), kind, 'completed'].join(),
        ),
      ].join('\n'),
      'cleanings.csv': [
        'unit,task,time',
        ...cleanings.map(({ unit, task, time }) => [unit, task, wall(time)].join()),
      ].join('\n'),
    };
    const read = async (offset?: number) => {
      const site: SiteFileInput = {
        ...BERLIN,
        sources: [
          { kind: 'cycles', files: 'cycles.csv' },
          {
            kind: 'cleanings',
            files: 'cleanings.csv',
            ...(offset === undefined ? {} : { clock_offset_minutes: offset }),
          },
        ],
      };
      const { records } = await readFiles(files, site);
      return recordQualitySchema.parse(qualityOf(site, records)).cleaning_clocks[0]!;
    };
    const { suggested_offset_minutes, verdict } = await read();
    expect([verdict, suggested_offset_minutes]).toEqual(['cleaning_clock_ahead', 60]);
    expect(await read(suggested_offset_minutes!)).toMatchObject({
      verdict: 'agree',
      fit: 120,
      suggested_offset_minutes: null,
    });
    expect(await read(20)).toMatchObject({ verdict: 'cleaning_clock_ahead', suggested_offset_minutes: 60 });
  });
});
