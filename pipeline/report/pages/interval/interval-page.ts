import type { IntervalCase } from '../../../findings/interval/interval-schema.ts';
import { html } from '../../html/html.ts';
import { numbering, type ReportContext } from '../../page-context.ts';
import { page } from '../../parts/page.ts';
import type { ReportFile } from '../../report-file.ts';
import { argumentSection } from './argument-section.ts';
import { calendarFile } from './calendar-file.ts';
import { candidatesSection } from './candidates-section.ts';
import { clockSection } from './clock-section.ts';
import { inputsSection } from './inputs-section.ts';
import type { IntervalWords } from './interval-words.ts';
import { levelsSection } from './levels-section.ts';
import { planSection } from './plan-section.ts';
import type { SectionContext } from './section-context.ts';
import { shapeSection } from './shape-section.ts';
import { surfacesSection } from './surfaces-section.ts';

/** The page of the case: the argument on its first sheet, then the evidence. */
export async function intervalPage(
  context: ReportContext,
  found: IntervalCase,
  text: IntervalWords = context.words.interval,
): Promise<string> {
  const section: SectionContext = { context, numbers: numbering(), found, text };
  const { month, review } = context;
  return page(context, {
    title: text.evidence.title(month),
    heading: text.evidence.heading,
    under: html`<p class="organisation">${month}${review.organisation !== '' && `, ${review.organisation}`}</p>`,
    path: 'interval.html',
    sections: [
      argumentSection(section),
      await clockSection(section),
      shapeSection(section),
      await candidatesSection(section),
      levelsSection(section),
      await planSection(section),
      await surfacesSection(section),
      inputsSection(section),
    ],
  });
}

/** The files that the case adds to a review: its page, its data and the calendar file of proposals. */
export async function intervalFiles(context: ReportContext, found: IntervalCase): Promise<ReportFile[]> {
  return [
    { path: 'interval.html', content: await intervalPage(context, found) },
    { path: 'interval.json', content: `${JSON.stringify(found, null, 2)}\n` },
    {
      path: 'interval.ics',
      content: calendarFile(found, context.review.organisation, context.words.interval),
    },
  ];
}
