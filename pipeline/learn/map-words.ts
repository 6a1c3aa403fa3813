import type { RecordKind } from '../site/vocabulary.ts';
import { wordList } from './field-concepts.ts';
import type { Confidence } from './guess.ts';
import type { ColumnProfile } from './profile-column.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A word of an export and the record's word that it is proposed to stand for. */
export interface ProposedWord {
  text: string;
  count: number;
  /** Undefined: nobody can tell from the word; rows with it are problems until the site says. */
  word: string | undefined;
  options: readonly string[];
  confidence: Confidence;
  why: string;
}

/**
 * Maps the words of a column. Certain: the vocabulary has the very word, in one meaning. Likely: it has a word near to it. Words that it has not are left, never
 * put under the nearest.
 */
export function mapWords(
  kind: RecordKind,
  field: string,
  column: Pick<ColumnProfile, 'words'>,
  options: readonly string[],
  vocabulary: Vocabulary,
): ProposedWord[] {
  const list = wordList(kind, field);
  if (list === undefined) return [];
  return [...column.words].map(([text, count]): ProposedWord => {
    const found = vocabulary.word(list, text).filter(({ key }) => options.includes(key));
    const [best, second] = found;
    const base = { text, count, options };
    if (!best || best.score < 0.6)
      return { ...base, word: undefined, confidence: 'open', why: 'the word is not known' };
    if (second && second.score >= best.score - 0.04)
      return {
        ...base,
        word: undefined,
        confidence: 'open',
        why: `it may mean ${best.key} or ${second.key}`,
      };
    if (best.score >= 0.94 && !best.weak)
      return { ...base, word: best.key, confidence: 'certain', why: 'the trade’s word for it' };
    return { ...base, word: best.key, confidence: 'likely', why: `near to "${best.phrase}"` };
  });
}
