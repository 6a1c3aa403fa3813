import type { Locale } from './locale.ts';

/** English as it is written in Europe: day before month. */
export const enLocale: Locale = {
  lang: 'en',
  decimal: '.',
  thousands: ',',
  percent: (number) => `${number}%`,
  under: (number) => `under ${number}`,
  range: (from, to) => `${from} to ${to}`,
  daysOfMonth: (day, to) => `${day} to ${to}`,
  months: [
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
  ],
  monthsShort: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  weekdays: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
  weekdaysShort: ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'],
  dayMonth: (day, month) => `${day} ${month}`,
  and: 'and',
  small: ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'],
  bytes: { bytes: 'bytes', kilo: 'kB', mega: 'MB' },
};
