import { certain, type Guess, likely } from './guess.ts';

/** Whether a time lies in the years from which exports come. */
export const isYear = (time: number | undefined): boolean =>
  time !== undefined && time >= Date.UTC(2000, 0, 1) && time < Date.UTC(2100, 0, 1);

/** From so many texts on one that refutes an order may be a slip. */
export const SLIPS_FROM = 20;

/** How many rows one reading can read and the other can't. */
export function witnesses(
  read: readonly (number | undefined)[],
  other: readonly (number | undefined)[],
  texts: readonly string[],
): number {
  const found = texts.filter((_, at) => isYear(read[at]) && !isYear(other[at]));
  // A row that stands twice is one.
  return found.length <= 2 ? new Set(found).size : found.length;
}

/** One text alone speaks for an order, and it may be a slip: with full stops the day stands first all the same; else the one text is believed, never as certain. */
export function byOneWitness(
  first: { pattern: string; times: readonly (number | undefined)[] },
  doubted: readonly { pattern: string; times: readonly (number | undefined)[] }[],
  texts: readonly string[],
): Guess<string> {
  const [other] = doubted;
  const at = other!.times.findIndex((time, index) => !isYear(time) && isYear(first.times[index]));
  const options = [first, ...doubted].map(({ pattern }) => pattern);
  const monthFirst = (pattern: string): boolean => /^M+\.d+\./.test(pattern);
  const usual = doubted.find(({ pattern }) => !monthFirst(pattern));
  if (monthFirst(first.pattern) && usual)
    return likely(usual.pattern, `"${texts[at] ?? ''}" alone speaks against it, and may be a slip`, options);
  return likely(first.pattern, `"${texts[at] ?? ''}" alone shows it, and may be a slip`, options);
}

/** Whether the days read lie in several years and always on the same day of the month: a day taken for a year. */
export function aYearApart(times: readonly (number | undefined)[]): boolean {
  const dates = times.filter(isYear).map((time) => new Date(time!));
  const years = new Set(dates.map((date) => date.getUTCFullYear()));
  return years.size >= 3 && new Set(dates.map((date) => date.getUTCDate())).size === 1;
}

/**
 * Where the year stands first and days from 1 to 12 leave the order of the rest open: with hyphens and two digits each it is the form of ISO 8601 (calendar date, extended
 * format), in which the month comes before the day; with other marks it is likely so, since no country writes year, day, month. Undefined: another choice is left.
 *
 * @param patterns those that read the texts alike
 */
export function byYearFirst(patterns: readonly string[]): Guess<string> | undefined {
  const standard = patterns.find((pattern) => /^(?:EEE,? )?yyyy(\P{L})M+\1d+/u.test(pattern));
  const rest = patterns.filter((pattern) => pattern !== standard);
  if (standard === undefined || rest.length === 0) return undefined;
  if (!rest.every((pattern) => /^(?:EEE,? )?yyyy(\P{L})d+\1M+/u.test(pattern))) return undefined;
  return /^yyyy-MM-dd/.test(standard)
    ? certain(standard, 'year first with hyphens is the form of ISO 8601')
    : likely(standard, 'the year stands first, and then the month everywhere', [standard, ...rest]);
}
