import type { ProposedWord } from './map-words.ts';
import type { Vocabulary } from './vocabulary.ts';

/** "x = done", "o: vergessen"; a mark of one or two characters. */
const ENTRY =
  /(?:^|[\s,;|(])([^\s,;|()=:\d]{1,2})\s*[=:]\s*([^,;|()=]+?)(?=\s*(?:[,;|()]|$|\s[^\s,;|()=:]{1,2}\s*[=:]))/gu;

/** The legend of a sheet: what the rows above its header say of its marks. */
export function legendOf(above: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const text of above)
    for (const [, mark = '', meaning = ''] of text.matchAll(ENTRY))
      if (!found.has(mark.toLowerCase())) found.set(mark.toLowerCase(), meaning.trim());
  return found;
}

/** The sheet's own legend rules over what a mark usually means; where its words are not known, the mark is a question. */
export function byLegend(
  words: readonly ProposedWord[],
  legend: ReadonlyMap<string, string>,
  vocabulary: Vocabulary,
): ProposedWord[] {
  return words.map((word): ProposedWord => {
    const says = legend.get(word.text.toLowerCase());
    if (says === undefined) return word;
    const [best, second] = vocabulary.word('state', says).filter(({ key }) => word.options.includes(key));
    const why = `the sheet says "${word.text} = ${says}"`;
    if (!best || best.score < 0.6 || (second && second.score >= best.score - 0.04))
      return { ...word, word: undefined, confidence: 'open', why };
    return {
      ...word,
      word: best.key,
      confidence: best.score >= 0.94 && !best.weak ? 'certain' : 'likely',
      why,
    };
  });
}
