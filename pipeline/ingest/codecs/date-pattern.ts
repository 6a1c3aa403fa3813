import { UserError } from '../../user-error.ts';
import { fixedReader } from './fixed-date.ts';
import { monthOfName } from './month-names.ts';
import { weekdayOfName } from './weekday-names.ts';
import { fullYear, type WrittenTime, written } from './written-time.ts';

const DEFAULT_PATTERN = 'yyyy-MM-dd HH:mm:ss';
const TOKENS = /yyyy|yy|EEE|XXX|MMM|MM|M|dd|d|HH|H|hh|h|mm|ss|SSS|a|'(?:[^']|'')*'|[\s\S]/gu;

const SOURCES: Readonly<Record<string, string>> = {
  yyyy: '(\\d{4})',
  yy: '(\\d{2})',
  MMM: '(\\p{L}+\\.?)',
  MM: '(\\d{2})',
  M: '(\\d{1,2})',
  dd: '(\\d{2})',
  d: '(\\d{1,2})',
  HH: '(\\d{2})',
  H: '(\\d{1,2})',
  hh: '(\\d{2})',
  h: '(\\d{1,2})',
  mm: '(\\d{2})',
  ss: '(\\d{2})',
  SSS: '(\\d{1,9})',
  a: '([ap]\\.?\\s?m\\.?)',
  EEE: '(\\p{L}+\\.?)',
  XXX: '(Z|[+-]\\d\\d(?::?\\d\\d)?)',
};
const TIME_TOKENS = new Set(['HH', 'H', 'hh', 'h', 'mm', 'ss', 'SSS', 'a', 'XXX']);

interface Variant {
  expression: RegExp;
  tokens: string[];
}

/**
 * Compiles a date pattern to a reader of texts, which answers undefined where the text doesn't fit the pattern or isn't on the calendar.
 *
 * Tokens: yyyy, yy (69 to 99 are 1969 to 1999, as POSIX strptime has it), MM, M, MMM (month by name: English, German, French, Spanish), dd, d,
 * HH, H, hh, h (with a), mm, ss, SSS, a, EEE (day of the week by name, in the same languages: it must be the date's own), XXX (offset from UTC: Z, +02:00, +0200, +02; the
 * time is then read on that clock and not on the site's). Text between single quotes and all other characters stand for themselves; a blank stands for any run of
 * blanks. A text may leave out the fraction, the seconds with it, or the time of day. 24:00 is the end of the day (ISO 8601).
 * The default pattern also reads ISO 8601 with "T", a fraction of seconds and an offset. Several patterns with " | " between are each tried; a text that two of them
 * read as different times is read as none.
 *
 * @throws UserError `date_pattern` where the pattern can't give a date
 */
export function datePattern(pattern: string): DateReader {
  const alternatives = pattern.split(ALTERNATIVE);
  if (alternatives.length === 1) return onePattern(pattern);
  const readers = alternatives.map(onePattern);
  return (text, from = 0, to = text.length) => {
    const found = readers.map((read) => read(text, from, to)).filter((time) => time !== undefined);
    const [first] = found;
    return found.every((time) => time.wallMs === first!.wallMs && time.dayOnly === first!.dayOnly)
      ? first
      : undefined;
  };
}

/** Reads a text, or the stretch of it that is given, as a time. */
export type DateReader = (text: string, from?: number, to?: number) => WrittenTime | undefined;

const ALTERNATIVE = /\s+\|\s+/;

function onePattern(pattern: string): DateReader {
  const tokens = pattern.match(TOKENS) ?? [];
  check(pattern, tokens);
  const forms = variantsOf(tokens);
  const fixed = forms.map(fixedReader).filter((reader) => reader !== undefined);
  const variants = pattern === DEFAULT_PATTERN ? [] : forms.map(compile);
  return (whole, from = 0, to = whole.length) => {
    for (const reader of fixed) if (reader.fits(whole, from, to)) return reader.read(whole, from);
    const text = whole.slice(from, to);
    if (pattern === DEFAULT_PATTERN) return readIso(text);
    for (const variant of variants) {
      const match = variant.expression.exec(text);
      if (match) return partsOf(variant.tokens, match);
    }
    return undefined;
  };
}

const EXAMPLES: Readonly<Record<string, string>> = {
  yyyy: '2024',
  yy: '24',
  MMM: 'Mar',
  MM: '03',
  M: '3',
  dd: '01',
  d: '1',
  HH: '06',
  H: '6',
  hh: '06',
  h: '6',
  mm: '30',
  ss: '00',
  SSS: '000',
  a: 'AM',
  EEE: 'Fri',
  XXX: '+01:00',
};

/** A time as the pattern wants it, for messages. */
export function exampleOf(pattern: string): string {
  const [first = ''] = pattern.split(ALTERNATIVE);
  const tokens = first.match(TOKENS) ?? [];
  return tokens.map((token) => EXAMPLES[token] ?? literalText(token)).join('');
}

function check(pattern: string, tokens: readonly string[]): void {
  const count = (...names: string[]) => tokens.filter((token) => names.includes(token)).length;
  const fault =
    count('yyyy', 'yy') !== 1
      ? 'must hold the year once (yyyy or yy)'
      : count('MMM', 'MM', 'M') !== 1
        ? 'must hold the month once (MM, M or MMM; mm are minutes)'
        : count('dd', 'd') !== 1
          ? 'must hold the day once (dd or d)'
          : count('HH', 'H', 'hh', 'h') > 1 || count('mm') > 1 || count('ss') > 1 || count('SSS') > 1
            ? 'must hold hour, minute and second at most once'
            : count('hh', 'h') !== count('a')
              ? 'must hold "a" (AM or PM) with hh or h, and only with them'
              : count('mm', 'ss', 'SSS', 'XXX') > 0 && count('HH', 'H', 'hh', 'h') === 0
                ? 'must hold the hour where it holds minutes or an offset'
                : count('EEE') > 1 || count('XXX') > 1
                  ? 'must hold the day of the week and the offset at most once'
                  : undefined;
  if (fault) throw new UserError('date_pattern', `date pattern "${pattern}" ${fault}`);
}

/** The pattern itself, and what is left of it without fraction, without seconds, without time of day. */
function variantsOf(tokens: readonly string[]): (readonly string[])[] {
  const noFraction = without(tokens, ['SSS']);
  const noSeconds = without(noFraction, ['ss']);
  const all = [tokens, noFraction, noSeconds, withoutTime(tokens)];
  return all.filter((variant, index) => all.findIndex((other) => other.join() === variant.join()) === index);
}

const isToken = (token: string): boolean => Object.hasOwn(SOURCES, token);

/** Takes tokens out, each with the characters straight before it. */
function without(tokens: readonly string[], names: readonly string[]): string[] {
  const left: string[] = [];
  for (const token of tokens) {
    if (!names.includes(token)) left.push(token);
    else while (left.length > 0 && !isToken(left.at(-1)!)) left.pop();
  }
  return left;
}

/** Takes the time of day out, with the characters that tie it to the date. */
function withoutTime(tokens: readonly string[]): readonly string[] {
  const first = tokens.findIndex((token) => TIME_TOKENS.has(token));
  if (first < 0) return tokens;
  const last = tokens.findLastIndex((token) => TIME_TOKENS.has(token));
  if (tokens.slice(first, last).some((token) => isToken(token) && !TIME_TOKENS.has(token))) return tokens;
  const before = tokens.slice(0, first);
  const after = tokens.slice(last + 1);
  if (!after.some(isToken)) {
    while (before.length > 0 && !isToken(before.at(-1)!)) before.pop();
    return before;
  }
  if (!before.some(isToken)) return after.slice(after.findIndex(isToken));
  return [...before, ...after];
}

function compile(tokens: readonly string[]): Variant {
  const source = tokens.map((token) => SOURCES[token] ?? literalSource(token)).join('');
  return {
    expression: new RegExp(`^${source.replace(/(\\s\+)+/g, '\\s+')}$`, 'iu'),
    tokens: tokens.filter(isToken),
  };
}

function literalText(token: string): string {
  const quoted = token.length > 1 && token.startsWith("'");
  return quoted ? token.slice(1, -1).replaceAll("''", "'") || "'" : token;
}

function literalSource(token: string): string {
  return literalText(token)
    .replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')
    .replace(/\s+/g, '\\s+');
}

function partsOf(tokens: readonly string[], match: RegExpExecArray): WrittenTime | undefined {
  let year = 0;
  let month = 0;
  let date = 0;
  let hour: number | undefined;
  let minute = 0;
  let second = 0;
  let ms = 0;
  let half: 'a' | 'p' | undefined;
  let weekday: number | undefined;
  let offset: number | undefined;
  for (let index = 0; index < tokens.length; index++) {
    const text = match[index + 1]!;
    switch (tokens[index]) {
      case 'yyyy':
        year = Number(text);
        break;
      case 'yy':
        year = fullYear(Number(text));
        break;
      case 'MMM':
        month = monthOfName(text) ?? 0;
        break;
      case 'MM':
      case 'M':
        month = Number(text);
        break;
      case 'dd':
      case 'd':
        date = Number(text);
        break;
      case 'mm':
        minute = Number(text);
        break;
      case 'ss':
        second = Number(text);
        break;
      case 'SSS':
        ms = fraction(text);
        break;
      case 'EEE':
        weekday = weekdayOfName(text);
        if (weekday === undefined) return undefined;
        break;
      case 'XXX':
        offset = offsetOf(text);
        break;
      case 'a':
        half = text.toLowerCase().startsWith('p') ? 'p' : 'a';
        break;
      default:
        hour = Number(text);
    }
  }
  if (half !== undefined && hour !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (half === 'p' ? 12 : 0);
  }
  const time = written(year, month, date, hour, minute, second, ms, offset);
  // The day is that of the date as written, which 24:00 does not move.
  const day = weekday === undefined ? undefined : new Date(Date.UTC(year, month - 1, date)).getUTCDay();
  return day === weekday ? time : undefined;
}

const ISO =
  /^(\d{4})-(\d\d)-(\d\d)(?:(?:T|\s+)(\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?\s?(Z|[+-]\d\d(?::?\d\d)?)?)?$/i;

function readIso(text: string): WrittenTime | undefined {
  const match = ISO.exec(text);
  if (!match) return undefined;
  const [, year, month, date, hour, minute, second, part, zone] = match;
  return written(
    Number(year),
    Number(month),
    Number(date),
    hour === undefined ? undefined : Number(hour),
    minute === undefined ? 0 : Number(minute),
    second === undefined ? 0 : Number(second),
    part === undefined ? 0 : fraction(part),
    zone === undefined ? undefined : offsetOf(zone),
  );
}

/** Whole milliseconds of a decimal fraction of a second; finer digits are cut. */
const fraction = (digits: string): number => Number(digits.padEnd(3, '0').slice(0, 3));

function offsetOf(text: string): number {
  if (text.length === 1) return 0;
  const digits = text.slice(1).replace(':', '').padEnd(4, '0');
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2));
  return text[0] === '-' ? -minutes : minutes;
}
