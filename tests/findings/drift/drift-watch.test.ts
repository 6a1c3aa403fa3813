import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { driftSchema } from '../../../pipeline/findings/drift/drift-schema.ts';
import { driftWatch } from '../../../pipeline/findings/drift/drift-watch.ts';
import { formatDay, parseDay } from '../../../pipeline/site/day.ts';
import type { Cycle, Records } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cycle, recordsOf, siteOf, test_ } from '../../transform/build.ts';

const FROM = parseDay('2025-01-06')!;
const DAYS = 170;
const UNITS = ['A', 'B', 'C', 'D'];

/** Evacuation time of unit A by day; the other units and all else stay level, with noise of 2 %. */
function watch(evacuationOfA: (day: number) => number | undefined, more: Partial<Records> = {}) {
  const generator = xoroshiro128plus(11);
  const noise = () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += (generator.next() >>> 0) / 2 ** 32;
    return sum;
  };
  const cycles: Cycle[] = [];
  const air_removal_tests = [];
  for (let day = 0; day < DAYS; day++) {
    const date = formatDay(FROM + day);
    for (const unit of UNITS) {
      const level = unit === 'A' ? evacuationOfA(day) : 400;
      for (const [time, kind] of [
        ['06:00', 'warm_up'],
        ['07:00', 'air_removal_test'],
      ] as const) {
        cycles.push({
          ...cycle(`${date} ${time}`, { unit, kind, minutes: 25, exposure_s: 210 }),
          ...(level === undefined ? {} : { evacuation_s: Math.round(level * (1 + 0.02 * noise())) }),
          heat_up_s: Math.round(150 * (1 + 0.02 * noise())),
        });
      }
      cycles.push(cycle(`${date} 09:00`, { unit, evacuation_s: 900 }));
      air_removal_tests.push(test_(`${date} 07:26`, 'pass', { unit }));
    }
  }
  const site = siteOf(`units: [${UNITS.map((id) => `{ id: ${id} }`).join(', ')}]`);
  const until = FROM + DAYS;
  const { histories } = transform(site, recordsOf({ cycles, air_removal_tests, ...more }), until);
  const drift = driftSchema.parse(driftWatch(histories, site, until));
  const probe = (unit: string, name: string) =>
    drift.probes.find((of) => of.unit === unit && of.probe === name && of.era.current)!;
  return { drift, evacuation: probe('A', 'evacuation_time'), probe };
}

const states = (drift: ReturnType<typeof watch>['drift']) => [...new Set(drift.probes.map((of) => of.state))];

describe('the watch', () => {
  it('calls a level series steady, and takes nothing from production cycles', () => {
    const { drift, evacuation } = watch(() => 400);
    expect(states(drift).filter((state) => state !== 'steady' && state !== 'not_enough_data')).toEqual([]);
    expect(evacuation.level_now).toBeGreaterThan(380);
    expect(evacuation.level_now).toBeLessThan(420);
  });

  it('finds a slow rise in the unit that has it and in no other', () => {
    const { drift, evacuation } = watch((day) => 400 * (1 + Math.max(0, day - 130) * 0.004));
    expect(evacuation).toMatchObject({ state: 'moving', direction: 'up' });
    // Begun on day 130 at 0.4 % a day: 11.2 s a week of 400 s.
    expect(Math.abs(parseDay(evacuation.since!)! - FROM - 130)).toBeLessThanOrEqual(14);
    expect(evacuation.rate_per_week!.value).toBeGreaterThan(7);
    expect(evacuation.rate_per_week!.value).toBeLessThan(16);
    expect(drift.units[0]!.unit).toBe('A');
    expect(drift.probes.filter((of) => of.unit !== 'A' && of.state === 'moving')).toEqual([]);
  });

  it('tells a step from a slope', () => {
    const { evacuation } = watch((day) => (day < 120 ? 400 : 450));
    expect(evacuation).toMatchObject({ state: 'stepped', direction: 'up' });
    expect(Math.abs(parseDay(evacuation.step!.date)! - FROM - 120)).toBeLessThanOrEqual(3);
  });

  it('makes no alarm of values that stop coming, and says so', () => {
    const { evacuation } = watch((day) => (day < 100 ? 400 : undefined));
    expect(evacuation.state === 'steady' || evacuation.state === 'not_enough_data').toBe(true);
    expect(evacuation.notes.map((note) => note.code)).toContain('no_recent_values');
  });
});
