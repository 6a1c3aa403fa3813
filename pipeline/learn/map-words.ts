import type { RecordKind } from '../site/vocabulary.ts';
import { BY_PARTS } from './compose-header.ts';
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

/** A yes or no that means nothing without the header above it. */
const BARE =
  /^(?:yes|no|y|n|ja|nein|j|oui|non|o|s[i\u00ed]|s|true|false|wahr|falsch|vrai|faux|verdadero|falso|1|0|x|\u2713|\u2714|\u221a|\u2611)$/iu;
const POLAR = new Set(['outcome', 'result', 'state']);
const TICK = /^[\u2713\u2714\u221a\u2611]$/u;
export const RING = /^[o0\u25cb\u25ef]$/iu;
const CROSS = /^[x\u00d7\u2717\u2718]$/iu;

/**
 * Maps the words of a column. Certain: the vocabulary has the very word, in one meaning. Likely: it has a word near to it. Words that it has not are left, never
 * put under the nearest.
 */
export function mapWords(
  kind: RecordKind,
  field: string,
  column: Pick<ColumnProfile, 'words'> & { header?: string },
  options: readonly string[],
  vocabulary: Vocabulary,
): ProposedWord[] {
  const list = wordList(kind, field);
  if (list === undefined) return [];
  const turned = column.header !== undefined && vocabulary.isNegative(column.header);
  const ticked = [...column.words.keys()].some((text) => TICK.test(text));
  const crossed = ticked || [...column.words.keys()].some((text) => CROSS.test(text));
  // "o" is a letter for yes beside one for no, "0" a no beside "1"; else it may be a ring.
  const denied = [...column.words.keys()].some((text) => /^(?:n|non|1)$/i.test(text));
  const ringed = crossed && [...column.words.keys()].some((text) => RING.test(text));
  return [...column.words].map(([text, count]): ProposedWord => {
    const whole = vocabulary.word(list, text).filter(({ key }) => options.includes(key));
    // "WRAP134" is near to "wrap".
    const apart = text.replace(/(\p{L})(?=\d)/gu, '$1 ');
    const found =
      whole.length > 0 || apart === text
        ? whole
        : vocabulary.word(list, apart).filter(({ key }) => options.includes(key));
    const [best, second] = found;
    const base = { text, count, options };
    if (field === 'state' && ticked && CROSS.test(text))
      return {
        ...base,
        word: undefined,
        confidence: 'open',
        why: 'a cross beside ticks may mean done or not done',
      };
    if (field === 'state' && RING.test(text) && crossed)
      return {
        ...base,
        word: undefined,
        confidence: 'open',
        why: 'a ring beside crosses or ticks may mean done or not done',
      };
    if (BARE.test(text) && POLAR.has(field) && turned)
      return {
        ...base,
        word: undefined,
        confidence: 'open',
        why: `under "${column.header}" it may mean the contrary of what it does elsewhere`,
      };
    if (!best || best.score < 0.6)
      return { ...base, word: undefined, confidence: 'open', why: 'the word is not known' };
    if (second && second.score >= best.score - 0.04)
      return {
        ...base,
        word: undefined,
        confidence: 'open',
        why: `it may mean ${best.key} or ${second.key}`,
      };
    if (field === 'state' && RING.test(text) && !denied)
      return {
        ...base,
        word: best.key,
        confidence: 'likely',
        why: 'a ring, or a letter for yes',
      };
    if (field === 'state' && ringed && CROSS.test(text))
      return {
        ...base,
        word: best.key,
        confidence: 'likely',
        why: 'usual, but a ring stands beside it',
      };
    if (best.score >= 0.94 && !best.weak && whole.length > 0)
      return { ...base, word: best.key, confidence: 'certain', why: 'the trade’s word for it' };
    const why =
      best.phrase === BY_PARTS
        ? 'its parts say so'
        : best.weak
          ? 'usual, but it may mean something else'
          : `near to "${best.phrase}"`;
    return { ...base, word: best.key, confidence: 'likely', why };
  });
}
