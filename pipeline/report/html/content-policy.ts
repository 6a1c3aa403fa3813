import { createHash } from 'node:crypto';

/**
 * Content policy of a page: nothing is loaded, nothing is sent, no text becomes code, and of style and script only the page's one sheet and one script
 * run, by their hashes.
 *
 * @param style the text of the page's style element, exactly as written
 * @param script the text of the page's script element, exactly as written
 */
export function contentPolicy(style: string, script: string): string {
  return `default-src 'none'; style-src '${hashSource(style)}'; script-src '${hashSource(script)}'; img-src data:; base-uri 'none'; form-action 'none'`;
}

const hashSource = (text: string): string =>
  `sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}`;

/** Text for a CSS string: everything but letters, digits and blanks becomes an escape, so that no value can end the string or the sheet. */
export function cssString(text: string): string {
  const escaped = [...text]
    .map((character) =>
      /[\p{L}\p{N} ,.-]/u.test(character) ? character : `\\${character.codePointAt(0)!.toString(16)} `,
    )
    .join('');
  return `"${escaped}"`;
}
