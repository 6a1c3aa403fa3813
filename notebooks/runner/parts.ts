/** A piece of a notebook's source: prose, or code with the number of things that it shows. */
export type Part = { kind: 'prose'; markdown: string } | { kind: 'code'; code: string; shows: number };

const PROSE = /^\/\*\n([\s\S]*?)\n\*\/$/m;
const SHOW = /^show\(/gm;
/** A blank line before a line that is not indented. */
const BETWEEN = /\n\n+(?=\S)/;

/**
 * Takes a notebook's source apart: a block comment whose marks stand alone on their lines is prose in Markdown, what stands between is
 * code, and a blank line outside of braces begins its next piece.
 *
 * @returns the parts in order; code of blank lines alone is left out
 */
export function partsOf(source: string): Part[] {
  return source.split(PROSE).flatMap((text, at): Part[] => {
    if (at % 2 === 1) return [{ kind: 'prose', markdown: text }];
    return text
      .split(BETWEEN)
      .map((code) => code.trim())
      .filter((code) => code !== '')
      .map((code) => ({ kind: 'code', code, shows: code.match(SHOW)?.length ?? 0 }));
  });
}
