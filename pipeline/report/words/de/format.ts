import { deLocale } from '../locale/de.ts';
import { formatOf } from '../locale/format.ts';

/** Numbers, dates and lists as German text. */
export const format = formatOf(deLocale);
