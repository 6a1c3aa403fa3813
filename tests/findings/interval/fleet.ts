import { intervalCase } from '../../../pipeline/findings/interval/interval-case.ts';
import type { IntervalCase } from '../../../pipeline/findings/interval/interval-schema.ts';
import { parseDay } from '../../../pipeline/site/day.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { Inspection, Records, Water } from '../../../pipeline/site/records.ts';
import type { Site } from '../../../pipeline/site/site.ts';
import { type Transformed, transform } from '../../../pipeline/transform/transform.ts';

export const FIRST_DAY = parseDay('2025-01-06')!; // a Monday
const DAY_MS = 86_400_000;
const MINUTE = 60_000;

export interface CleaningPlan {
  day: number;
  /** Default routine, at 04:30 on a cold unit. running: while a cycle ran. date: known by its date alone. */
  how?: 'routine' | 'reactive' | 'running' | 'date';
}

export interface UnitPlan {
  unit: string;
  days: number;
  /** Days on which the first test fails; every other day passes. */
  fails?: readonly number[];
  cleanings?: readonly CleaningPlan[];
  /** Days of a repair, one each. */
  repairs?: readonly number[];
  /** Aborted second production cycles. */
  aborts?: readonly number[];
  /** Days without any use. */
  idle?: readonly number[];
  /** Start of the first production cycle and those after it, minutes of the day; default 08:00 and 10:00. */
  production?: readonly number[];
}

const at = (day: number, minutes: number): number => (FIRST_DAY + day) * DAY_MS + minutes * MINUTE;

/** Records of hand-made units on a UTC clock: warm-up 06:00, test 06:30, production of 45 minutes. */
export function recordsOf(units: readonly UnitPlan[]): Records {
  const records: Records = {
    cycles: [],
    air_removal_tests: [],
    leak_tests: [],
    cleanings: [],
    service: [],
    inspections: [],
    water: [],
    actions: [],
  };
  for (const plan of units) {
    let row = 0;
    const mark = () => ({
      unit: plan.unit,
      time_mark: 'time' as const,
      origin: { source: 'hand-made', file: plan.unit, sheet: null, row: ++row },
    });
    for (const { day, how = 'routine' } of plan.cleanings ?? []) {
      const [from, to] = how === 'running' ? [490, 520] : how === 'reactive' ? [900, 960] : [270, 315];
      records.cleanings.push(
        how === 'date'
          ? { ...mark(), task: 'chamber', time: at(day, 240), time_mark: 'day', state: 'done' }
          : {
              ...mark(),
              task: 'chamber',
              time: at(day, to),
              start: at(day, from),
              state: 'done',
              ...(how === 'reactive' ? { reason: 'reactive' } : {}),
            },
      );
    }
    for (const day of plan.repairs ?? [])
      records.service.push({ ...mark(), kind: 'repair', from: at(day, 60), to: at(day, 180) });
    for (let day = 0; day < plan.days; day++) {
      if (plan.idle?.includes(day)) continue;
      const cycle = (
        start: number,
        end: number,
        kind: 'warm_up' | 'air_removal_test' | 'production',
        abort = false,
      ) =>
        records.cycles.push({
          ...mark(),
          start: at(day, start),
          end: at(day, end),
          kind,
          outcome: abort ? 'aborted' : 'completed',
          ...(abort ? { abort_text: 'evacuation too slow' } : {}),
        });
      cycle(360, 380, 'warm_up');
      cycle(390, 415, 'air_removal_test');
      for (const [index, start] of (plan.production ?? [480, 600]).entries())
        cycle(start, start + 45, 'production', index === 1 && (plan.aborts?.includes(day) ?? false));
      records.air_removal_tests.push({
        ...mark(),
        time: at(day, 416),
        result: plan.fails?.includes(day) ? 'fail' : 'pass',
      });
    }
  }
  return records;
}

export interface MadeCase {
  found: IntervalCase;
  transformed: Transformed;
  file: Site;
}

/** The case of hand-made units. `site`: further lines of the site file. */
export function caseOf(
  units: readonly UnitPlan[],
  site = '',
  more: { inspections?: Inspection[]; water?: Water[] } = {},
): MadeCase {
  const days = Math.max(0, ...units.map((unit) => unit.days));
  const file = readSiteFile(
    [
      'sites: [{ id: s, zone: Etc/UTC }]',
      `units: [${units.map(({ unit }) => `{ id: ${unit} }`).join(', ')}]`,
      site.includes('cleaning:') ? '' : 'cleaning: [{ task: chamber, every: 28, unrecorded_means: missed }]',
      site,
    ].join('\n'),
    'hand-made',
  );
  const records = recordsOf(units);
  records.inspections.push(...(more.inspections ?? []));
  records.water.push(...(more.water ?? []));
  const transformed = transform(file, records, FIRST_DAY + days);
  return {
    file,
    transformed,
    found: intervalCase(transformed.histories, transformed.panel, file, records, FIRST_DAY + days),
  };
}

/** Every `step`-th day from `from`, up to `until`. */
export const every = (step: number, from: number, until: number): number[] => {
  const days: number[] = [];
  for (let day = from; day < until; day += step) days.push(day);
  return days;
};

/** Units cleaned every 28 days that fail five days before a cleaning (too early for it to count as reactive), now and then: a record with a rise. */
export function risingUnits(count: number, days: number): UnitPlan[] {
  return Array.from({ length: count }, (_, index) => ({
    unit: `U${index + 1}`,
    days,
    cleanings: every(28, 3 + index, days).map((day) => ({ day })),
    fails: every(28, 3 + index, days).flatMap((day, spell) => [
      ...(spell % 2 === index % 2 ? [day - 5] : []),
      ...(spell % 3 === 0 ? [day + 17] : []),
    ]),
    aborts: every(9, index, days),
  }));
}
