import { en } from '../../words/en.ts';
import type { Words } from '../../words/words.ts';

/** All words of the case in one language: the page, the command and the calendar file. */
export type IntervalWords = Words['interval'];

/** The same in English. */
export const intervalWords: IntervalWords = en.interval;
