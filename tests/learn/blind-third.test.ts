import { beforeAll, describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { type Judged, judgeStyle, sourceFor } from './blind/judge.ts';
import type { BlindSource, BlindStyle } from './blind/make-blind.ts';
import { makeThirdStyles } from './blind-third/make-third.ts';

/**
 * Ten styles (29 tables) by a fourth hand, who knew the trade and had seen neither the vocabularies nor the other thirty; the list of fields and the remark on the second
 * set's first figures were known. They were committed with their truth before anything was measured, and were measured once; nothing was mended for them, in the
 * reading or in the truth. As they came first:
 *
 * - kinds: right 29 of 29
 * - columns: right 179 of 195 (92 %; a question 5, not proposed 7, wrong and marked so 3, wrong and called certain 1); no column too many
 * - words: right 113 of 117 (97 %; a question 3, called certain and wrong 1)
 * - counts of records, duplicates, problems and skipped rows: exact for 29 of 29 tables, with the questions answered
 *
 * To judge them by: in four of the five questions on columns all days of the table lie between 1 and 12, so that its dates alone can't tell their order. The three
 * that are wrong and marked are two pairs of a date as a cell with a time of day as text, which reading does not join either, and a day on which cleaning was due in
 * place of the day on which it was done. Of the two called certain, one lost the time of day in columns named "from" and "until" (German) beside the date; the other,
 * a laboratory's cycle for waste, is production by this truth and another cycle by the proposal, and can be argued both ways.
 *
 * The floors are these first figures.
 */
const FIRST = {
  kind: { right: 29, all: 29 },
  column: { right: 179, all: 195 },
  word: { right: 113, all: 117 },
  counts: { exact: 29, all: 29 },
} as const;

/** Wrong and called certain when first measured; nothing else may be. */
const WRONG_AT_FIRST = ['swiss: Reinigung  time', 'laboratory: autoclave runs  kind "Waste"'];

interface Counted {
  place: string;
  found: BlindSource['counts'];
  expected: BlindSource['counts'];
}

const judged: (Judged & { style: string })[] = [];
const counted: (Counted & { style: string })[] = [];

beforeAll(async () => {
  for (const style of await makeThirdStyles()) await measure(style);
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

describe('ten styles of exports by a fourth hand', () => {
  it('nothing wrong stands without a mark but what did at first', () => {
    const wrong = judged.filter(({ verdict }) => verdict === 'wrong').map(({ place }) => place);
    expect(wrong.filter((place) => !WRONG_AT_FIRST.includes(place))).toEqual([]);
    expect(wrong.length).toBeLessThanOrEqual(WRONG_AT_FIRST.length);
  });

  it.each(['kind', 'column', 'word'] as const)('%s: no fewer are proposed right than at first', (what) => {
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
    expect(all).toHaveLength(FIRST[what].all);
    expect(all.filter(({ verdict }) => verdict === 'right').length).toBeGreaterThanOrEqual(FIRST[what].right);
  });

  it('counts of records, duplicates, problems and skipped rows: no fewer are exact than at first', () => {
    const off = counted.filter((one) => !exact(one));
    console.log(
      `counts: exact ${counted.length - off.length} of ${counted.length}`,
      ...off.map(
        ({ place, found, expected }) =>
          `\n    ${place}: ${JSON.stringify(found)}, truth ${JSON.stringify(expected)}`,
      ),
    );
    expect(counted).toHaveLength(FIRST.counts.all);
    expect(counted.length - off.length).toBeGreaterThanOrEqual(FIRST.counts.exact);
  });
});
