import type { ProbeDrift } from '../../../findings/drift/drift-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import { driftFigure } from '../../parts/drift-figure.ts';
import { driftTable } from '../../parts/drift-table.ts';
import type { Section } from '../../parts/page.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { probesOf } from '../../rows/drift-rows.ts';
import { driftMeasuredNote } from '../drift-measured-section.ts';

/** Pictures on the review page, at most; the unit pages have all. */
const MOST_FIGURES = 6;

/** What moves: units by days to their limit, a picture of each probe that moves, the common movement of the sites. */
export async function driftSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { words, review } = context;
  const { drift } = review;
  const text = words.drift;
  const moving = drift.units.flatMap((unit) =>
    drift.probes.filter((probe) => probe.unit === unit.unit && isMoving(probe, review.period.from)),
  );
  const figures: Html[] = [];
  for (const probe of moving.slice(0, MOST_FIGURES)) {
    const eras = probesOf(drift, probe.unit).find(([name]) => name === probe.probe)![1];
    const unit = drift.units.find((of) => of.unit === probe.unit);
    figures.push(await driftFigure(context, numbers, eras, unit, figures.length === 0));
  }
  const passes = drift.heat_up_passes.filter((pass) => pass.date >= review.period.from);
  const movements = drift.sites.filter((site) => site.change_4_weeks !== null);
  const body = html`<p>${text.intro}</p>
${driftMeasuredNote(context)}
${moving.length === 0 && html`<p class="empty">${text.none}</p>`}
${driftTable(context, numbers, { caption: text.tableCaption(drift.to), rows: moving, withUnit: true })}
${figures}
${dataTable(context, numbers, {
  caption: text.passesCaption,
  rows: passes,
  columns: [
    { head: text.passHeads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
    { head: text.passHeads.date, cell: (row) => words.format.date(row.date) },
    {
      head: text.passHeads.value,
      kind: 'number',
      cell: (row) => words.format.figures(row.heat_up_s),
    },
    {
      head: text.passHeads.limits,
      kind: 'number',
      cell: (row) => text.span(row.low_s, row.high_s),
    },
  ],
})}
${passes.length > 0 && html`<p class="note">${text.passesNote}</p>`}
${dataTable(context, numbers, {
  caption: text.siteCaption,
  rows: movements,
  columns: [
    { head: text.heads.site, kind: 'head', cell: (row) => context.siteName(row.site) },
    { head: text.heads.probe, cell: (row) => text.probe(row.probe) },
    {
      head: text.heads.change,
      kind: 'number',
      cell: (row) => text.change(row.change_4_weeks!, row.measure),
    },
  ],
})}
${movements.length > 0 && html`<p class="note">${text.siteNote}</p>`}`;
  return { id: 'drift', heading: text.heading, body };
}

/** Moving or near its limit now, or stepped in the month. */
function isMoving(probe: ProbeDrift, monthFrom: string): boolean {
  if (!probe.era.current) return false;
  if (probe.state === 'stepped') return probe.since !== null && probe.since >= monthFrom;
  return probe.state === 'moving' || probe.state === 'near_limit';
}
