import type { Confidence } from '../../../pipeline/learn/guess.ts';
import { leastSure } from '../../../pipeline/learn/guess.ts';
import type { Proposal, ProposedColumn, ProposedSource } from '../../../pipeline/learn/proposal.ts';
import type { BlindSource, BlindStyle } from './make-blind.ts';

/**
 * `right`: as the truth has it. `question`: left open, to be asked. `marked`: wrong, and marked as likely or not at all certain. `missing`: nothing was proposed, and a
 * field that the record needs is a question. `wrong`: wrong and called certain, the one outcome that must never be.
 */
export type Verdict = 'right' | 'question' | 'marked' | 'missing' | 'wrong';

export interface Judged {
  what: 'column' | 'word' | 'surplus' | 'kind';
  place: string;
  verdict: Verdict;
  found: string;
}

export function judgeStyle(style: BlindStyle, proposal: Proposal): Judged[] {
  return style.sources.flatMap((truth) => judgeSource(style.name, truth, sourceFor(proposal, truth)));
}

export const sourceFor = ({ sources }: Proposal, truth: BlindSource): ProposedSource | undefined =>
  sources.find(({ found }) =>
    found.some(
      (name) =>
        name.includes(truth.file) && (truth.sheet === undefined || name.includes(`(sheet ${truth.sheet})`)),
    ),
  );

function judgeSource(style: string, truth: BlindSource, source: ProposedSource | undefined): Judged[] {
  const place = `${style}: ${truth.file} ${truth.sheet ?? ''}`;
  const kind = verdictOf(source?.kind.value, truth.kind, source?.kind.confidence ?? 'open');
  const judged: Judged[] = [
    { what: 'kind', place, verdict: source ? kind : 'missing', found: source?.kind.value ?? 'nothing' },
  ];
  for (const [field, want] of Object.entries(truth.columns)) {
    const column = source?.columns.find((one) => one.field === field);
    judged.push({
      what: 'column',
      place: `${place} ${field}`,
      verdict: column ? judgeColumn(column, want) : 'missing',
      found: column
        ? JSON.stringify([column.from, column.measure?.value, column.dates?.value, sureness(column)])
        : 'nothing',
    });
  }
  for (const [field, words] of Object.entries(truth.words ?? {}))
    for (const [text, want] of Object.entries(words)) {
      const word = source?.words[field]?.find((one) => one.text.toLowerCase() === text.toLowerCase());
      judged.push({
        what: 'word',
        place: `${place} ${field} "${text}"`,
        verdict: word ? verdictOf(word.word, want ?? undefined, word.confidence) : 'missing',
        found: JSON.stringify([word?.word, word?.confidence, word?.why]),
      });
    }
  for (const column of source?.columns ?? [])
    if (!(column.field in truth.columns))
      judged.push({
        what: 'surplus',
        place: `${place} ${column.field}`,
        verdict: 'always' in column.from ? 'question' : sureness(column) === 'certain' ? 'wrong' : 'marked',
        found: JSON.stringify([column.from, sureness(column)]),
      });
  return judged;
}

function verdictOf(found: string | undefined, want: string | undefined, confidence: Confidence): Verdict {
  if (found === want) return 'right';
  if (found === undefined) return 'question';
  return confidence === 'certain' ? 'wrong' : 'marked';
}

function judgeColumn(column: ProposedColumn, want: BlindSource['columns'][string]): Verdict {
  const { from, measure, dates, match } = column;
  const off: Verdict =
    match.confidence === 'certain' ? 'wrong' : match.confidence === 'open' ? 'question' : 'marked';
  if ('from' in want) return want.from in from ? 'right' : off;
  if (!('headers' in from) || !sameColumns(from.headers, want.headers)) return off;
  if (want.measure !== undefined) {
    if (measure?.value === undefined) return measure ? 'question' : 'wrong';
    if (measure.value !== want.measure) return measure.confidence === 'certain' ? 'wrong' : 'marked';
  }
  if (dates) {
    if (dates.value === undefined) return 'question';
    if (want.dates && !want.dates.some((pattern) => samePattern(pattern, dates.value!)))
      return dates.confidence === 'certain' ? 'wrong' : 'marked';
  }
  return 'right';
}

/** The same columns: of a header in two lines, the lower line alone names a column as well. */
const sameColumns = (found: readonly string[], wanted: readonly string[]): boolean =>
  found.length === wanted.length &&
  found.every((name, at) => wanted[at] === name || wanted[at]!.endsWith(` ${name}`));

/** Patterns that read the same texts: one letter or two for a number that may have one digit, seconds that a text may leave out, a T or a blank before the time. */
const samePattern = (a: string, b: string): boolean => short(a) === short(b) || `${short(a)}:ss` === short(b);
const short = (text: string): string =>
  text.replace(/HH|hh|dd|MMM|MM/g, (part) => (part === 'MMM' ? 'N' : part[0]!)).replace('T', ' ');

const sureness = ({ match, measure, dates }: ProposedColumn): Confidence =>
  leastSure(match.confidence, measure?.confidence ?? 'certain', dates?.confidence ?? 'certain');
