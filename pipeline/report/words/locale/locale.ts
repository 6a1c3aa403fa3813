/** How one language writes numbers, dates and lists. Own tables, so that no machine's locale takes part. */
export interface Locale {
  /** BCP 47 tag, for the pages. */
  lang: string;
  /** Mark before the decimals, and mark between thousands. */
  decimal: string;
  thousands: string;
  /** A number with the sign for per cent, and a bound below which a number is not written. */
  percent: (number: string) => string;
  under: (number: string) => string;
  /** A span from one text to another: "3 to 5". */
  range: (from: string, to: string) => string;
  /** A span of two days of one month, and of others. */
  daysOfMonth: (fromDay: number, to: string) => string;
  /** Names, January and Monday first. */
  months: readonly string[];
  monthsShort: readonly string[];
  weekdays: readonly string[];
  weekdaysShort: readonly string[];
  dayMonth: (day: number, monthName: string) => string;
  /** "a, b and c": what stands before the last of a list. */
  and: string;
  /** Numbers from 0 to 9 in words. */
  small: readonly string[];
  bytes: { bytes: string; kilo: string; mega: string };
}
