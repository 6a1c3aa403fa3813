import type { Review } from '../../../findings/review-schema.ts';

/** A unit of the review. */
export type Unit = Review['units'][number];
