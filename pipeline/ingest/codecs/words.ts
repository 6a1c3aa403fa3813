import { foldName } from '../../site/unit-names.ts';
import { UserError } from '../../user-error.ts';

type Mapping = Readonly<Record<string, string | readonly string[]>>;

const fold = (text: string): string => foldName(text.normalize('NFC'));

/** Words for yes and no in English, German, French and Spanish. */
const YES = ['yes', 'y', 'true', '1', 'ja', 'j', 'oui', 'o', 'sí', 'si', 's'];
const NO = ['no', 'n', 'false', '0', 'nein', 'non'];

/**
 * Reader of words: the record's own words (underscores may be blanks) and those that the site maps onto them, letter case and blanks aside. What the
 * site maps rules over the record's own words.
 *
 * @throws UserError `mapped_word` where one word is mapped onto two
 */
export function wordReader<Value>(
  own: readonly (readonly [string, Value])[],
  mapping: Mapping,
  keyOf: (key: string) => Value | undefined,
  place: string,
): (text: string) => Value | undefined {
  const words = new Map<string, Value>();
  for (const [word, value] of own) {
    words.set(fold(word), value);
    words.set(fold(word.replaceAll('_', ' ')), value);
  }
  const mapped = new Map<string, string>();
  for (const [key, texts] of Object.entries(mapping)) {
    const value = keyOf(key);
    if (value === undefined)
      throw new UserError('mapped_word', `${place}: must be yes or no, found "${key}"`);
    for (const text of typeof texts === 'string' ? [texts] : texts) {
      const word = fold(text);
      const other = mapped.get(word);
      if (other !== undefined && other !== key)
        throw new UserError(
          'mapped_word',
          `${place}: "${text}" must stand for one word, found ${other} and ${key}`,
        );
      mapped.set(word, key);
      words.set(word, value);
    }
  }
  return (text) => words.get(text) ?? words.get(fold(text));
}

export function closedWords(options: readonly string[], mapping: Mapping, place: string) {
  return wordReader(
    options.map((word) => [word, word] as const),
    mapping,
    (key) => (options.includes(key) ? key : undefined),
    place,
  );
}

export function yesNoWords(mapping: Mapping, place: string) {
  return wordReader(
    [...YES.map((word) => [word, true] as const), ...NO.map((word) => [word, false] as const)],
    mapping,
    (key) => (['yes', 'true'].includes(key) ? true : ['no', 'false'].includes(key) ? false : undefined),
    place,
  );
}
