import { describe, expect, it } from 'vitest';
import { driftWatch } from '../../../pipeline/findings/drift/drift-watch.ts';
import { eraSeries } from '../../../pipeline/findings/drift/era-series.ts';
import { siteSeries } from '../../../pipeline/findings/drift/site-series.ts';
import type { Cycle } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { dice } from '../../calibration/drift-simulate-site.ts';
import { cycle, recordsOf, siteOf } from '../../transform/build.ts';
import { DAYS, dateOf, FROM } from './watched.ts';

/** A site whose units warm up once a day, evacuating in 400 s and heating up in 150 s: noise of 2 %, and what moves each unit on a day, as a share. */
function siteOfUnits(units: readonly string[], moved: (unit: string, day: number) => number) {
  const draw = dice(5);
  const cycles: Cycle[] = [];
  for (let day = 0; day < DAYS; day++)
    for (const unit of units)
      cycles.push({
        ...cycle(`${dateOf(day)} 06:00`, { unit, kind: 'warm_up', minutes: 25, exposure_s: 210 }),
        evacuation_s: Math.round(400 * Math.exp(moved(unit, day) + 0.02 * draw.normal())),
        heat_up_s: Math.round(150 * Math.exp(moved(unit, day) + 0.02 * draw.normal())),
      });
  const site = siteOf(`units: [${units.map((id) => `{ id: ${id} }`).join(', ')}]`);
  const { histories } = transform(site, recordsOf({ cycles }), FROM + DAYS);
  return { site, histories, drift: () => driftWatch(histories, site, FROM + DAYS) };
}

const season = (day: number) => 0.04 * Math.sin((2 * Math.PI * day) / 150);

describe('the movement of a site', () => {
  it('is taken out as strongly as each unit feels it', () => {
    const feels: Record<string, number> = { A: 1.3, B: 1, C: 0.9, D: 0.8, E: 1 };
    const { site, histories } = siteOfUnits(Object.keys(feels), (unit, day) => feels[unit]! * season(day));
    const { drift } = site.rules;
    const series = histories
      .flatMap((history) => eraSeries(history, FROM + DAYS, drift.wet_hours))
      .filter((of) => of.probe === 'evacuation_time');
    const { adjusted } = siteSeries(series, drift);
    for (const { of, sensitivity } of adjusted) {
      const unit = of.history.unit;
      const others = Object.keys(feels).filter((id) => id !== unit);
      const mean = others.reduce((sum, id) => sum + feels[id]!, 0) / others.length;
      const truth = feels[unit]! / mean;
      // Drawn towards 1 from a record of half a year: a part of the way is gone, and the others stay.
      if (Math.abs(truth - 1) > 0.2) expect((sensitivity - 1) / (truth - 1)).toBeGreaterThan(0.2);
      else expect(Math.abs(sensitivity - 1)).toBeLessThan(0.1);
    }
  });

  it('is that of all units where there are so many that one hardly bends it; a unit that climbs is found all the same', () => {
    const ids = Array.from({ length: 45 }, (_, at) => `U${at}`);
    const { drift } = siteOfUnits(
      ids,
      (unit, day) => season(day) + (unit === 'U7' ? 0.002 * Math.max(0, day - 100) : 0),
    );
    const moving = drift().probes.filter((of) => of.state === 'moving');
    expect(new Set(moving.map((of) => of.unit))).toEqual(new Set(['U7']));
    expect(new Set(moving.map((of) => of.probe))).toEqual(new Set(['evacuation_time', 'heat_up_time']));
  });

  it('is read from the other unit at a site with two, and then no movement of the site is told', () => {
    const both = siteOfUnits(['A', 'B'], (_, day) => season(day)).drift();
    expect(both.probes.filter((of) => of.state === 'moving')).toEqual([]);
    expect(both.sites).toEqual([]);
    const climbs = siteOfUnits(
      ['A', 'B'],
      (unit, day) => season(day) + (unit === 'A' ? 0.004 * Math.max(0, day - 130) : 0),
    );
    const { probes } = climbs.drift();
    expect(probes.filter((of) => of.state === 'moving').map((of) => of.probe)).toContain('evacuation_time');
    // The difference of the two moves for both; what B measured did not.
    for (const of of probes.filter((row) => row.state === 'moving' || row.state === 'stepped'))
      expect([of.unit, of.direction]).toEqual(['A', 'up']);
  });

  it('looks like no drift where there is nothing to compare with', () => {
    const { probes } = siteOfUnits(['A'], (_, day) => season(day) / 2).drift();
    expect(probes.filter((of) => of.state === 'moving')).toEqual([]);
    expect(probes.flatMap((of) => of.notes.map((note) => note.code))).toContain(
      'common_movement_not_removed',
    );
  });
});
