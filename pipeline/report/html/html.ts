/**
 * Markup that is safe to write as it stands. Only `html` and `trusted` make it: text that reaches a page by any other way is escaped.
 */
export class Html {
  readonly #markup: string;
  constructor(markup: string) {
    this.#markup = markup;
  }
  toString(): string {
    return this.#markup;
  }
}

/** What may stand in a template. Null, undefined and false write nothing. */
export type HtmlValue = Html | string | number | null | undefined | false | readonly HtmlValue[];

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
};

/**
 * Characters that a page can't hold: controls other than tab and line ends, lone surrogates, and the marks that turn the direction of text around, with
 * which a value could make its neighbours read otherwise.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufeff\p{Cs}]/gu;

/** The same and all surrogates, looked for code unit by code unit: a quarter of the time, and hardly a text has one. */
const MAY_BE_UNFIT = new RegExp(UNFIT.source.replace('\\p{Cs}', '\\ud800-\\udfff'));

/** Text without the characters that a page can't hold: each becomes U+FFFD. */
export function fitText(text: string): string {
  return MAY_BE_UNFIT.test(text) ? text.replace(UNFIT, '\ufffd') : text;
}

/** Text for an element or a quoted attribute: markup characters become entities, characters a page can't hold become U+FFFD. */
export function escapeHtml(text: string): string {
  return fitText(text).replace(/[&<>"'`]/g, (character) => ENTITIES[character]!);
}

/**
 * Template tag for markup: each value is escaped unless it is markup already. Attributes must be quoted in the template, as the escape covers
 * element text and quoted attributes, and nothing else (no script, no style, no URL with a scheme from outside).
 */
export function html(strings: TemplateStringsArray, ...values: HtmlValue[]): Html {
  let markup = strings[0]!;
  for (const [index, value] of values.entries()) markup += write(value) + strings[index + 1]!;
  return new Html(markup);
}

/** Markup made elsewhere and known to be safe: SVG from our own renderer, style sheets from our own files. Never text from an input. */
export function trusted(markup: string): Html {
  return new Html(markup);
}

function write(value: HtmlValue): string {
  if (value === null || value === undefined || value === false) return '';
  if (value instanceof Html) return value.toString();
  if (typeof value === 'string') return escapeHtml(value);
  if (typeof value === 'number') return escapeHtml(String(value));
  return value.map(write).join('');
}
