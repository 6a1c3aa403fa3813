import { html } from '../html/html.ts';
import { numbering, type ReportContext } from '../page-context.ts';
import { page } from '../parts/page.ts';
import { recordSections } from './record-sections.ts';

/** Records and data: every list of the whole record, and the account of the reading. */
export function recordsPage(context: ReportContext): string {
  const { words, month, review } = context;
  return page(context, {
    title: words.pages.recordsTitle(month),
    heading: words.pages.records,
    under: html`<p class="organisation">${month}${review.organisation !== '' && `, ${review.organisation}`}</p>`,
    path: 'records.html',
    sections: recordSections(context, numbering(), 'record'),
  });
}
