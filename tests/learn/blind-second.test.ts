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
import type { BlindSource, BlindStyle } from './blind/make-blind.ts';
import { makeSecondStyles } from './blind-second/make-second.ts';

/**
 * Ten styles by a third hand, who knew the trade and had seen neither the vocabularies nor the other twenty; they were committed with their truth before anything was
 * measured. As they came first: kinds right 30 of 36 (a question 1, nothing proposed 2, wrong and marked so 3); columns right 207 of 260 (80 %; a question 4, not
 * proposed 45, wrong and marked so 3, wrong and called certain 1); words right 101 of 139 (73 %; a question 20, not proposed 16, marked 1, called certain 1); two
 * columns too many that were called certain; counts exact for 30 of 36 tables (31 by the truth put right). The four that were wrong without a mark: a single slip that turned the order of
 * day and month, a ring beside crosses read as done, and twice the pass or fail of a leak test that was taken for another test. Cycles of a laboratory's "media" were
 * skipped as lines of means. Mended in general (see the rules in `marks-and-slips.test.ts`), now: kinds 36 of 36, columns 259 of 260, words 137 of 139, counts 36 of 36,
 * none wrong. The set is no longer blind by that: what the next export gives lies nearer to the first figures than to these.
 *
 * Put right in the truth after the first measurement: the counts of one sheet, which stood for its question unanswered while the counts are taken with questions answered.
 * Changed before it, when the truth was read by hand-written site files: seeds, so that each word occurs, and a time of day as a cell of time.
 */
const FLOOR = { kind: 1, column: 0.98, word: 0.97, counts: 1 } as const;

interface Counted {
  place: string;
  found: BlindSource['counts'];
  expected: BlindSource['counts'];
}

const judged: (Judged & { style: string })[] = [];
const counted: (Counted & { style: string })[] = [];

beforeAll(async () => {
  for (const style of await makeSecondStyles()) await measure(style);
}, 120_000);

async function measure(style: BlindStyle): Promise<void> {
  await withFolder(style.files, async (folder) => {
    const proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: style.zone });
    judged.push(...judgeStyle(style, proposal).map((one) => ({ ...one, style: style.name })));
    const { files } = await readExports(readSiteFile(writeSiteFile(answered(proposal)), 'site.yaml'), folder);
    for (const truth of style.sources) {
      const name = sourceFor(proposal, truth)?.name;
      const own = files.filter(
        ({ source, file, sheet }) =>
          source === name &&
          file.includes(truth.file) &&
          (truth.sheet === undefined || sheet === truth.sheet),
      );
      const sum = (of: keyof NonNullable<BlindSource['counts']>): number =>
        own.reduce((total, file) => total + file[of], 0);
      counted.push({
        style: style.name,
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
}

/** What nobody can tell is answered by its first choice, so that the counts can be read. */
function answered(learned: Proposal): Proposal {
  let proposal = learned;
  for (const question of openQuestions(learned))
    proposal = question.answer(proposal, question.options[0] ?? 'x') ?? proposal;
  return proposal;
}

const exact = ({ found, expected }: Counted): boolean => JSON.stringify(found) === JSON.stringify(expected);
const VERDICTS = ['right', 'question', 'missing', 'marked', 'wrong'] as const;
const tally = (list: readonly Judged[]): string =>
  VERDICTS.map((verdict) => `${verdict} ${list.filter((one) => one.verdict === verdict).length}`).join(', ');
const share = (what: Judged['what'], verdict: Verdict): number => {
  const all = judged.filter((one) => one.what === what);
  return all.filter((one) => one.verdict === verdict).length / all.length;
};

describe('ten styles of exports by a third hand', () => {
  it('nothing wrong stands without a mark', () => {
    expect(judged.length).toBeGreaterThan(400);
    expect(judged.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  });

  it.each(['kind', 'column', 'word'] as const)('%s: share proposed right is not under its floor', (what) => {
    const all = judged.filter((one) => one.what === what);
    console.log(
      `${what}: ${tally(all)} of ${all.length}`,
      ...[...new Set(all.map(({ style }) => style))].map(
        (style) => `\n  ${style}: ${tally(all.filter((one) => one.style === style))}`,
      ),
      ...all
        .filter(({ verdict }) => verdict !== 'right')
        .map(({ place, verdict, found }) => `\n    ${verdict} ${place}: ${found}`),
    );
    expect(share(what, 'right')).toBeGreaterThanOrEqual(FLOOR[what]);
  });

  it('counts of records, duplicates, problems and skipped rows: share exactly right is not under its floor', () => {
    const off = counted.filter((one) => !exact(one));
    console.log(
      `counts: exact ${counted.length - off.length} of ${counted.length}`,
      ...off.map(
        ({ place, found, expected }) =>
          `\n    ${place}: ${JSON.stringify(found)}, truth ${JSON.stringify(expected)}`,
      ),
    );
    expect((counted.length - off.length) / counted.length).toBeGreaterThanOrEqual(FLOOR.counts);
  });
});
