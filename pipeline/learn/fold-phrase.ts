/** A phrase as it is compared: lower case, without accents, punctuation as blanks. Marks such as a tick stay. */
export function foldPhrase(text: string): string {
  return text
    .replaceAll('#', ' no ')
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, '$1 $2')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/[^\p{L}\p{N}\p{So}√]+|[°º]/gu, ' ')
    .trim();
}

/** Words that join others and mean nothing by themselves. */
const JOINING = new Set([
  'of',
  'the',
  'in',
  'der',
  'des',
  'die',
  'das',
  'im',
  'de',
  'du',
  'la',
  'le',
  'l',
  'd',
  'el',
  'en',
  'del',
]);

/** Texts whose words are remembered at once: the vocabulary's phrases, and those that are compared with them. */
const REMEMBERED = 50_000;
const known = new Map<string, readonly string[]>();

function tokensOf(folded: string): readonly string[] {
  const before = known.get(folded);
  if (before) return before;
  if (known.size >= REMEMBERED) known.clear();
  const tokens = cut(folded);
  known.set(folded, tokens);
  return tokens;
}

/** The words that mean something. A letter joins only before a word and not after another letter: "test d etancheite", but "b d 134" and "n d". */
const cut = (folded: string): string[] =>
  folded
    .split(' ')
    .filter(
      (token, at, all) =>
        token !== '' &&
        !(
          JOINING.has(token) &&
          (token.length > 1 || (/^\p{L}{2}/u.test(all[at + 1] ?? '') && all[at - 1]?.length !== 1))
        ),
    );

/**
 * How near a folded text comes to a folded phrase, 0 to 1: 1 the same; 0.95 the same words in another order; 0.9 the same words, some cut short; less where the
 * text says more than the phrase, by how much more; a phrase of at least five letters inside a longer word (as German joins words) counts a little.
 */
export function nearness(text: string, phrase: string): number {
  if (text === phrase) return 1;
  if (text.length === phrase.length + 1 || phrase.length === text.length + 1)
    if (text.replaceAll(' ', '') === phrase.replaceAll(' ', '')) return 0.97;
  const words = tokensOf(text);
  const wanted = tokensOf(phrase);
  if (words.length === 0 || wanted.length === 0) return 0;
  if (words.length === wanted.length) {
    if (wanted.every((word) => words.includes(word))) return 0.95;
    if (wanted.every((word, at) => isCutShort(words[at]!, word))) return 0.8;
  }
  const held = wanted.filter((word) => words.includes(word)).length;
  if (held === wanted.length) return 0.5 + 0.3 * (wanted.length / words.length);
  if (phrase.length >= 5 && text.includes(phrase)) return 0.55;
  return 0;
}

/** "evac" or "prog" for a longer word; at least three letters, or the first letters before a digit. */
const isCutShort = (short: string, long: string): boolean =>
  short === long || (short.length >= 3 && long.length > short.length && long.startsWith(short));
