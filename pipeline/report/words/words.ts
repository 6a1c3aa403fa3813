import type { en } from './en.ts';

/** The catalogue of words: the type that each language fills. */
export type Words = typeof en;
