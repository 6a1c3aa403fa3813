import type { AttentionReason } from '../../findings/review-schema.ts';

/** What a reason for attention has in numbers and codes, by name. */
export type Numbers = AttentionReason['numbers'];

/** A number; 0 where there is none. */
export const num = (numbers: Numbers, key: string): number =>
  typeof numbers[key] === 'number' ? numbers[key] : 0;

/** A code or text; empty where there is none. */
export const text = (numbers: Numbers, key: string): string => String(numbers[key] ?? '');
