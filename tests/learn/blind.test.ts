import { beforeAll, describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { type Judged, judgeStyle, sourceFor, type Verdict } from './blind/judge.ts';
import { makeBlindStyles } from './blind/make-blind.ts';

/**
 * Ten styles whose truth was written down before anything was proposed for them. As they came first, 174 of 258 columns were proposed right (67 %), 66 not at all,
 * 110 of 146 words right; two words were wrong without a mark ("No" under "Completed" as failed, a cross beside ticks as done). Nine columns counted as wrong, too: eight
 * of a workbook whose header in two lines was taken for its lower line (the columns were right, by another name), one whose date pattern reads the same texts. The truth
 * was put right since in one word that its file does not hold and in three counts. The floors below are those reached with general words and parts of words,
 * so they say nothing of styles that come next; nothing wrong may stand without a mark, ever.
 */
const FLOOR = { kind: 1, column: 0.98, word: 0.95 } as const;

const judged: Judged[] = [];
const counts: { place: string; found: unknown; expected: unknown }[] = [];
beforeAll(async () => {
  for (const style of await makeBlindStyles())
    await withFolder(style.files, async (folder) => {
      const proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: style.zone });
      judged.push(...judgeStyle(style, proposal));
      const { files } = await readExports(
        readSiteFile(writeSiteFile(answered(proposal)), 'site.yaml'),
        folder,
      );
      for (const truth of style.sources) {
        if (!truth.counts) continue;
        const own = files.filter(({ source }) => source === sourceFor(proposal, truth)?.name);
        const sum = (of: 'records' | 'duplicates' | 'rejected' | 'skipped'): number =>
          own.reduce((total, file) => total + file[of], 0);
        counts.push({
          place: `${style.name}: ${truth.file} ${truth.sheet ?? ''}`,
          found: {
            records: sum('records'),
            duplicates: sum('duplicates'),
            rejected: sum('rejected'),
            skipped: sum('skipped'),
          },
          expected: truth.counts,
        });
      }
    });
}, 120_000);

/** What nobody can tell is answered by its first choice, so that the counts can be read. */
function answered(learned: Proposal): Proposal {
  let proposal = learned;
  for (const question of openQuestions(learned))
    proposal = question.answer(proposal, question.options[0] ?? 'x') ?? proposal;
  return proposal;
}

const share = (what: Judged['what'], verdict: Verdict): number => {
  const all = judged.filter((one) => one.what === what);
  return all.filter((one) => one.verdict === verdict).length / all.length;
};

describe('ten styles of exports that nobody had in mind', () => {
  it('nothing wrong stands without a mark', () => {
    expect(judged.length).toBeGreaterThan(400);
    expect(judged.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  });

  it.each(['kind', 'column', 'word'] as const)('%s: share proposed right is not under its floor', (what) => {
    const all = judged.filter((one) => one.what === what);
    const verdicts = ['right', 'question', 'missing', 'marked', 'wrong'] as const;
    console.log(
      `${what}: ${verdicts.map((verdict) => `${verdict} ${all.filter((one) => one.verdict === verdict).length}`).join(', ')} of ${all.length}`,
      ...all
        .filter(({ verdict }) => verdict !== 'right')
        .map(({ place, verdict, found }) => `\n  ${verdict} ${place}: ${found}`),
    );
    expect(share(what, 'right')).toBeGreaterThanOrEqual(FLOOR[what]);
  });

  it('counts of records, duplicates, problems and skipped rows are exactly right', () => {
    expect(counts.map(({ place, found }) => ({ place, counts: found }))).toEqual(
      counts.map(({ place, expected }) => ({ place, counts: expected })),
    );
  });
});
