import { describe, expect, it } from 'vitest';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, brief, readFiles, utc } from './read-folder.ts';

const site = (merge: SiteFileInput['merge'], more: Partial<SiteFileInput> = {}): SiteFileInput => ({
  ...BERLIN,
  sources: [
    { name: 'tracking', kind: 'cycles', files: 'tracking.csv' },
    { name: 'control', kind: 'cycles', files: 'control.csv' },
  ],
  ...(merge ? { merge } : {}),
  ...more,
});
const RULE: SiteFileInput['merge'] = [{ kind: 'cycles', sources: ['tracking', 'control'] }];
const FILES = {
  'tracking.csv': [
    'unit,start,kind,outcome,cycle_number',
    'S1,2025-03-03 06:30,production,completed,17',
    'S1,2025-03-03 08:30,production,completed,',
    'S1,2025-03-03 10:30,production,running,19',
    'S2,2025-03-03 06:30,production,completed,17',
  ].join('\n'),
  'control.csv': [
    'unit,start,end,kind,outcome,cycle_number,heat_up_s',
    'S1,2025-03-03 06:31:40,2025-03-03 07:15:00,production,completed,17,95',
    'S1,2025-03-03 08:29:10,2025-03-03 09:15:00,production,completed,18,96',
    'S1,2025-03-03 10:31:00,2025-03-03 10:45:00,production,aborted,19,',
    'S1,2025-03-03 12:31:00,2025-03-03 13:15:00,production,completed,20,98',
    'S2,2025-03-03 06:31:00,2025-03-03 07:15:00,liquids,completed,17,99',
  ].join('\n'),
};

describe('two sources of the same cycles', () => {
  it('are merged by the stated preference: what the first lacks comes from the second', async () => {
    const { records, problems, files } = await readFiles(FILES, site(RULE));
    expect(
      records.cycles.map(({ unit, start, end, outcome, cycle_number, heat_up_s, origin }) => [
        unit,
        start,
        end,
        outcome,
        cycle_number,
        heat_up_s,
        origin.source,
      ]),
    ).toEqual([
      ['S1', utc('2025-03-03T05:30:00Z'), utc('2025-03-03T06:15:00Z'), 'completed', 17, 95, 'tracking'],
      ['S1', utc('2025-03-03T07:30:00Z'), utc('2025-03-03T08:15:00Z'), 'completed', 18, 96, 'tracking'],
      ['S1', utc('2025-03-03T09:30:00Z'), utc('2025-03-03T09:45:00Z'), 'aborted', 19, undefined, 'tracking'],
      ['S1', utc('2025-03-03T11:31:00Z'), utc('2025-03-03T12:15:00Z'), 'completed', 20, 98, 'control'],
      ['S2', utc('2025-03-03T05:30:00Z'), undefined, 'completed', 17, undefined, 'tracking'],
    ]);
    expect(problems.map(brief)).toEqual(['conflicting_duplicate row 6 kind']);
    expect(files.map(({ records: count, duplicates, rejected }) => [count, duplicates, rejected])).toEqual([
      [4, 0, 0],
      [1, 3, 1],
    ]);
  });

  it('the other way round keep the other’s times', async () => {
    const { records } = await readFiles(FILES, site([{ kind: 'cycles', sources: ['control', 'tracking'] }]));
    expect(records.cycles[0]).toMatchObject({
      start: utc('2025-03-03T05:31:40Z'),
      origin: { source: 'control' },
    });
    expect(records.cycles).toHaveLength(5);
  });

  it('stay apart without a rule, beyond its minutes, and with other numbers', async () => {
    expect((await readFiles(FILES, site(undefined))).records.cycles).toHaveLength(9);
    expect((await readFiles(FILES, site([{ ...RULE![0]!, within_minutes: 1 }]))).records.cycles).toHaveLength(
      6,
    );
    const other = {
      ...FILES,
      'control.csv': FILES['control.csv'].replace('completed,17,95', 'completed,77,95'),
    };
    expect((await readFiles(other, site(RULE))).records.cycles).toHaveLength(6);
  });

  it('a rule names sources that are there', async () => {
    await expect(
      readFiles(FILES, site([{ kind: 'cycles', sources: ['tracking', 'paper'] }])),
    ).rejects.toThrow('must be the name of a source of cycles (tracking, control), found "paper"');
    await expect(
      readFiles(FILES, site([{ kind: 'cycles', sources: ['tracking', 'tracking'] }])),
    ).rejects.toThrow('must stand once');
  });
});
