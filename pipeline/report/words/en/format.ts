/** Numbers, dates and lists as English text. Written out by hand, so that no machine's locale takes part. */

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

const integer = (value: number): string => String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, ',');

const fixed = (value: number, digits: number): string => {
  const [whole, part] = value.toFixed(digits).split('.') as [string, string?];
  return part === undefined ? integer(Number(whole)) : `${integer(Number(whole))}.${part}`;
};

/** Number with two significant figures, never in powers of ten. */
const twoFigures = (value: number): string => {
  const size = Math.abs(value);
  if (size === 0) return '0';
  if (size >= 9.95) return integer(value);
  if (size >= 0.995) return fixed(value, 1);
  return fixed(value, size >= 0.0995 ? 2 : 3);
};

const monthName = (month: string): string => MONTHS[Number(month.slice(5, 7)) - 1] ?? month;

export const format = {
  integer,
  fixed,
  twoFigures,
  /** Share as a percentage: one decimal under ten per cent. */
  percent: (share: number): string => {
    const value = share * 100;
    if (value > 0 && value < 0.05) return 'under 0.1%';
    if (value === 0 || value >= 99.95) return `${integer(value)}%`;
    return `${value < 9.95 ? fixed(value, 1) : integer(value)}%`;
  },
  ratio: twoFigures,
  /** p-value: small ones as a bound, since the shift test has a smallest p. */
  pValue: (p: number): string => (p < 0.001 ? 'under 0.001' : fixed(p, p < 0.1 ? 3 : 2)),
  month: (month: string): string => `${monthName(month)} ${month.slice(0, 4)}`,
  monthName,
  monthShort: (month: string): string => monthName(month).slice(0, 3),
  date: (date: string): string => `${Number(date.slice(8, 10))} ${monthName(date)} ${date.slice(0, 4)}`,
  dayMonth: (date: string): string => `${Number(date.slice(8, 10))} ${monthName(date)}`,
  /** Wall time "2026-03-03 06:30" of a site. */
  time: (time: string): string => `${format.date(time)}, ${time.slice(11, 16)}`,
  span: (from: string, to: string): string => {
    if (from === to) return format.date(from);
    if (from.slice(0, 7) === to.slice(0, 7)) return `${Number(from.slice(8, 10))} to ${format.date(to)}`;
    return `${format.date(from)} to ${format.date(to)}`;
  },
  list: (items: readonly string[]): string =>
    items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`,
  bytes: (bytes: number): string =>
    bytes < 1000
      ? `${bytes} bytes`
      : bytes < 999_500
        ? `${integer(bytes / 1000)} kB`
        : `${fixed(bytes / 1e6, 1)} MB`,
  /** A count with its noun: figures from ten on, words below where `words` is asked for. */
  count: (n: number, one: string, many: string, style: 'figures' | 'words' = 'figures'): string =>
    `${style === 'words' && n < 10 ? SMALL[n] : integer(n)} ${n === 1 ? one : many}`,
  sentence: (text: string): string => text.charAt(0).toUpperCase() + text.slice(1),
};
export type Format = typeof format;
