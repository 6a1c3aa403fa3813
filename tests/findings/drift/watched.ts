import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { ProbeDrift } from '../../../pipeline/findings/drift/drift-schema.ts';
import { driftSchema } from '../../../pipeline/findings/drift/drift-schema.ts';
import { driftWatch } from '../../../pipeline/findings/drift/drift-watch.ts';
import type { Probe } from '../../../pipeline/findings/drift/probes.ts';
import { formatDay, parseDay } from '../../../pipeline/site/day.ts';
import type { Cycle, Records } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cycle, recordsOf, siteOf, test_ } from '../../transform/build.ts';

export const FROM = parseDay('2025-01-06')!;
export const DAYS = 170;
const UNITS = ['A', 'B', 'C', 'D'];

/** Wall date of a day of the run. */
export const dateOf = (day: number): string => formatDay(FROM + day);

/** Days between the run's first day and a date of the answer. */
export const dayOf = (date: string): number => parseDay(date)! - FROM;

/**
 * The watch on four units over 170 days, each with a warm-up and an air-removal test a day: times with noise of 2 %. What unit A's cycles record on a day is changed by `ofA`, which
 * gets the plain cycle and a draw of noise.
 */
export function watched(
  ofA: (day: number, plain: Cycle, noise: () => number) => Cycle,
  more: Partial<Records> = {},
) {
  const generator = xoroshiro128plus(11);
  const noise = () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += (generator.next() >>> 0) / 2 ** 32;
    return sum;
  };
  const seconds = (level: number) => Math.round(level * (1 + 0.02 * noise()));
  const cycles: Cycle[] = [];
  const air_removal_tests = [];
  for (let day = 0; day < DAYS; day++) {
    const date = dateOf(day);
    for (const unit of UNITS) {
      for (const [time, kind] of [
        ['06:00', 'warm_up'],
        ['07:00', 'air_removal_test'],
      ] as const) {
        const plain: Cycle = {
          ...cycle(`${date} ${time}`, { unit, kind, minutes: 25, exposure_s: 210 }),
          evacuation_s: seconds(400),
          heat_up_s: seconds(150),
        };
        cycles.push(unit === 'A' ? ofA(day, plain, noise) : plain);
      }
      cycles.push(cycle(`${date} 09:00`, { unit, evacuation_s: 900 }));
      air_removal_tests.push(test_(`${date} 07:26`, 'pass', { unit }));
    }
  }
  const site = siteOf(`units: [${UNITS.map((id) => `{ id: ${id} }`).join(', ')}]`);
  const until = FROM + DAYS;
  const { histories } = transform(site, recordsOf({ cycles, air_removal_tests, ...more }), until);
  const drift = driftSchema.parse(driftWatch(histories, site, until));
  const probe = (unit: string, name: Probe): ProbeDrift =>
    drift.probes.find((of) => of.unit === unit && of.probe === name && of.era.current)!;
  return { drift, evacuation: probe('A', 'evacuation_time'), probe };
}

/** Codes of a probe's notes. */
export const notesOf = (probe: ProbeDrift): string[] => probe.notes.map((note) => note.code);
