import { describe, expect, it } from 'vitest';
import type { DriftOperatingCharacteristics } from '../../../pipeline/findings/drift/operating-characteristics.ts';
import type { Review } from '../../../pipeline/findings/review-schema.ts';
import { writeReport } from '../../../pipeline/report/report.ts';
import { de } from '../../../pipeline/report/words/de.ts';
import { fleetInput } from '../fixtures/fleet.ts';

type Row = DriftOperatingCharacteristics['scenarios'][number];

const row = (scenario: string, parts: Partial<Row> = {}): Row => ({
  scenario,
  says: `What holds: ${scenario}`,
  sites: 4,
  unit_years: 48,
  false_calls: { count: 3, per_unit_year: 0.0625, low: 0.0129, high: 0.1827 },
  false_by_probe: {
    evacuation_time: 3,
    heat_up_time: 0,
    exhaust_time: 0,
    leak_rate: 0,
    exposure_spread: 0,
    saturation_residual: 0,
  },
  found: null,
  lead_share: null,
  lead_days: null,
  attention_share: null,
  steps_called_slopes: { count: 1, of: 40, low: 0.0006, high: 0.1316 },
  steps_named: null,
  first_intervals: null,
  later_intervals: null,
  teeth_named: null,
  teeth_invented: null,
  ...parts,
});
const measured: DriftOperatingCharacteristics = {
  version: '9.8.7',
  made: '2026-01-01',
  first_seed: 1001,
  stride: 3,
  scenarios: [
    row('no drift'),
    row('drift', {
      found: { count: 27, of: 30, low: 0.7347, high: 0.9789 },
      lead_share: { of: 30, median: 0.36, low: 0.3, high: 0.41 },
      lead_days: { of: 30, median: 20, low: 16, high: 25 },
    }),
  ],
  run_lengths: [
    { chart: 'ewma', autocorrelation: 0, noise: 'normal', mean: 504, low: 472, high: 536 },
    { chart: 'cusum', autocorrelation: 0, noise: 'heavy tails', mean: 431, low: 406, high: 456 },
  ],
};

async function pages(of: Review['drift_operating_characteristics']) {
  const input = fleetInput(1);
  const review = { ...input.review, drift_operating_characteristics: of };
  const files = await writeReport({ ...input, review });
  const textOf = (path: string) =>
    String(files.find((file) => file.path === path)!.content)
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll(/\s+/g, ' ');
  return { methods: textOf('methods.html'), review: textOf('index.html') };
}

describe('how good the watch for drift is', () => {
  it('stands on the methods page and in a sentence of the review, as measured', async () => {
    const { methods, review } = await pages(measured);
    expect(methods).toContain('How good the watch for drift is');
    expect(methods).toContain('(version 9.8.7)');
    expect(methods).toContain('ran every 3 days');
    expect(methods).toContain('What holds: no drift');
    expect(methods).toContain('0.0625');
    expect(methods).toMatch(/27 of 30 90% \(73% to 98%\)/);
    expect(methods).toContain('20 days 36% of the drift');
    expect(methods).toContain('504 to 504 values in normal noise, 431 to 431 in noise with heavy tails');
    expect(review).toContain('called by mistake 0.063 (0.013 to 0.18) times a unit and year');
    expect(review).toContain('90% (73% to 98%) were called before it');
  });

  it('is left out where it was not measured', async () => {
    const { methods, review } = await pages(null);
    expect(methods).not.toContain('How good the watch for drift is');
    expect(review).not.toContain('How that was measured');
  });

  it('has words in German for all scenarios that are measured', async () => {
    const { DRIFT_SCENARIOS } = await import('../../calibration/drift-scenarios.ts');
    for (const { name, says } of DRIFT_SCENARIOS)
      expect(de.drift.measured.scenario(name, says)).not.toBe(says);
  });
});
