import { describe, expect, it } from 'vitest';
import { isDaily } from '../../pipeline/site/cleaning-policy.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';

const siteOf = (yaml: string) => readSiteFile(`sites: [{ zone: Europe/Berlin }]\n${yaml}`, 'site.yaml');
const UNITS = 'units: [{ id: A }, { id: B, liquids: true }]\n';

describe('the cleaning policy', () => {
  it('is the last that names the unit, else the last that names none, else the default', () => {
    const { policyOf } = siteOf(
      `${UNITS}cleaning:\n  - { task: chamber, every: 30 }\n  - { task: chamber, every: 28, units: [A] }\n  - { task: chamber, every: 60 }\n`,
    );
    expect(policyOf('A', 'chamber')?.every).toBe(28);
    expect(policyOf('B', 'chamber')?.every).toBe(60);
    expect(policyOf('B', 'professional')?.every).toBe(365);
    expect(siteOf(UNITS).policyOf('A', 'chamber')).toBeUndefined();
  });

  it('has drains flushed on units that process liquids, where the site says which, and else where it asks for it', () => {
    const flush = 'cleaning: [{ task: drain_flush, every: 5, grace_days: 2, unrecorded_means: missed }]';
    const stated = siteOf(UNITS + flush);
    expect(stated.policyOf('A', 'drain_flush')).toBeUndefined();
    expect(stated.policyOf('B', 'drain_flush')?.every).toBe(5);
    for (const units of ['', 'units: [{ id: A }, { id: B }]\n'])
      expect(siteOf(units + flush).policyOf('A', 'drain_flush')?.every).toBe(5);
    expect(siteOf(UNITS).policyOf('A', 'drain_flush')).toBeUndefined();
    expect(siteOf(UNITS).policyOf('B', 'drain_flush')?.every).toBe(7);
    expect(siteOf('').policyOf('A', 'drain_flush')).toBeUndefined();
  });

  it('reads a flush after a chamber cleaning by what the site says of flushes', () => {
    const stated = siteOf(
      `${UNITS}cleaning: [{ task: drain_flush, every: 5, grace_days: 2, unrecorded_means: missed }]`,
    );
    expect(stated.flushAfterChamber('A')).toMatchObject({ grace_days: 2, unrecorded_means: 'missed' });
    expect(siteOf(UNITS).flushAfterChamber('A')).toMatchObject({
      grace_days: 1,
      unrecorded_means: 'not_recorded',
    });
  });

  it('is daily where each day is asked for, of use or of the calendar', () => {
    const of = (fields: string) =>
      isDaily(siteOf(`cleaning: [{ task: drain_strainer, ${fields} }]`).policyOf('A', 'drain_strainer')!);
    expect(of('every: 1')).toBe(true);
    expect(of('every: 1, counted_in: days_of_use')).toBe(true);
    expect(of('every: 1, counted_in: cycles')).toBe(false);
    expect(of('every: 2')).toBe(false);
  });
});
