import { html } from '../html/html.ts';
import { numbering, type ReportContext } from '../page-context.ts';
import { page } from '../parts/page.ts';
import { comparisonSections } from './review/comparisons.ts';

/** Comparisons: all numbers behind each verdict. */
export function comparisonsPage(context: ReportContext): string {
  const { words, month, review } = context;
  return page(context, {
    title: words.pages.comparisonsTitle(month),
    heading: words.pages.comparisons,
    under: html`<p class="organisation">${month}${review.organisation !== '' && `, ${review.organisation}`}</p>`,
    path: 'comparisons.html',
    sections: comparisonSections(context, numbering()),
  });
}
