import type { Words } from '../../../pipeline/report/words/words.ts';

/** Marks around each text of the catalogue. */
export const OPEN = '\u27e6';
export const CLOSE = '\u27e7';

/**
 * A language that says what the other says, with marks around each text: what a page shows outside the marks did not come from the catalogue. Parts that a chart sets in
 * lines of their own, cut at "|", are marked each.
 */
export function pseudo(words: Words): Words {
  return marked(words, '') as Words;
}

function marked(value: unknown, key: string): unknown {
  // The marks of numbers on axes are no words, and a code of the language is data.
  if (key === 'chart' || key === 'lang') return value;
  if (typeof value === 'string')
    return value
      .split('|')
      .map((part) => (part === '' ? '' : `${OPEN}${part}${CLOSE}`))
      .join('|');
  if (typeof value === 'function')
    return (...args: unknown[]) => marked((value as (...of: unknown[]) => unknown)(...args), '');
  if (Array.isArray(value)) return value.map((item) => marked(item, ''));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, marked(inner, name)]));
  return value;
}

/** A text without all that stands inside marks. A label that a chart has cut short ends inside them. */
export function outsideMarks(text: string): string {
  let rest = text;
  for (let before = ''; before !== rest; ) {
    before = rest;
    rest = rest.replace(/\u27e6[^\u27e6\u27e7]*\u27e7/gu, '');
  }
  return rest.replace(/\u27e6[^\u27e7]*\u2026$/u, '');
}
