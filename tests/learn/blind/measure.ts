import { readExports } from '../../../pipeline/ingest/read-exports.ts';
import { learn } from '../../../pipeline/learn/learn.ts';
import type { Proposal } from '../../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { withFolder } from '../../ingest/read-folder.ts';
import { type Judged, judgeStyle, sourceFor } from './judge.ts';
import type { BlindSource, BlindStyle } from './make-blind.ts';

/** Counts of a table as they were read, beside the truth. */
export interface Counted {
  place: string;
  found: BlindSource['counts'];
  expected: BlindSource['counts'];
}

/** What became of a set of styles: each kind, column and word, and the counts of each table. */
export interface Measured {
  judged: (Judged & { style: string })[];
  counted: Counted[];
}

/** Whether the truth counts a table of its own or all that its source holds. */
export type CountsOf = 'table' | 'source';

/** Puts a set of styles to `learn`, and reads their files by what it proposed, with each question answered by its first choice. */
export async function measure(
  styles: readonly BlindStyle[],
  countsOf: CountsOf = 'table',
): Promise<Measured> {
  const measured: Measured = { judged: [], counted: [] };
  for (const style of styles)
    await withFolder(style.files, (folder) => measureStyle(style, folder, countsOf, measured));
  return measured;
}

async function measureStyle(
  style: BlindStyle,
  folder: string,
  countsOf: CountsOf,
  { judged, counted }: Measured,
): Promise<void> {
  const proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: style.zone });
  judged.push(...judgeStyle(style, proposal).map((one) => ({ ...one, style: style.name })));
  const { files } = await readExports(readSiteFile(writeSiteFile(answered(proposal)), 'site.yaml'), folder);
  for (const truth of style.sources) {
    const name = sourceFor(proposal, truth)?.name;
    const own = files.filter(
      ({ source, file, sheet }) =>
        source === name &&
        (countsOf === 'source' ||
          (file.includes(truth.file) && (truth.sheet === undefined || sheet === truth.sheet))),
    );
    const sum = (of: keyof NonNullable<BlindSource['counts']>): number =>
      own.reduce((total, file) => total + file[of], 0);
    counted.push({
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
}

/** What nobody can tell is answered by its first choice, so that the counts can be read. */
function answered(learned: Proposal): Proposal {
  let proposal = learned;
  for (const question of openQuestions(learned))
    proposal = question.answer(proposal, question.options[0] ?? 'x') ?? proposal;
  return proposal;
}

const VERDICTS = ['right', 'question', 'missing', 'marked', 'wrong'] as const;
const tally = (list: readonly Judged[]): string =>
  VERDICTS.map((verdict) => `${verdict} ${list.filter((one) => one.verdict === verdict).length}`).join(', ');

/** How kinds, columns or words came out, style by style, with all that is not right. */
export function describeJudged(what: Judged['what'], judged: Measured['judged']): string {
  const all = judged.filter((one) => one.what === what);
  return [
    `${what}: ${tally(all)} of ${all.length}`,
    ...[...new Set(all.map(({ style }) => style))].map(
      (style) => `  ${style}: ${tally(all.filter((one) => one.style === style))}`,
    ),
    ...all
      .filter(({ verdict }) => verdict !== 'right')
      .map(({ place, verdict, found }) => `    ${verdict} ${place}: ${found}`),
  ].join('\n');
}

/** Tables whose counts are not exactly those of the truth. */
export const countedOff = (counted: readonly Counted[]): Counted[] =>
  counted.filter(({ found, expected }) => JSON.stringify(found) !== JSON.stringify(expected));

/** How many counts are exact, with all that are not. */
export const describeCounted = (counted: readonly Counted[]): string =>
  [
    `counts: exact ${counted.length - countedOff(counted).length} of ${counted.length}`,
    ...countedOff(counted).map(
      ({ place, found, expected }) =>
        `    ${place}: ${JSON.stringify(found)}, truth ${JSON.stringify(expected)}`,
    ),
  ].join('\n');
