import { beforeAll, describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { type Judged, judgeStyle, type Verdict } from './blind/judge.ts';
import { makeBlindStyles } from './blind/make-blind.ts';

const judged: Judged[] = [];
beforeAll(async () => {
  for (const style of await makeBlindStyles())
    await withFolder(style.files, async (folder) => {
      judged.push(
        ...judgeStyle(style, await learn(folder, { vocabulary: loadVocabulary(), zone: style.zone })),
      );
    });
}, 120_000);

const share = (what: Judged['what'], verdict: Verdict): [number, number] => {
  const all = judged.filter((one) => one.what === what);
  return [all.filter((one) => one.verdict === verdict).length, all.length];
};

describe('ten styles of exports that nobody had in mind', () => {
  it('figures', () => {
    for (const what of ['kind', 'column', 'word', 'surplus'] as const)
      console.log(
        what,
        (['right', 'question', 'missing', 'marked', 'wrong'] as const)
          .map((verdict) => `${verdict} ${share(what, verdict)[0]}`)
          .join(', '),
        `of ${share(what, 'right')[1]}`,
      );
    console.log(
      judged
        .filter(({ verdict }) => verdict !== 'right')
        .map(({ what, place, verdict, found }) => `${verdict} ${what} ${place}: ${found}`)
        .sort()
        .join('\n'),
    );
    expect(judged.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  });
});
