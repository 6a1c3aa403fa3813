/** Reads a text as a number; undefined where it is none, or where it could be two. */
export type DecimalReader = (text: string) => number | undefined;

const BLANKS = " \\u00a0\\u2009\\u202f'\\u2019";

/**
 * Reader of numbers with the given decimal mark. Digits may be grouped in threes by a blank or apostrophe, or by the other mark where that can't be
 * read as a decimal mark: it stands twice, or a decimal part follows. "1,234" is refused under both marks. A minus may be U+2212;
 * an exponent is read.
 */
export function decimalReader(mark: '.' | ','): DecimalReader {
  const decimal = mark === '.' ? '\\.' : ',';
  const other = mark === '.' ? ',' : '\\.';
  const plain = mark === '.' ? /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/ : /^[+-]?(?:\d+(?:,\d*)?|,\d+)$/;
  const exponent = new RegExp(`^[+-]?\\d+(?:${decimal}\\d*)?e[+-]?\\d{1,3}$`, 'i');
  const grouped = [
    new RegExp(`^[+-]?\\d{1,3}([${BLANKS}])\\d{3}(?:\\1\\d{3})*(?:${decimal}\\d+)?$`),
    new RegExp(`^[+-]?\\d{1,3}(?:${other}\\d{3}){2,}(?:${decimal}\\d+)?$`),
    new RegExp(`^[+-]?\\d{1,3}(?:${other}\\d{3})+${decimal}\\d+$`),
  ];
  const strip = new RegExp(`[${BLANKS}${other}]`, 'g');
  const toNumber = (text: string): number | undefined => {
    const value = Number(mark === ',' ? text.replace(',', '.') : text);
    return Number.isFinite(value) ? value : undefined;
  };
  const markCode = mark.charCodeAt(0);
  return (text) => {
    if (isPlain(text, markCode) || plain.test(text)) return toNumber(text);
    const signed = text.replace(/^\u2212/, '-');
    if (plain.test(signed) || exponent.test(signed)) return toNumber(signed);
    return grouped.some((expression) => expression.test(signed))
      ? toNumber(signed.replace(strip, ''))
      : undefined;
  };
}

/** Whether a text is digits with at most one mark between them: the usual number, told without a regular expression. */
function isPlain(text: string, mark: number): boolean {
  const { length } = text;
  let marks = 0;
  for (let at = 0; at < length; at++) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) continue;
    if (code !== mark || at === 0 || ++marks > 1) return false;
  }
  return length > 0 && length <= 15;
}
