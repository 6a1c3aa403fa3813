import { datePattern } from '../ingest/codecs/date-pattern.ts';
import { serialReader } from '../ingest/codecs/serial-date.ts';
import { weekdayOfName } from '../ingest/codecs/weekday-names.ts';
import { aYearApart, byOneWitness, byYearFirst, isYear, SLIPS_FROM, witnesses } from './date-slips.ts';
import { certain, type Guess, likely, open } from './guess.ts';
import { TIME, timeTokens } from './time-pattern.ts';

const MS_PER_DAY = 86_400_000;
/** Share of a column's texts that a pattern must read to be its pattern; the rest are slips, which reading reports. */
const LEAST_READ = 0.9;
/** Texts that a refuted order must fail on to be refuted beyond slips. */
const REFUTED_SHARE = 0.01;

const NUMBERS = /^(\d{1,4})([-/. ])(\d{1,2})\2(\d{1,4})(?=$|[\sT,])/;
const COMPACT = /^20\d\d\d{2}\d{2}(?=$|[\sT])/;
const COMPACT_TIME = /^20\d\d(?:0[1-9]|1[0-2])[0-3]\d(?:[01]\d|2[0-4])[0-5]\d([0-5]\d)?$/;
/** The name of a day of the week before the date. */
const WEEKDAY = /^(\p{L}{2,10}\.?)(,? +)(?=\S)/u;
const NAMED =
  /^(?:(\d{1,2})(\.?[-/. ]|\. )(\p{L}{3,10}\.?)([-/., ]{1,2})(\d{2,4})|(\p{L}{3,10}\.?)([-/. ])(\d{1,2})(,? )(\d{4}))(?=$|[\sT,])/u;

const OFFSET = /\s?(?:Z|[+-]\d\d:?\d\d)$/i;

/** Whether a text looks like a date, a time of day, or both. */
export function looksLikeTime(text: string): boolean {
  return (
    NUMBERS.test(text) ||
    COMPACT.test(text) ||
    COMPACT_TIME.test(text) ||
    NAMED.test(text) ||
    (TIME.test(text) && /[:h]/.test(text)) ||
    (weekdayBefore(text) !== '' && looksLikeTime(text.slice(weekdayBefore(text).length)))
  );
}

/** The name of a day of the week at the start of a text, with what ties it to the date; empty where there is none. */
function weekdayBefore(text: string): string {
  const match = WEEKDAY.exec(text);
  return match && weekdayOfName(match[1]!) !== undefined ? match[0] : '';
}

/** All patterns that the shape of a text allows. */
function patternsFor(text: string): string[] {
  const before = weekdayBefore(text);
  if (before !== '') {
    const tie = WEEKDAY.exec(text)![2]!.replace(/ +/, ' ');
    return patternsFor(text.slice(before.length)).map((pattern) => `EEE${tie}${pattern}`);
  }
  const whole = COMPACT_TIME.exec(text);
  if (whole) return [whole[1] === undefined ? 'yyyyMMddHHmm' : 'yyyyMMddHHmmss'];
  const dates = datePart(text);
  if (!dates) return [];
  const rest = text.slice(dates.length);
  if (rest === '') return dates.patterns;
  const lead = /^(?:T|,? +(?:- )?|,)/i.exec(rest)?.[0] ?? '';
  const digits = /^([0-2]\d[0-5]\d)([0-5]\d)?(?:\s?(?:Z|[+-]\d\d:?\d\d))?$/i.exec(rest.slice(lead.length));
  const time = digits ? `HHmm${digits[2] === undefined ? '' : 'ss'}` : timeTokens(rest.slice(lead.length));
  if (time === undefined) return [];
  const isIso = dates.patterns[0] === 'yyyy-MM-dd' && /^(?:T| +)$/i.test(lead);
  if (isIso && /^H+:mm(:ss([.,]SSS)?)?$/.test(time) && /\d\d:\d\d/.test(rest)) return ['yyyy-MM-dd HH:mm:ss'];
  const offset = OFFSET.exec(rest)?.[0];
  const between = /^T$/i.test(lead) ? "'T'" : lead;
  return dates.patterns.map(
    (pattern) =>
      `${pattern}${between}${time}${offset === undefined ? '' : `${/^\s/.test(offset) ? ' ' : ''}XXX`}`,
  );
}

function datePart(text: string): { length: number; patterns: string[] } | undefined {
  const compact = COMPACT.exec(text);
  if (compact) return { length: compact[0].length, patterns: ['yyyyMMdd'] };
  const numbers = NUMBERS.exec(text);
  if (numbers) {
    const [whole, first = '', mark = '', second = '', third = ''] = numbers;
    const days = (part: string) => (part.length === 1 ? 'd' : 'dd');
    const months = (part: string) => (part.length === 1 ? 'M' : 'MM');
    const join = (...parts: string[]) => parts.join(mark);
    const length = whole.length;
    if (first.length === 4)
      return {
        length,
        patterns: [join('yyyy', months(second), days(third)), join('yyyy', days(second), months(third))],
      };
    if (third.length === 4)
      return {
        length,
        patterns: [join(days(first), months(second), 'yyyy'), join(months(first), days(second), 'yyyy')],
      };
    if (third.length > 2 || first.length > 2) return undefined;
    const shortYear = [join(days(first), months(second), 'yy'), join(months(first), days(second), 'yy')];
    return {
      length,
      patterns: first.length === 2 ? [...shortYear, join('yy', months(second), days(third))] : shortYear,
    };
  }
  const named = NAMED.exec(text);
  if (!named) return undefined;
  const [whole, day, mark1, , mark2, year, , mark3, day2, mark4] = named;
  if (day !== undefined)
    return {
      length: whole.length,
      patterns: [`${day.length === 1 ? 'd' : 'dd'}${mark1}MMM${mark2}${year!.length === 2 ? 'yy' : 'yyyy'}`],
    };
  return { length: whole.length, patterns: [`MMM${mark3}${day2!.length === 1 ? 'd' : 'dd'}${mark4}yyyy`] };
}

/** Candidates for all texts: from several of them, with the digits that may be one loosened. */
function candidates(texts: readonly string[]): string[] {
  const found = new Set<string>();
  for (const text of texts) for (const pattern of patternsFor(text)) found.add(pattern);
  const groups = new Map<string, string[]>();
  for (const pattern of found) {
    const key = orderOf(pattern);
    groups.set(key, [...(groups.get(key) ?? []), pattern]);
  }
  return [...groups.values()].flatMap((patterns) => {
    const best = patterns.toSorted((a, b) => b.length - a.length)[0]!;
    const loose = (token: string, one: string) =>
      patterns.some((pattern) => new RegExp(`(?<!${one})${one}(?!${one})`).test(pattern))
        ? (text: string) => text.replace(token, one)
        : (text: string) => text;
    return [loose('dd', 'd')(loose('MM', 'M')(loose('HH', 'H')(loose('hh', 'h')(best))))];
  });
}

/** Order of year, month and day and the marks between: what tells patterns apart beyond the number of digits. */
const orderOf = (pattern: string): string =>
  (pattern.replace(/^EEE,? /, '').match(/yyyy|yy|MMM|M+|d+|[^A-Za-z]/g) ?? [])
    .slice(0, 5)
    .map((token) => token[0]! + (token.length > 3 ? 'y' : token === 'MMM' ? 'N' : ''))
    .join('') +
  (/T/.test(pattern) ? 'T' : '') +
  (/EEE/.test(pattern) ? 'E' : '') +
  (/XXX/.test(pattern) ? 'X' : '');

/** What a column of texts says about its date pattern. */
export interface DateGuess extends Guess<string> {
  /** Share of the texts that the pattern (or each of those left) reads. */
  share: number;
}

/**
 * The date pattern of a column: proved where the other orders of day, month and year can't read what stands there, likely where only one puts the rows in
 * order of time, else open. Undefined where the texts are no dates.
 *
 * @param texts texts that are not blank, in order of their rows
 */
export function guessDates(texts: readonly string[]): DateGuess | undefined {
  if (texts.length === 0) return undefined;
  const step = Math.max(1, Math.floor(texts.length / 300));
  const sample = texts.filter((_, at) => at % step === 0);
  const tried = candidates(sample).map((pattern) => {
    const read = datePattern(pattern);
    const times = texts.map((text) => read(text)?.wallMs);
    return { pattern, times, share: times.filter(isYear).length / texts.length };
  });
  const best = Math.max(0, ...tried.map(({ share }) => share));
  if (best < LEAST_READ) return inForms(texts);
  const left = tried.filter(({ share }) => share >= best - REFUTED_SHARE && share >= LEAST_READ);
  const out = tried.filter((one) => !left.includes(one));
  const first = left[0]!;
  const doubted =
    left.length === 1 && texts.length >= SLIPS_FROM
      ? out.filter((one) => witnesses(first.times, one.times, texts) === 1)
      : [];
  if (left.length === 1 && doubted.length === 0) {
    const against = out.toSorted((a, b) => b.share - a.share)[0];
    if (!against) return { ...certain(first.pattern, 'the only way to read it'), share: best };
    const at = against.times.findIndex((time, index) => !isYear(time) && isYear(first.times[index]));
    return {
      ...certain(first.pattern, `"${texts[at] ?? ''}" can't be read as ${against.pattern}`),
      share: best,
    };
  }
  if (doubted.length > 0) return { ...byOneWitness(first, doubted, texts), share: best };
  const yearFirst = byYearFirst(left.map(({ pattern }) => pattern));
  if (yearFirst) return { ...yearFirst, share: best };
  const apart = left.filter(({ times }) => !aYearApart(times));
  if (apart.length === 1 && left.length > 1) {
    const other = left.find((one) => one !== apart[0])!;
    const why = `read as ${other.pattern} the rows would lie on one day of the month, years apart`;
    return {
      ...likely(
        apart[0]!.pattern,
        why,
        left.map(({ pattern }) => pattern),
      ),
      share: best,
    };
  }
  const short = left.filter(({ times }) => yearsOf(times) <= SHORT_YEARS);
  const plausible = short.length > 0 ? left.filter(({ times }) => yearsOf(times) < LONG_YEARS) : left;
  if (plausible.length === 1) {
    const other = left.find((one) => one !== plausible[0])!;
    const why = `read as ${other.pattern} the rows would span ${Math.round(yearsOf(other.times))} years`;
    return {
      ...likely(
        plausible[0]!.pattern,
        why,
        left.map(({ pattern }) => pattern),
      ),
      share: best,
    };
  }
  const options = left.map(({ pattern }) => pattern);
  const ordered = left.filter(({ times }) => disorder(times) === 0);
  const distinct = new Set(
    first.times.map((time) => (time === undefined ? 0 : Math.floor(time / MS_PER_DAY))),
  ).size;
  if (
    ordered.length === 1 &&
    distinct >= 10 &&
    left.every((one) => one === ordered[0] || disorder(one.times) >= 0.1)
  ) {
    const { pattern } = ordered[0]!;
    return { ...likely(pattern, 'only so the rows stand in order of time', options), share: best };
  }
  return { ...open(options, `nothing in the file tells ${options.join(' from ')}`), share: best };
}

/** A form of dates that is rarer than this is a slip. */
const LEAST_FORM = 0.02;
const MOST_FORMS = 4;

/** Dates typed in several forms, such as 2025-03-01 and 1.3.2025: each form by itself. Open where one of them is; undefined where some are no dates. */
function inForms(texts: readonly string[]): DateGuess | undefined {
  const forms = new Map<string, string[]>();
  for (const text of texts) {
    const form = formOf(text);
    forms.set(form, [...(forms.get(form) ?? []), text]);
  }
  const usual = [...forms.values()].filter((list) => list.length >= Math.max(2, texts.length * LEAST_FORM));
  const covered = usual.reduce((sum, list) => sum + list.length, 0) / texts.length;
  if (usual.length < 2 || usual.length > MOST_FORMS || covered < LEAST_READ) return undefined;
  const guesses = usual.map((list) => guessDates(list));
  const unsure = guesses.filter((guess) => guess?.value === undefined);
  const [doubt] = unsure;
  if (guesses.some((guess) => guess === undefined || guess.share < LEAST_READ) || unsure.length > 1)
    return undefined;
  const joined = (choice?: string): string => guesses.map((guess) => guess!.value ?? choice!).join(' | ');
  const why = `written in ${usual.length} forms, such as ${usual.map(([text]) => `"${text}"`).join(' and ')}`;
  return doubt
    ? { ...open(doubt.options.map(joined), `${why}; ${doubt.why}`), share: covered }
    : { ...likely(joined(), why), share: covered };
}

/** The shape of a text: numbers alike whatever their digits, save how many the first has. */
const formOf = (text: string): string =>
  text
    .replace(/^\d+/, (digits) => (digits.length > 2 ? 'yyyy' : 'n'))
    .replace(/\d+/g, 'n')
    .replace(/\p{L}+\.?/gu, (word) => (word === 'yyyy' || word === 'n' ? word : 'a'));

/** An export that spans so few years in one reading does not span so many in truth. */
const SHORT_YEARS = 4;
const LONG_YEARS = 10;

function yearsOf(times: readonly (number | undefined)[]): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const time of times)
    if (isYear(time)) {
      least = Math.min(least, time!);
      most = Math.max(most, time!);
    }
  return most < least ? 0 : (most - least) / (365.25 * MS_PER_DAY);
}

/** Share of the steps between rows that go back in time. */
function disorder(times: readonly (number | undefined)[]): number {
  const known = times.filter((time) => time !== undefined);
  if (known.length < 2) return 1;
  let back = 0;
  for (let at = 1; at < known.length; at++) if (known[at]! < known[at - 1]!) back++;
  return back / (known.length - 1);
}

/** Days as a spreadsheet counts them: all numbers of years 2000 to 2060 or so. Which of the two counts it is, is likely the newer one's. */
export function guessSerial(texts: readonly string[]): DateGuess | undefined {
  const read = serialReader('serial 1900')!;
  const fits = texts.filter((text) => {
    const time = read(text)?.wallMs;
    return isYear(time) && time! < Date.UTC(2060, 0, 1);
  });
  if (texts.length === 0 || fits.length < texts.length * LEAST_READ) return undefined;
  return {
    ...likely(
      'serial 1900',
      'numbers as a spreadsheet counts days; counted from 1904 they would be four years later',
      ['serial 1900', 'serial 1904'],
    ),
    share: fits.length / texts.length,
  };
}
