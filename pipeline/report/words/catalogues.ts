import type { Language } from '../../site/report-settings.ts';
import { de } from './de.ts';
import { en } from './en.ts';
import type { Words } from './words.ts';

/** The catalogue of each language. */
export const CATALOGUES: Readonly<Record<Language, Words>> = { en, de };
