import { beforeAll, describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { leastSure } from '../../pipeline/learn/guess.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal, ProposedColumn, ProposedSource } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { makeStyles, type SourceTruth, type Style } from './styles/make-styles.ts';

interface Outcome {
  style: Style;
  proposal: Proposal;
  counts: Map<string, SourceTruth['counts']>;
}

/** What was proposed for each true column and what is wrong with it. */
interface Judged {
  place: string;
  right: boolean;
  confidence: string;
  found: string;
}

const outcomes: Outcome[] = [];
beforeAll(async () => {
  for (const style of await makeStyles()) {
    await withFolder(style.files, async (folder) => {
      const proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: style.zone });
      // What nobody can tell is answered by its first choice, so that the counts can be read.
      let answered = proposal;
      for (const question of openQuestions(proposal))
        if (!/ "/.test(question.about))
          answered = question.answer(answered, question.options[0] ?? 'x') ?? answered;
      const reading = await readExports(readSiteFile(writeSiteFile(answered), 'site.yaml'), folder);
      const counts = new Map<string, SourceTruth['counts']>();
      for (const { source, records, duplicates, rejected, skipped } of reading.files) {
        const sum = counts.get(source) ?? { records: 0, duplicates: 0, rejected: 0, skipped: 0 };
        counts.set(source, {
          records: sum.records + records,
          duplicates: sum.duplicates + duplicates,
          rejected: sum.rejected + rejected,
          skipped: sum.skipped + skipped,
        });
      }
      outcomes.push({ style, proposal, counts });
    });
  }
}, 120_000);

const sourceFor = ({ sources }: Proposal, truth: SourceTruth): ProposedSource | undefined =>
  sources.find(({ found }) =>
    found.some(
      (name) =>
        name.includes(truth.file) && (truth.sheet === undefined || name.includes(`(sheet ${truth.sheet})`)),
    ),
  );

function judge({ style, proposal }: Outcome): Judged[] {
  return style.truth.flatMap((truth) => {
    const source = sourceFor(proposal, truth);
    const rightKind = source?.kind.value === truth.kind;
    return Object.entries(truth.columns).map(([field, want]): Judged => {
      const column = source?.columns.find((one) => one.field === field);
      const place = `${style.name}: ${truth.file} ${truth.sheet ?? ''} ${field}`;
      if (!column) return { place, right: false, confidence: 'none', found: 'nothing' };
      return {
        place,
        right: rightKind && isRight(column, want, truth),
        confidence: sureness(column),
        found: JSON.stringify([column.from, column.measure?.value, column.dates?.value]),
      };
    });
  });
}

function isRight(column: ProposedColumn, want: SourceTruth['columns'][string], truth: SourceTruth): boolean {
  const { from, measure, dates } = column;
  if (want.headers && !('headers' in from && from.headers.join('|') === want.headers.join('|'))) return false;
  if (want.other && !(want.other in from)) return false;
  if (want.measure !== undefined && measure?.value !== want.measure) return false;
  if (!dates || truth.dates === undefined) return true;
  const wanted = typeof truth.dates === 'string' ? [truth.dates] : truth.dates;
  if (wanted.length > 1)
    return dates.value === undefined && wanted.every((pattern) => dates.options.includes(pattern));
  // A pattern of a text without a time reads the same as the longer one.
  return dates.value !== undefined && samePattern(dates.value, wanted[0]!);
}

const samePattern = (a: string, b: string): boolean => {
  const digits = (text: string): string =>
    text
      .replaceAll('HH', 'H')
      .replaceAll('hh', 'h')
      .replaceAll('dd', 'd')
      .replaceAll('MMM', 'N')
      .replaceAll('MM', 'M');
  return digits(a) === digits(b);
};

const sureness = ({ match, measure, dates }: ProposedColumn): string =>
  leastSure(match.confidence, measure?.confidence ?? 'certain', dates?.confidence ?? 'certain');

/** Columns that were proposed for a field that the truth does not give them. */
function surplus({ style, proposal }: Outcome): Judged[] {
  return style.truth.flatMap((truth) => {
    const source = sourceFor(proposal, truth);
    return (source?.columns ?? [])
      .filter(({ field }) => !(field in truth.columns))
      .map((column) => ({
        place: `${style.name}: ${truth.file} ${column.field}`,
        right: false,
        confidence: sureness(column),
        found: JSON.stringify(column.from),
      }));
  });
}

describe('ten styles of exports', () => {
  it('at least 95 % of the columns are proposed right; what is wrong is never called certain', () => {
    const judged = outcomes.flatMap(judge);
    const wrong = [...judged.filter(({ right }) => !right), ...outcomes.flatMap(surplus)];
    const share = judged.filter(({ right }) => right).length / judged.length;
    const sure = judged.filter(({ right, confidence }) => right && confidence === 'certain').length;
    console.log(
      [
        `Columns proposed right: ${judged.filter(({ right }) => right).length} of ${judged.length} (${(100 * share).toFixed(1)} %), ${sure} of them as certain; wrong or too much: ${wrong.length}`,
        ...wrong.map(({ place, confidence, found }) => `  ${place} (${confidence}): ${found}`),
      ].join('\n'),
    );
    expect(outcomes).toHaveLength(10);
    expect(share).toBeGreaterThanOrEqual(0.95);
    expect(wrong.filter(({ confidence }) => confidence === 'certain')).toEqual([]);
  });

  it('counts of records, duplicates, problems and skipped rows are exactly right', () => {
    const found = outcomes.flatMap(({ style, proposal, counts }) =>
      style.truth.map((truth) => [
        style.name,
        truth.file,
        truth.sheet,
        counts.get(sourceFor(proposal, truth)?.name ?? ''),
      ]),
    );
    const expected = outcomes.flatMap(({ style }) =>
      style.truth.map((truth) => [style.name, truth.file, truth.sheet, truth.counts]),
    );
    expect(found).toEqual(expected);
  });

  it('decimal marks and kinds are right', () => {
    for (const { style, proposal } of outcomes)
      for (const truth of style.truth) {
        const source = sourceFor(proposal, truth)!;
        expect([style.name, truth.file, source?.kind.value]).toEqual([style.name, truth.file, truth.kind]);
        if (truth.decimal)
          expect([style.name, source.decimalMark.value]).toEqual([style.name, truth.decimal]);
      }
  });
});
