import type { BlindSource } from '../blind/make-blind.ts';

/** Short ways to write down a truth. */
type Column = BlindSource['columns'][string];

/** A field that stands in a column, or in several that are joined. */
export const col = (...headers: string[]): Column => ({ headers });

/** A field with the unit of measure of its column. */
export const measured = (header: string, measure: string): Column => ({ headers: [header], measure });

/** A time with the pattern by which it is read. */
export const dated = (dates: string, ...headers: string[]): Column => ({ headers, dates: [dates] });
