import { html } from '../html/html.ts';
import { numbering, type ReportContext } from '../page-context.ts';
import { page } from '../parts/page.ts';
import { driftMeasuredSection } from './drift-measured-section.ts';
import { errorRatesSection } from './error-rates-section.ts';
import { cautionsSection, methodsSection, settingsSection, wordsSection } from './method-sections.ts';

/** Methods, words, settings and cautions. */
export function methodsPage(context: ReportContext): string {
  const { words, month, review } = context;
  const numbers = numbering();
  return page(context, {
    title: words.pages.methodsTitle(month),
    heading: words.pages.methods,
    under: html`<p class="organisation">${month}${review.organisation !== '' && `, ${review.organisation}`}</p>`,
    path: 'methods.html',
    sections: [
      methodsSection(context),
      wordsSection(context),
      ...errorRatesSection(context, numbers),
      ...driftMeasuredSection(context, numbers),
      settingsSection(context, numbers),
      cautionsSection(context),
    ],
  });
}
