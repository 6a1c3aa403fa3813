import { escapeHtml, type Html, trusted } from '../../pipeline/report/html/html.ts';

const KEYWORDS =
  'import|export|from|const|let|type|interface|function|return|for|of|in|if|else|new|await|async|as|throw|null|undefined|true|false|satisfies';
const TOKENS = new RegExp(
  String.raw`(?<comment>\/\/[^\n]*|\/\*[\s\S]*?\*\/)|(?<text>'(?:\\.|[^'\\\n])*'|\`(?:\\.|[^\`\\])*\`)|(?<word>\b(?:${KEYWORDS})\b)`,
  'g',
);

/** TypeScript as markup in which comments, texts and words of the language can be told apart. It colours; it does not parse. */
export function codeText(code: string): Html {
  let markup = '';
  let from = 0;
  for (const found of code.matchAll(TOKENS)) {
    const kind = found.groups!.comment ? 'comment' : found.groups!.text ? 'text' : 'word';
    markup += `${escapeHtml(code.slice(from, found.index))}<span class="${kind}">${escapeHtml(found[0])}</span>`;
    from = found.index + found[0].length;
  }
  return trusted(markup + escapeHtml(code.slice(from)));
}
