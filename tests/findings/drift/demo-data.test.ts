import { beforeAll, expect, it } from 'vitest';
import type { Drift } from '../../../pipeline/findings/drift/drift-schema.ts';
import { driftWatch } from '../../../pipeline/findings/drift/drift-watch.ts';
import { readExports } from '../../../pipeline/ingest/read-exports.ts';
import { parseDay } from '../../../pipeline/site/day.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { FOLDER, readDemoSite } from '../../data-samples/truth-file.ts';

// The scenario of the demo data says what is true of it: data-samples/README.md.
let drift: Drift;

beforeAll(async () => {
  const site = readDemoSite();
  const { records } = await readExports(site, FOLDER);
  const until = parseDay('2026-10-01')!;
  drift = driftWatch(transform(site, records, until).histories, site, until);
}, 60_000);

const probe = (unit: string, name: string) =>
  drift.probes.find((of) => of.unit === unit && of.probe === name && of.era.current)!;

it('names the saw-tooth of T4 and no other one', () => {
  const tooth = probe('T4', 'exhaust_time').saw_tooth!;
  expect(['drain_flush', 'chamber']).toContain(tooth.falls_back_at);
  expect(tooth.fall).toBeLessThan(0);
  expect(drift.probes.filter((of) => of.era.current && of.saw_tooth).map((of) => of.unit)).toEqual(['T4']);
});

it('dates the drift of Q4 to within ten days of 2026-08-12', () => {
  const { since, direction } = probe('Q4', 'evacuation_time');
  expect(direction).toBe('up');
  expect(Math.abs(parseDay(since!)! - parseDay('2026-08-12')!)).toBeLessThanOrEqual(10);
  expect(probe('Q4', 'leak_rate').state).toBe('steady');
});

it('marks leak tests in a wet chamber, and the passes with a long heat-up', () => {
  expect(drift.leak_tests_after_cleaning.length).toBeGreaterThan(0);
  expect(drift.heat_up_passes.filter((of) => of.slow).length).toBeGreaterThanOrEqual(6);
});
