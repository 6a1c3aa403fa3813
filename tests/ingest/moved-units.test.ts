import { describe, expect, it } from 'vitest';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { brief, readFiles } from './read-folder.ts';

/** Two units that changed places on 1 June; each site calls whatever stands at its first place "Room 1". */
const SWAPPED: SiteFileInput = {
  sites: [
    { id: 'north', zone: 'Europe/Berlin' },
    { id: 'south', zone: 'Europe/Berlin' },
  ],
  units: [
    {
      id: 'U1',
      site: 'north',
      aliases: [
        { name: 'Room 1', to: '2025-05-31' },
        { name: 'Room 1', site: 'south', from: '2025-06-01' },
      ],
    },
    {
      id: 'U2',
      site: 'south',
      aliases: [
        { name: 'Room 1', to: '2025-05-31' },
        { name: 'Room 1', site: 'north', from: '2025-06-01' },
      ],
    },
  ],
  sources: (['north', 'south'] as const).map((site) => ({
    name: site,
    kind: 'cycles',
    site,
    files: `${site}.csv`,
  })),
};
const rows = (...days: string[]): string =>
  ['unit,start,kind,outcome', ...days.map((day) => `Room 1,${day} 08:00,production,completed`)].join('\n');

describe('units that were swapped between sites', () => {
  it('are told by name, site and day', async () => {
    const days = ['2025-05-31', '2025-06-01'];
    const { records, problems } = await readFiles(
      { 'north.csv': rows(...days), 'south.csv': rows(...days) },
      SWAPPED,
    );
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ unit, origin }) => [unit, origin.source, origin.row])).toEqual([
      ['U1', 'north', 2],
      ['U1', 'south', 3],
      ['U2', 'south', 2],
      ['U2', 'north', 3],
    ]);
  });

  it('need days that don’t overlap, and sites that are there', async () => {
    const change = (to: string, site = 'south'): SiteFileInput => ({
      ...SWAPPED,
      units: [
        { id: 'U1', site: 'north', aliases: [{ name: 'Room 1', to }] },
        {
          id: 'U2',
          site: 'south',
          aliases: [
            { name: 'Room 1', site: 'north', from: '2025-06-01' },
            { name: 'R', site },
          ],
        },
      ],
    });
    await expect(readFiles({}, change('2025-06-01'))).rejects.toThrow(
      'must mean one unit on a day: "Room 1" also means U1',
    );
    await expect(readFiles({}, change('2025-05-31', 'west'))).rejects.toThrow(
      'must be one of the sites (north, south), found "west"',
    );
    const { problems } = await readFiles(
      { 'north.csv': rows('2025-05-31'), 'south.csv': rows('2025-05-31') },
      change('2025-05-31'),
    );
    expect(problems.map(brief)).toEqual(['unknown_unit row 2 unit']);
  });
});
