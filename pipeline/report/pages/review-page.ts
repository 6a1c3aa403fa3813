import { html } from '../html/html.ts';
import { numbering, type ReportContext } from '../page-context.ts';
import { page, type Section } from '../parts/page.ts';
import { meetingInShort } from './meeting/meeting-page.ts';
import { cautionsSection, methodsSection, settingsInShort } from './method-sections.ts';
import { recordSections } from './record-sections.ts';
import { answersSection } from './review/answers.ts';
import { attentionSection, unitsSection } from './review/attention.ts';
import { cleaningSection } from './review/cleaning.ts';
import { comparisonsSection } from './review/comparisons.ts';
import { decisionsSection } from './review/decisions.ts';
import { driftSection } from './review/drift.ts';
import { keySection } from './review/key.ts';
import { abortsSection, clockSection, testsSection } from './review/series.ts';

/** The review: the month in two minutes, then evidence, then records, then methods. */
export async function reviewPage(context: ReportContext): Promise<string> {
  const { words, month, review } = context;
  const numbers = numbering();
  const { parts } = words.answers.story;
  const sections: Section[] = [
    { ...answersSection(context), part: parts.story },
    decisionsSection(context, numbers),
    await keySection(context, numbers),
    { ...meetingInShort(context), part: parts.evidence },
    attentionSection(context),
    unitsSection(context, numbers),
    await cleaningSection(context, numbers),
    await testsSection(context, numbers),
    await abortsSection(context, numbers),
    await clockSection(context, numbers),
    await driftSection(context, numbers),
    await comparisonsSection(context, numbers),
    ...recordSections(context, numbers, 'month').map((section, index) =>
      index === 0 ? { ...section, part: parts.records } : section,
    ),
    { ...methodsSection(context), part: parts.methods },
    settingsInShort(context, numbers),
    cautionsSection(context),
    {
      id: 'machine',
      heading: words.pages.machine,
      body: html`<p>${words.pages.machineText} <a href="review.json">review.json</a>, <a href="review.schema.json">review.schema.json</a>, <a href="problems.csv">problems.csv</a>, <a href="tables/">tables</a>.</p>
<p><a href="review.xlsx">${words.workbook.link}</a></p>`,
    },
  ];
  return page(context, {
    title: words.pages.title(month),
    heading: month,
    under: html`${review.organisation !== '' && html`<p class="organisation">${review.organisation}</p>`}`,
    path: 'index.html',
    sections,
  });
}
