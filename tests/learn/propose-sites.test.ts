import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';

const zone = 'Europe/Berlin';
const vocabulary = loadVocabulary();
const days = Array.from({ length: 14 }, (_, at) => `2025-03-${String(at + 10)}`);
const cycles = (units: readonly string[], column?: (unit: string) => string): string =>
  [
    `${column ? 'Hospital,' : ''}Sterilizer,Start,Program,Result`,
    ...days.flatMap((day) =>
      units.map((unit) => `${column ? `${column(unit)},` : ''}${unit},${day} 06:10:00,Wrapped,Completed`),
    ),
    '',
  ].join('\n');

/** What is learned of files, answered, written and read. */
async function learnt(files: Record<string, string>, answer: string) {
  return withFolder(files, async (folder) => {
    const proposal = await learn(folder, { vocabulary, zone });
    const [question] = openQuestions(proposal);
    const open = writeSiteFile(proposal);
    const told = question?.answer(proposal, answer);
    const site = told && readSiteFile(writeSiteFile(told), 'site.yaml');
    return { question, open, told, site, reading: site && (await readExports(site, folder)) };
  });
}

describe('more than one site', () => {
  it('a folder each: asked, refused until it is answered, and units of one name kept apart', async () => {
    const files = { 'north/cycles.csv': cycles(['S1', 'S2']), 'south/cycles.csv': cycles(['S1']) };
    const { question, open, reading } = await learnt(files, '2');
    expect(question?.about).toBe('sites');
    expect(question?.options).toEqual(['one site', 'several sites, a folder each: north, south']);
    expect(() => readSiteFile(open, 'site.yaml')).toThrow('sites');
    expect(open).toContain('? open: one site or several?');
    expect(new Set(reading!.records.cycles.map(({ unit }) => unit))).toEqual(
      new Set(['north S1', 'S2', 'south S1']),
    );
    expect([reading!.records.cycles.length, reading!.problems]).toEqual([42, []]);
  });

  it('answered with one site the folders are one', async () => {
    const files = { 'north/cycles.csv': cycles(['S1', 'S2']), 'south/cycles.csv': cycles(['S3']) };
    const { reading, told } = await learnt(files, 'one site');
    expect(told!.sites).toEqual([]);
    expect(new Set(reading!.records.cycles.map(({ unit }) => unit))).toEqual(new Set(['S1', 'S2', 'S3']));
  });

  it('a column that names it: one file read for each site, rows of the others skipped', async () => {
    const files = {
      'cycles.csv': cycles(['A1', 'A2', 'B1'], (unit) => (unit.startsWith('A') ? 'Hill' : 'Vale')),
      'bowie dick.csv': [
        'Sterilizer,Read at,Result',
        ...days.map((day) => `B1,${day} 07:00:00,Pass`),
        '',
      ].join('\n'),
    };
    const { question, reading, told } = await learnt(files, '2');
    expect(question?.options[1]).toBe('several sites, named in the column "Hospital": Hill, Vale');
    // The tests name no site, but their unit stands at one only.
    expect(told!.sources.map(({ site }) => site)).toEqual(['Vale', 'Hill', 'Vale']);
    expect(reading!.files.map(({ records, skipped }) => [records, skipped])).toEqual([
      [14, 0],
      [28, 14],
      [14, 28],
    ]);
    expect(reading!.problems).toEqual([]);
  });

  it('names of units that begin with it', async () => {
    const { question, reading } = await learnt(
      { 'cycles.csv': cycles(['Hill 1', 'Hill 2', 'Vale 1', 'Vale 2']) },
      '2',
    );
    expect(question?.options[1]).toBe('several sites, with which the names of units begin: Hill, Vale');
    expect([reading!.records.cycles.length, reading!.problems]).toEqual([56, []]);
  });

  it.each([
    ['months', { '2025-03/cycles.csv': cycles(['S1']), '2025-04/cycles.csv': cycles(['S1']) }],
    ['kinds of record', { 'cycles/a.csv': cycles(['S1']), 'cleaning/b.csv': cycles(['S1']) }],
    ['one name with numbers', { 'cycles.csv': cycles(['Steri 1', 'Steri 2', 'Steri 3']) }],
  ])('is not asked of folders of %s', async (_, files) => {
    await withFolder(files as Record<string, string>, async (folder) => {
      expect(openQuestions(await learn(folder, { vocabulary, zone }))).toEqual([]);
    });
  });

  it('told by an option it is no question', async () => {
    await withFolder({ 'n/cycles.csv': cycles(['S1']), 's/cycles.csv': cycles(['S2']) }, async (folder) => {
      const proposal = await learn(folder, { vocabulary, zone, sites: 'folder' });
      expect([proposal.sites, openQuestions(proposal)]).toEqual([['n', 's'], []]);
      await expect(learn(folder, { vocabulary, zone, sites: 'column' })).rejects.toThrow('by column');
    });
  });
});
