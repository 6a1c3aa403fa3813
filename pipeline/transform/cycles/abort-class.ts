import type { AbortText } from '../../site/abort-texts.ts';
import type { AbortClass } from '../../site/vocabulary.ts';

/**
 * The class of an abort by its text: the first row of the table whose phrase the text contains, letter case and runs of blanks aside.
 * Text not matched is `unclassified`: listed, never guessed.
 */
export function abortClass(text: string, table: readonly AbortText[]): AbortClass {
  const folded = text.toLowerCase().replace(/\s+/g, ' ');
  return table.find((row) => folded.includes(row.contains.toLowerCase()))?.class ?? 'unclassified';
}
