import { type Html, html } from '../html/html.ts';
import { type Numbering, numbering, type ReportContext } from '../page-context.ts';
import { page, type Section } from '../parts/page.ts';
import { reasonList } from '../parts/reasons.ts';
import { unitDriftSection } from './unit/drift.ts';
import { unitCleaningSection, unitComparisonsSection, unitRecordsSection } from './unit/evidence.ts';
import { historySection } from './unit/history.ts';
import { cyclesSection, erasSection, testsSection } from './unit/numbers.ts';
import type { Unit } from './unit/unit.ts';

/** A unit: why it is on the list, its whole record at a glance, then the evidence. */
export async function unitPage(context: ReportContext, unit: Unit): Promise<string> {
  const { words, month, paged, siteName } = context;
  const numbers: Numbering = numbering();
  const sections: Section[] = [
    { id: 'attention', heading: words.unit.attentionHeading, body: attention(context, unit) },
    await historySection(context, numbers, unit),
    await testsSection(context, numbers, unit),
    await cyclesSection(context, numbers, unit),
    await unitDriftSection(context, numbers, unit),
    await unitCleaningSection(context, numbers, unit),
    await unitComparisonsSection(context, numbers, unit),
    unitRecordsSection(context, numbers, unit),
    erasSection(context, numbers, unit),
  ];
  const at = paged.indexOf(unit);
  const neighbour = (index: number): [string, string] | undefined => {
    const other = paged[index];
    return other && [context.unitPage(other.unit)!, other.unit];
  };
  const previous = neighbour(at - 1);
  const next = neighbour(at + 1);
  return page(context, {
    title: words.pages.unitTitle(unit.unit, month),
    heading: words.pages.unit(unit.unit),
    under: html`<p class="organisation">${unit.name !== '' && `${unit.name}, `}${siteName(unit.site)}, ${month}</p>`,
    path: context.unitPage(unit.unit)!,
    neighbours: { ...(previous && { previous }), ...(next && { next }) },
    sections,
  });
}

function attention(context: ReportContext, unit: Unit): Html {
  if (unit.attention.length === 0) return html`<p class="empty">${context.words.unit.noAttention}</p>`;
  return reasonList(context, unit, 'here');
}
