import type { Locale } from './locale.ts';

/** Numbers, dates and lists as text of one language. */
export interface Format {
  integer(value: number): string;
  fixed(value: number, digits: number): string;
  /** Number with two significant figures, never in powers of ten. */
  twoFigures(value: number): string;
  /** Number with at most three significant figures, no zeros at the end. */
  figures(value: number, most?: number): string;
  /** The same with its sign, for changes. */
  change(value: number, most?: number): string;
  /** Share as a percentage: one decimal under ten per cent. */
  percent(share: number): string;
  /** Level of an interval: "95%". */
  level(level: number): string;
  ratio(value: number): string;
  /** p-value: small ones as a bound, since the shift test has a smallest p. */
  pValue(p: number): string;
  /** A month of "yyyy-MM" or of a date, with its year; its name; its short name. */
  month(month: string): string;
  monthName(month: string): string;
  monthShort(month: string): string;
  /** Day of the week, 1 Monday to 7 Sunday. */
  weekday(day: number): string;
  weekdayShort(day: number): string;
  date(date: string): string;
  dayMonth(date: string): string;
  /** Wall time "2026-03-03 06:30" of a site. */
  time(time: string): string;
  span(from: string, to: string): string;
  range(from: string, to: string): string;
  list(items: readonly string[]): string;
  bytes(bytes: number): string;
  /** A count with its noun: figures, or words below ten where `words` is asked for. */
  count(n: number, one: string, many: string, style?: 'figures' | 'words'): string;
  /** The text with a capital first. */
  sentence(text: string): string;
  /** The marks that charts write numbers with, in the form of Vega (that of d3-format). */
  chart: {
    decimal: string;
    thousands: string;
    grouping: number[];
    currency: [string, string];
    percent: string;
  };
}

/** The text functions of a language, from its tables. Pure: the same value, the same text on each machine. */
export function formatOf(locale: Locale): Format {
  const marks = (text: string): string => {
    const [whole, part] = text.split('.') as [string, string?];
    const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, locale.thousands);
    return part === undefined ? grouped : `${grouped}${locale.decimal}${part}`;
  };
  const integer = (value: number): string => marks(String(Math.round(value)));
  const fixed = (value: number, digits: number): string => marks(value.toFixed(digits));
  const twoFigures = (value: number): string => {
    const size = Math.abs(value);
    if (size === 0) return '0';
    if (size >= 9.95) return integer(value);
    if (size >= 0.995) return fixed(value, 1);
    return fixed(value, size >= 0.0995 ? 2 : 3);
  };
  const figures = (value: number, most = 3): string => marks(plain(Number(value.toPrecision(most))));
  const monthName = (month: string): string => locale.months[Number(month.slice(5, 7)) - 1] ?? month;
  const dayOf = (date: string): number => Number(date.slice(8, 10));
  const date = (of: string): string => `${locale.dayMonth(dayOf(of), monthName(of))} ${of.slice(0, 4)}`;
  return {
    integer,
    fixed,
    twoFigures,
    figures,
    change: (value, most) => `${value > 0 ? '+' : ''}${figures(value, most)}`,
    percent: (share) => {
      const value = share * 100;
      if (value > 0 && value < 0.05) return locale.under(locale.percent(fixed(0.1, 1)));
      if (value === 0 || value >= 99.95) return locale.percent(integer(value));
      return locale.percent(value < 9.95 ? fixed(value, 1) : integer(value));
    },
    level: (level) => locale.percent(marks(String(Number((level * 100).toFixed(1))))),
    ratio: twoFigures,
    pValue: (p) => (p < 0.001 ? locale.under(fixed(0.001, 3)) : fixed(p, p < 0.1 ? 3 : 2)),
    month: (month) => `${monthName(month)} ${month.slice(0, 4)}`,
    monthName,
    monthShort: (month) => locale.monthsShort[Number(month.slice(5, 7)) - 1] ?? month,
    weekday: (day) => locale.weekdays[day - 1] ?? '',
    weekdayShort: (day) => locale.weekdaysShort[day - 1] ?? '',
    date,
    dayMonth: (of) => locale.dayMonth(dayOf(of), monthName(of)),
    time: (time) => `${date(time)}, ${time.slice(11, 16)}`,
    span: (from, to) => {
      if (from === to) return date(from);
      if (from.slice(0, 7) === to.slice(0, 7)) return locale.daysOfMonth(dayOf(from), date(to));
      return locale.range(date(from), date(to));
    },
    range: locale.range,
    list: (items) =>
      items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${locale.and} ${items.at(-1)}`,
    bytes: (bytes) => {
      if (bytes < 1000) return `${bytes} ${locale.bytes.bytes}`;
      if (bytes < 999_500) return `${integer(bytes / 1000)} ${locale.bytes.kilo}`;
      return `${fixed(bytes / 1e6, 1)} ${locale.bytes.mega}`;
    },
    count: (n, one, many, style = 'figures') =>
      `${style === 'words' && n < 10 ? locale.small[n] : integer(n)} ${n === 1 ? one : many}`,
    sentence: (text) => text.charAt(0).toUpperCase() + text.slice(1),
    chart: {
      decimal: locale.decimal,
      thousands: locale.thousands,
      grouping: [3],
      currency: ['', ''],
      percent: locale.percent(''),
    },
  };
}

/** A number without powers of ten. */
function plain(value: number): string {
  const text = String(value);
  return text.includes('e')
    ? value.toFixed(Math.min(20, Math.max(0, -Math.floor(Math.log10(Math.abs(value))) + 2)))
    : text;
}
