import type { AbortText } from '../../site/abort-texts.ts';
import { foldText } from '../../site/fold-text.ts';
import type { AbortClass } from '../../site/vocabulary.ts';

/**
 * The class of an abort by its text: the first row of the table whose phrase the text contains, both folded (letter case, blanks, accents).
 * Text not matched is `unclassified`: listed, never guessed.
 *
 * @returns the class of a text; phrases are folded once, and each text is looked for once
 */
export function abortClasses(table: readonly AbortText[]): (text: string) => AbortClass {
  const rows = table.map((row) => ({ phrase: foldText(row.contains), class: row.class }));
  const known = new Map<string, AbortClass>();
  return (text) => {
    let found = known.get(text);
    if (found === undefined) {
      const folded = foldText(text);
      found = rows.find(({ phrase }) => folded.includes(phrase))?.class ?? 'unclassified';
      known.set(text, found);
    }
    return found;
  };
}
