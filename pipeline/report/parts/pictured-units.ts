import type { Review } from '../../findings/review-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** Units up to which pictures of single units hold all, and how many they hold of more: a page with them would be neither looked at nor light. */
const MOST_UNITS = 60;
const PICTURED = 40;

/**
 * The units that pictures of single units show: all, or where there are many the first in the order of need.
 *
 * @param ids units to choose from; left out: those of the review
 */
export function picturedUnits(
  { units, attention_order }: Review,
  ids = units.map((unit) => unit.unit),
): ReadonlySet<string> {
  return new Set(
    ids.length <= MOST_UNITS ? ids : [...new Set([...attention_order, ...ids])].slice(0, PICTURED),
  );
}

/** Rows of units that a long table of the review holds, at most; past that it holds the units of the pictures. */
const MOST_ROWS = 250;

/** The units that the long tables of the review hold beside the table of all units. */
export function listedUnits(review: Review): Review['units'] {
  if (review.units.length <= MOST_ROWS) return review.units;
  const pictured = picturedUnits(review);
  return review.units.filter((unit) => pictured.has(unit.unit));
}

/** Says which units the pictures of a page hold whose tables say for themselves what they hold. */
export function picturesNote({ review, words }: Pick<ReportContext, 'review' | 'words'>): Html | false {
  const { length } = review.units;
  return length > MOST_UNITS && html`<p class="note">${words.pages.picturesOf(PICTURED, length)}</p>`;
}

/** Says which units the pictures hold, where that is not all. */
export function picturedNote({
  review,
  paged,
  words,
}: Pick<ReportContext, 'review' | 'paged' | 'words'>): Html | false {
  const { length } = review.units;
  const text = length > MOST_ROWS ? words.pages.picturedAndListed : words.pages.pictured;
  return (
    length > MOST_UNITS &&
    html`<p class="note">${text(PICTURED, length)} ${words.pages.ownPages(paged.length, length)}</p>`
  );
}
