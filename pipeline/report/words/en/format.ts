import { enLocale } from '../locale/en.ts';
import { formatOf } from '../locale/format.ts';

/** Numbers, dates and lists as English text. */
export const format = formatOf(enLocale);
