/** Reads a text, or the stretch of it that is given, as a number; undefined where it is none, or where it could be two. */
export type DecimalReader = (text: string, from?: number, to?: number) => number | undefined;

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
  return (whole, from = 0, to = whole.length) => {
    const value = plainDecimal(whole, markCode, from, to);
    if (value !== undefined) return value;
    const text = whole.slice(from, to);
    if (plain.test(text)) return toNumber(text);
    const signed = text.replace(/^\u2212/, '-');
    if (plain.test(signed) || exponent.test(signed)) return toNumber(signed);
    return grouped.some((expression) => expression.test(signed))
      ? toNumber(signed.replace(strip, ''))
      : undefined;
  };
}

/** 10 to the power of each place. */
const POWERS = Array.from({ length: 15 }, (_, power) => 10 ** power);

/**
 * The value of digits with at most one mark behind or between them, the usual number, read without a regular expression; undefined for all others. Up to 15 characters, digits and power of ten
 * are exact in binary, so that their quotient is the nearest number, as of the text itself. Source: W. D. Clinger, How to read floating point numbers accurately, 1990.
 */
function plainDecimal(text: string, mark: number, from: number, to: number): number | undefined {
  if (to - from > 15 || to <= from) return undefined;
  let value = 0;
  let markAt = -1;
  for (let at = from; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) value = value * 10 + (code - 48);
    else if (code !== mark || at === from || markAt >= 0) return undefined;
    else markAt = at;
  }
  return markAt < 0 ? value : value / POWERS[to - markAt - 1]!;
}
