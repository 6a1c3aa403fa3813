import type { Review } from '../../findings/review-schema.ts';

/** Whose pages are drawn beside those of units that need attention: of all units, or of those named. */
export type PagesAsked = 'all' | readonly string[];

/** Units up to which each has a page of its own. */
const MOST_PAGES = 120;

/** The units that have a page of their own: all, or where there are many those that need attention and those asked for. */
export function unitsWithPage({ units }: Pick<Review, 'units'>, asked: PagesAsked = []): Review['units'] {
  if (asked === 'all' || units.length <= MOST_PAGES) return units;
  const named = new Set(asked);
  return units.filter(({ unit, attention }) => attention.length > 0 || named.has(unit));
}
