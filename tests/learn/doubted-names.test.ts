import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { describeProposal } from '../../pipeline/learn/describe-proposal.ts';
import { doubtedNames } from '../../pipeline/learn/doubted-names.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';

const doubtsOf = (rows: Record<string, number>) =>
  doubtedNames(new Map(Object.entries(rows))).map(({ name, near }) => (near ? `${name} for ${near}` : name));

describe('names of units that may be slips', () => {
  it.each<[string, Record<string, number>, string[]]>([
    ['one row beside hundreds', { 'A 1': 500, 'A 2': 480, 'A 9': 1 }, ['A 9']],
    ['a share of a usual one, and few', { 'A 1': 2000, 'A 2': 2000, 'A 3': 20, 'A 4': 21 }, ['A 3']],
    ['a unit that is used seldom is none', { 'A 1': 500, 'A 2': 480, 'A 9': 6 }, []],
    ['few rows of all are none', { 'A 1': 5, 'A 2': 4, 'A 3': 1 }, []],
    ['one unit alone is none', { 'A 1': 5 }, []],
    [
      'a letter too few',
      { 'AUTOCLAVE 1': 50, 'AUTOCLVE 1': 30, 'AUTOCLAVE 2': 50 },
      ['AUTOCLVE 1 for AUTOCLAVE 1'],
    ],
    ['a letter too many', { Steri1: 50, Sterri1: 9 }, ['Sterri1 for Steri1']],
    [
      'a wrong letter',
      { 'North 1': 50, 'Norht 1': 30, 'Morth 1': 20 },
      ['Norht 1 for North 1', 'Morth 1 for North 1'],
    ],
    [
      'of two with as many rows the later',
      { 'Autoclave 1': 5, 'Autoklave 1': 5 },
      ['Autoklave 1 for Autoclave 1'],
    ],
    ['another number is another unit', { 'AUTOCLAVE 1': 50, 'AUTOCLAVE 2': 30, 'AUTOCLAVE 12': 30 }, []],
    ['a letter for a number is another unit', { 'Steri A': 50, 'Steri B': 30, STERA: 20, STERB: 20 }, []],
    ['another number with a slip is another unit', { 'AUTOCLAVE 1': 50, 'AUTOCLVE 2': 30 }, []],
  ])('%s', (_, rows, expected) => {
    expect(doubtsOf(rows)).toEqual(expected);
  });

  const rows = ['Sterilizer,Start,Program,Result'];
  for (let day = 10; day < 30; day++)
    for (let hour = 10; hour < 20; hour++)
      for (const unit of [1, 2])
        rows.push(
          `AUTOCLAVE ${day === 15 && hour === 12 && unit === 1 ? 9 : unit},2025-03-${day} ${hour}:10:00,Wrapped,Completed`,
        );
  const files = { 'cycles.csv': `${rows.join('\n')}\n` };

  it('are printed with their rows, asked about and left out until it is said', async () => {
    await withFolder(files, async (folder) => {
      const learned = await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' });
      expect(describeProposal(learned)).toContain(
        '  rows by unit: AUTOCLAVE 2 200, AUTOCLAVE 1 199, AUTOCLAVE 9 1\n',
      );
      const [question, more] = openQuestions(learned);
      expect([question?.text, question?.options, more]).toEqual([
        'Which unit is "AUTOCLAVE 9" of cycles.csv? Only 1 of 400 rows has it',
        ['AUTOCLAVE 1', 'AUTOCLAVE 2', 'a unit of its own'],
        undefined,
      ]);
      const read = async (proposal: typeof learned) => {
        const text = writeSiteFile(proposal);
        const { records, problems } = await readExports(readSiteFile(text, 'site.yaml'), folder);
        return { text, units: new Set(records.cycles.map(({ unit }) => unit)).size, lost: problems.length };
      };
      const open = await read(learned);
      expect([open.units, open.lost]).toEqual([2, 1]);
      expect(open.text).toContain('- { id: AUTOCLAVE 1 } # 199 rows\n');
      expect(open.text).toContain(
        '#   ? open: "AUTOCLAVE 9" of cycles.csv: only 1 of 400 rows has it. Another name of a unit, whose line is then - { id: …, aliases: [AUTOCLAVE 9] }, or a unit of its own: - { id: AUTOCLAVE 9 }',
      );
      const tied = await read(question!.answer(learned, 'AUTOCLAVE 1')!);
      expect([tied.units, tied.lost]).toEqual([2, 0]);
      expect(tied.text).toContain('- { id: AUTOCLAVE 1, aliases: [AUTOCLAVE 9] } # 199 rows\n');
      const own = await read(question!.answer(learned, 'a unit of its own')!);
      expect([own.units, own.lost]).toEqual([3, 0]);
    });
  });

  it('are looked at site by site, where a column tells the sites', async () => {
    const rows = ['Hospital,Sterilizer,Start,Program,Result'];
    for (let day = 10; day < 30; day++)
      for (let hour = 10; hour < 20; hour++) {
        const at = `2025-03-${day} ${hour}:10:00,Wrapped,Completed`;
        rows.push(`North,S1,${at}`, `South,${day === 15 && hour === 12 ? 'S3' : 'S2'},${at}`);
        if (hour % 2 === 0) rows.push(`South,S1,${at}`);
      }
    await withFolder({ 'cycles.csv': `${rows.join('\n')}\n` }, async (folder) => {
      const learned = await learn(folder, {
        vocabulary: loadVocabulary(),
        zone: 'Europe/Berlin',
        sites: 'column',
      });
      expect(openQuestions(learned).map(({ about, text }) => [about, text])).toEqual([
        ['unit "S3" at South', 'Which unit is "S3" of cycles.csv? Only 1 of 300 rows has it'],
      ]);
      const text = writeSiteFile(learned);
      expect(text).toContain('- { id: North S1, site: North, aliases: [S1] } # 200 rows\n');
      expect(text).toContain('- { id: South S1, site: South, aliases: [S1] } # 100 rows\n');
      expect(text).toContain('- { id: S2, site: South } # 199 rows\n');
    });
  });

  it('the units that a test names otherwise are asked about beside them', async () => {
    const tests = ['Sterilizer,Read at,Result'];
    for (let day = 10; day < 30; day++)
      for (const unit of [1, 2]) tests.push(`AUT${unit},2025-03-${day} 07:00:00,Pass`);
    await withFolder({ ...files, 'bowie dick.csv': `${tests.join('\n')}\n` }, async (folder) => {
      const learned = await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' });
      const [slip, tie, more] = openQuestions(learned);
      expect([slip?.about, tie?.about, more]).toEqual(['unit "AUTOCLAVE 9"', 'units', undefined]);
      const answered = tie!.answer(learned, 'yes')!;
      expect(openQuestions(answered).map(({ about }) => about)).toEqual(['unit "AUTOCLAVE 9"']);
      expect(writeSiteFile(answered)).toContain('- { id: AUTOCLAVE 2, aliases: [AUT2] } # 200 rows\n');
      expect(writeSiteFile(learned)).toContain(
        'Another name of a unit, whose line is then - { id: AUTOCLAVE 2, aliases: [AUT2] }, or a unit of its own: - { id: AUT2 }',
      );
    });
  });
});
