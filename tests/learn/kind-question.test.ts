import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';

const WORK = ['Door seal replaced', 'Vacuum pump overhaul', 'Drain valve replaced', 'Door seal replaced'];
const sheet = (header: string, rest: (day: string) => string) =>
  [header, ...WORK.map((work, at) => `2025-03-1${at},${work}${rest(`2025-03-1${at}`)}`), ''].join('\n');

const learned = (files: Record<string, string>, use: (proposal: Proposal, folder: string) => Promise<void>) =>
  withFolder(files, async (folder) =>
    use(await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' }), folder),
  );

describe('the kind of a file', () => {
  it.each([
    ['repairs.csv', sheet('Date,Description,Engineer', () => ',Contractor')],
    ['repairs.csv', sheet('Date,Action taken,Completed on', (day) => `,${day}`)],
    ['repairs.csv', sheet('Raised,Action,Due,Done on,State', (day) => `,${day},${day},open`)],
  ])('%s is no list of actions without a question: %s', async (file, text) => {
    await learned({ [file]: text }, async ({ sources: [source] }) => {
      const { kind } = source!;
      if (kind.value !== 'service')
        expect([kind.confidence, kind.options]).toEqual([
          'open',
          expect.arrayContaining(['actions', 'service']),
        ]);
    });
  });

  it('that its name contradicts is a question, which says what other kinds lack', async () => {
    await learned(
      { 'repairs.csv': sheet('Raised,Action,Due,Done on,State', (day) => `,${day},${day},open`) },
      async (proposal) => {
        const [question] = openQuestions(proposal);
        expect(question?.about).toBe('records, repairs: kind');
        expect(question?.text).toMatch(
          /by its name it may be service; no column of unit, so it can be service only where one holds for all rows/,
        );
      },
    );
  });

  it('read as the kind that was said it has the columns of that kind, and a site file that works', async () => {
    const text = sheet('Raised,Action,Due,Done on,State', (day) => `,${day},${day},open`);
    await learned({ 'repairs.csv': text }, async (learnt, folder) => {
      const [kind] = openQuestions(learnt);
      const read = async (answers: readonly string[]) => {
        let proposal = kind!.answer(learnt, answers[0]!)!;
        for (const answer of answers.slice(1)) {
          const [question] = openQuestions(proposal);
          proposal = question!.answer(proposal, answer)!;
        }
        expect(openQuestions(proposal)).toEqual([]);
        return readExports(readSiteFile(writeSiteFile(proposal), 'site.yaml'), folder);
      };
      const actions = await read(['actions']);
      expect(actions.records.actions.map(({ action }) => action)).toEqual(WORK);
      const service = await read(['service', 'S1', 'maintenance']);
      expect(service.problems).toEqual([]);
      expect(service.records.service.map(({ unit, kind }) => [unit, kind])).toEqual([
        ['S1', 'repair'],
        ['S1', 'maintenance'],
        ['S1', 'repair'],
        ['S1', 'repair'],
      ]);
    });
  });

  it('of a log of repairs whose texts are remarks: they say the kind of service, and stay', async () => {
    const text = sheet('Date,Unit,Description', () => '').replaceAll(/,([A-Z][a-z]+ )/g, ',S1,$1');
    await learned({ 'repairs.csv': text }, async (learnt, folder) => {
      expect(learnt.sources[0]?.kind.value).toBe('service');
      const { records, problems } = await readExports(
        readSiteFile(writeSiteFile(learnt), 'site.yaml'),
        folder,
      );
      expect(records.service.map(({ kind, note }) => [kind, note])).toEqual([
        ['repair', WORK[0]],
        ['repair', WORK[2]],
        ['repair', WORK[3]],
      ]);
      expect(problems.map(({ value }) => value)).toEqual([WORK[1]]);
    });
  });

  it('that no name contradicts is none', async () => {
    const text = sheet('Raised,Action,Due,Done on,State', (day) => `,${day},${day},open`);
    await learned({ 'action list.csv': text }, async ({ sources: [source] }) =>
      expect(source?.kind).toMatchObject({ value: 'actions', confidence: 'certain' }),
    );
  });
});
