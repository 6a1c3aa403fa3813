/** A time of day as exports write it: 6:30, 06:30:15, 6h30, 6.30 Uhr, 6:30 p.m., with an offset or not. */
export const TIME =
  /^(\d{1,2})([:.h])(\d{2})(?:([:.])(\d{2})([.,]\d{1,9})?)?(\s?[ap]\.?\s?m\.?)?(\s?(?:Z|[+-]\d\d:?\d\d))?( Uhr)?$/i;
/** Share of a column's texts that must be times. */
const LEAST_READ = 0.9;

/** The pattern of a time of day; undefined where the texts are none. */
export function timePattern(texts: readonly string[]): string | undefined {
  const found = texts.map((text) => timeTokens(text.trim())).filter((pattern) => pattern !== undefined);
  if (found.length < texts.length * LEAST_READ || found.length === 0) return undefined;
  return loosest(found);
}

/** The pattern of one text, without its offset; undefined where it is no time. */
export function timeTokens(text: string): string | undefined {
  const match = TIME.exec(text);
  if (!match) return undefined;
  const [, hour = '', mark = ':', , second, seconds, part, half, , clock] = match;
  if (mark === '.' && seconds === undefined && clock === undefined && !/^\d{1,2}\.\d\d$/.test(text))
    return undefined;
  const h = half ? (hour.length === 1 ? 'h' : 'hh') : hour.length === 1 ? 'H' : 'HH';
  const literal = mark === 'h' ? "'h'" : mark;
  const fraction = part === undefined ? '' : `${part[0]}SSS`;
  const rest = seconds === undefined ? '' : `${second}ss${fraction}`;
  return `${h}${literal}mm${rest}${half ? (/^\s/.test(half) ? ' a' : 'a') : ''}${clock ? " 'Uhr'" : ''}`;
}

/** One digit may stand for two; the pattern with most in it reads those with less. */
function loosest(patterns: readonly string[]): string {
  const counts = [...new Set(patterns)].sort((a, b) => b.length - a.length);
  const short = counts.some((pattern) => /(?<![Hh'])[Hh](?![Hh])/.test(pattern));
  const best = counts[0]!;
  return short ? best.replace('HH', 'H').replace('hh', 'h') : best;
}
