import { median as medianOf } from 'simple-statistics';
import { decimalReader } from '../ingest/codecs/decimal.ts';
import { certain, type Guess, likely, open } from './guess.ts';

export type Mark = '.' | ',';

/**
 * The decimal mark of a table's numbers: proved by numbers that can be read in one way alone. "1,234" can be read in two; where nothing else stands there it
 * is open.
 *
 * @param texts texts of the columns that hold numbers
 */
export function guessDecimalMark(texts: Iterable<string>): Guess<Mark> {
  const counts: Record<Mark, number> = { '.': 0, ',': 0 };
  const example: Partial<Record<Mark, string>> = {};
  let unclear: string | undefined;
  for (const text of texts) {
    const mark = provedMark(text);
    if (mark) {
      counts[mark]++;
      example[mark] ??= text;
    } else if (/^[+-]?\d{1,3}[.,]\d{3}$/.test(text)) unclear ??= text;
  }
  const [best, other]: [Mark, Mark] = counts[','] > counts['.'] ? [',', '.'] : ['.', ','];
  if (counts[best] === 0) {
    if (unclear === undefined) return certain('.', 'no number has a decimal part');
    return open(['.', ','], `"${unclear}" may be a number with decimals or one of thousands`);
  }
  const why = `"${example[best]}" can't be read otherwise`;
  if (counts[other] === 0) return certain(best, why);
  return counts[other] <= counts[best] * 0.02
    ? likely(best, `${why}; but "${example[other]}" stands there too`, ['.', ','])
    : open(['.', ','], `both "${example[best]}" and "${example[other]}" stand there`);
}

function provedMark(text: string): Mark | undefined {
  const match = /^[+\-\u2212]?(\d*)([.,])(\d+)$/.exec(text);
  if (!match)
    return /^\d{1,3}(?:\.\d{3})+,\d+$/.test(text)
      ? ','
      : /^\d{1,3}(?:,\d{3})+\.\d+$/.test(text)
        ? '.'
        : undefined;
  const [, whole = '', mark, part = ''] = match;
  const couldBeThousands = part.length === 3 && whole.length >= 1 && whole.length <= 3 && !/^0/.test(whole);
  return couldBeThousands ? undefined : (mark as Mark);
}

/** Numbers of the texts under a mark; texts that are none are left out. */
export function numbersOf(texts: readonly string[], mark: Mark): number[] {
  const read = decimalReader(mark);
  return texts.map((text) => read(text)).filter((value) => value !== undefined);
}

/** Undefined where there is no value. */
export const median = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : medianOf([...values]);
