/** What the makers of the third set share: days, texts of times, lines of a table. Nothing is drawn by chance, so that the same files come each time. */

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** Wall time as a date whose UTC parts show it. */
export const wall = (day: string, addDays = 0, minutes = 0): Date =>
  new Date(Date.parse(`${day}T00:00:00Z`) + (addDays * 1440 + minutes) * 60_000);

export const later = (time: Date, minutes: number): Date => new Date(time.getTime() + minutes * 60_000);

export const isSunday = (time: Date): boolean => time.getUTCDay() === 0;

/** Writes a wall time; `half` are the words for before and after noon. */
export function write(time: Date, pattern: string, half: readonly [string, string] = ['AM', 'PM']): string {
  const hour = time.getUTCHours();
  const parts: Record<string, string> = {
    yyyy: String(time.getUTCFullYear()),
    yy: twoDigits(time.getUTCFullYear() % 100),
    MM: twoDigits(time.getUTCMonth() + 1),
    M: String(time.getUTCMonth() + 1),
    dd: twoDigits(time.getUTCDate()),
    d: String(time.getUTCDate()),
    HH: twoDigits(hour),
    H: String(hour),
    h: String(hour % 12 === 0 ? 12 : hour % 12),
    mm: twoDigits(time.getUTCMinutes()),
    ss: twoDigits(time.getUTCSeconds()),
    a: half[hour < 12 ? 0 : 1],
  };
  return pattern.replace(/yyyy|yy|MM|M|dd|d|HH|H|h|mm|ss|a/g, (part) => parts[part]!);
}

/** A value that moves about its middle with no order in it. */
export const wave = (at: number, middle: number, spread: number, digits: number, step = 7): string =>
  (middle + (spread * (((at * step + 3) % 11) - 5)) / 5).toFixed(digits);

export const comma = (number: string): string => number.replace('.', ',');

/** Seconds as minutes and seconds. */
export const clock = (seconds: number): string =>
  `${twoDigits(Math.floor(seconds / 60))}:${twoDigits(Math.round(seconds) % 60)}`;

export function lines(
  rows: readonly (readonly (string | number)[])[],
  delimiter: string,
  end = '\r\n',
): string {
  const cell = (value: string | number): string => {
    const text = String(value);
    return text.includes(delimiter) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return rows.map((row) => row.map(cell).join(delimiter) + end).join('');
}

export const windows1252 = (text: string): Uint8Array => Buffer.from(text, 'latin1');
export const withMark = (text: string): string => `\uFEFF${text}`;

export const counts = (
  records: number,
  skipped = 0,
  rejected = 0,
  duplicates = 0,
): { records: number; duplicates: number; rejected: number; skipped: number } => ({
  records,
  duplicates,
  rejected,
  skipped,
});
