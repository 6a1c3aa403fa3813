import type { Locale } from './locale.ts';

/** German: decimal comma, blank before the sign for per cent (DIN 5008), point after the day; what belongs together is not broken. */
export const deLocale: Locale = {
  lang: 'de',
  decimal: ',',
  thousands: '.',
  percent: (number) => `${number}\u00a0%`,
  under: (number) => `unter ${number}`,
  range: (from, to) => `${from} bis ${to}`,
  daysOfMonth: (day, to) => `${day}. bis ${to}`,
  months: [
    'Januar',
    'Februar',
    'März',
    'April',
    'Mai',
    'Juni',
    'Juli',
    'August',
    'September',
    'Oktober',
    'November',
    'Dezember',
  ],
  monthsShort: ['Jan', 'Feb', 'März', 'Apr', 'Mai', 'Juni', 'Juli', 'Aug', 'Sep', 'Okt', 'Nov', 'Dez'],
  weekdays: ['Montag', 'Dienstag', 'Mittwoch', 'Donnerstag', 'Freitag', 'Samstag', 'Sonntag'],
  weekdaysShort: ['Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa', 'So'],
  dayMonth: (day, month) => `${day}.\u00a0${month}`,
  and: 'und',
  small: ['kein', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun'],
  bytes: { bytes: 'Byte', kilo: 'kB', mega: 'MB' },
};
