import type { Rate } from '../../findings/review-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** A rate for a table: counts, and below them the rate with its interval. */
export function rateCell({ words }: Pick<ReportContext, 'words'>, rate: Rate): Html {
  const { format, pages } = words;
  if (rate.of === 0) return html`${pages.none}`;
  const counts = pages.outOf(rate.events, rate.of);
  if (rate.rate === null || rate.low === null || rate.high === null)
    return html`<span class="figures">${counts}</span>`;
  return html`<span class="figures">${counts}</span> <span class="sub">${pages.rateShort(
    format.percent(rate.rate),
    format.percent(rate.low),
    format.percent(rate.high),
  )}</span>`;
}

/** A count for a table; zeros are paler, so that the others stand out. */
export function countCell({ format }: ReportContext['words'], count: number): Html {
  return count === 0 ? html`<span class="zero">0</span>` : html`${format.integer(count)}`;
}
