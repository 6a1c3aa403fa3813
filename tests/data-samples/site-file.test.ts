import { expect, test } from 'vitest';
import { BAROMETER } from '../../data-samples/generator/exports/tornfell-words.ts';
import { CHAMBER_INTERVAL, UNITS, ZONES } from '../../data-samples/generator/scenario.ts';
import { RENAMED } from '../../data-samples/generator/unit-stories.ts';
import { readDemoSite, readTruth } from './truth-file.ts';

const site = readDemoSite();

test('the site file declares the units, zones and policy that the generator used', () => {
  expect(site.declared.units!.map(({ id, site: of, liquids }) => [id, of, liquids])).toEqual(
    UNITS.map(({ id, site: of, liquids }) => [id, of, liquids > 0]),
  );
  for (const [id, zone] of Object.entries(ZONES)) expect(site.sites.get(id)!.zone).toBe(zone);
  expect(site.sites.get('Tornfell')!.barometric_pressure_kpa).toBe(BAROMETER);
  for (const { id } of UNITS)
    expect(site.policyOf(id, 'chamber')).toMatchObject({
      every: CHAMBER_INTERVAL,
      counted_in: 'calendar_days',
    });
});

test('the old name of T1 means it until the day of renaming and not after', () => {
  const { oldName, unit, lastDay } = RENAMED;
  expect(site.readUnit(oldName, lastDay, 'Tornfell')).toMatchObject({ known: true, unit });
  expect(site.readUnit(oldName, lastDay + 1, 'Tornfell')).toMatchObject({ known: false });
});

test('each source is one that the generator wrote, and the other way round', () => {
  expect(site.sources.map(({ name }) => name).sort()).toEqual(Object.keys(readTruth().reading).sort());
});
