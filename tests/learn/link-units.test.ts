import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';

const days = Array.from({ length: 12 }, (_, at) => `2025-03-${String(at + 10)}`);
const files = (cycles: readonly string[], tests: readonly string[]) => ({
  'cycles.csv': [
    'Sterilizer,Start,Program,Result',
    ...days.flatMap((day) => cycles.map((unit) => `${unit},${day} 06:10:00,Wrapped,Completed`)),
    '',
  ].join('\n'),
  'bowie dick.csv': [
    'Sterilizer,Read at,Result',
    ...days.flatMap((day) => tests.map((unit) => `${unit},${day} 07:00:00,Pass`)),
    '',
  ].join('\n'),
});

/** Units of the tests that are read, after answers to what is asked. */
async function testUnits(cycles: readonly string[], tests: readonly string[], answers: readonly string[]) {
  return withFolder(files(cycles, tests), async (folder) => {
    let proposal: Proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' });
    const asked: string[] = [];
    for (const answer of answers) {
      const [question] = openQuestions(proposal);
      asked.push(question?.text ?? 'nothing');
      proposal = question?.answer(proposal, answer) ?? proposal;
    }
    const text = writeSiteFile(proposal);
    const { records, problems } = await readExports(readSiteFile(text, 'site.yaml'), folder);
    return {
      asked,
      text,
      open: openQuestions(proposal).length,
      units: [...new Set(records.air_removal_tests.map(({ unit }) => unit))],
      problems: [...new Set(problems.map(({ code }) => code))],
    };
  });
}

describe('units with another name in the tests', () => {
  it('are asked about at once where their numbers speak for it', async () => {
    const found = await testUnits(['STER-01', 'STER-02'], ['1', '2'], ['yes']);
    expect(found.asked).toEqual([
      'Are "1", "2" of bowie dick.csv the units "STER-01", "STER-02" of the cycles, in this order?',
    ]);
    expect([found.units, found.problems, found.open]).toEqual([['STER-01', 'STER-02'], [], 0]);
  });

  it('one by one where they do not, or where the answer was no', async () => {
    const found = await testUnits(['STER-01', 'STER-02'], ['1', '2'], ['no', 'STER-02', 'a unit of its own']);
    expect([found.units, found.problems, found.open]).toEqual([['2', 'STER-02'], [], 0]);
    const left = await testUnits(['North', 'South'], ['Nord'], ['1']);
    expect(left.asked[0]).toContain('Which unit is "Nord" of bowie dick.csv? No log of cycles has it');
    expect(left.units).toEqual(['North']);
  });

  it('unanswered they are marked, and their rows are problems and no units', async () => {
    const found = await testUnits(['STER-01', 'STER-02'], ['1', '2'], []);
    expect(found.text).toContain(
      '#   ? open: "1" of bowie dick.csv is in no log of cycles; by its number it may be "STER-01"',
    );
    expect([found.units, found.problems, found.open]).toEqual([[], ['unknown_unit'], 1]);
  });

  it('may have names that are no ids: those stand as aliases', async () => {
    const found = await testUnits(['Steri #1', 'Steri #2'], ['1', '2'], ['yes']);
    expect([found.units, found.problems]).toEqual([['Steri 1', 'Steri 2'], []]);
  });

  it('are not asked about where they are the same but for letter case and blanks', async () => {
    const found = await testUnits(['Steri 1', 'Steri 2'], ['STERI  1', 'steri 2'], []);
    expect([found.open, found.problems]).toEqual([0, []]);
  });

  it('are asked about at each of several sites by itself', async () => {
    const north = files(['STER-01', 'STER-02'], ['1', '2']);
    const south = files(['STER-01'], ['STER-01']);
    const all = Object.fromEntries([
      ...Object.entries(north).map(([name, text]) => [`north/${name}`, text]),
      ...Object.entries(south).map(([name, text]) => [`south/${name}`, text]),
    ]) as Record<string, string>;
    await withFolder(all, async (folder) => {
      const proposal = await learn(folder, {
        vocabulary: loadVocabulary(),
        zone: 'Europe/Berlin',
        sites: 'folder',
      });
      const [question, more] = openQuestions(proposal);
      expect(question?.text).toBe(
        'Are "1", "2" of north/bowie dick.csv the units "STER-01", "STER-02" of the cycles at north, in this order?',
      );
      expect(more).toBeUndefined();
      const read = async (one: Proposal) => {
        const { records, problems } = await readExports(
          readSiteFile(writeSiteFile(one), 'site.yaml'),
          folder,
        );
        return [[...new Set(records.air_removal_tests.map(({ unit }) => unit))], problems.length];
      };
      expect(await read(proposal)).toEqual([['south STER-01'], 24]);
      expect(await read(question!.answer(proposal, 'yes')!)).toEqual([
        ['STER-02', 'north STER-01', 'south STER-01'],
        0,
      ]);
    });
  });
});
