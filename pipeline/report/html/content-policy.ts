import { createHash } from 'node:crypto';

/**
 * Content policy of a page: nothing is loaded, nothing is sent, no script runs, and of style only the page's one sheet, by its hash.
 *
 * @param style the text of the page's style element, exactly as written
 */
export function contentPolicy(style: string): string {
  const hash = createHash('sha256').update(style, 'utf8').digest('base64');
  return `default-src 'none'; style-src 'sha256-${hash}'; img-src data:; base-uri 'none'; form-action 'none'`;
}

/** Text for a CSS string: everything but letters, digits and blanks becomes an escape, so that no value can end the string or the sheet. */
export function cssString(text: string): string {
  const escaped = [...text]
    .map((character) =>
      /[\p{L}\p{N} ,.-]/u.test(character) ? character : `\\${character.codePointAt(0)!.toString(16)} `,
    )
    .join('');
  return `"${escaped}"`;
}
