import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { driftFigure } from '../../parts/drift-figure.ts';
import { driftTable } from '../../parts/drift-table.ts';
import type { Section } from '../../parts/page.ts';
import { probesOf } from '../../rows/drift-rows.ts';
import type { Unit } from './unit.ts';

/** All probes of a unit: their states, then each one's full series. */
export async function unitDriftSection(
  context: ReportContext,
  numbers: Numbering,
  { unit }: Unit,
): Promise<Section> {
  const { words, review } = context;
  const text = words.drift;
  const probes = probesOf(review.drift, unit);
  const own = review.drift.units.find((of) => of.unit === unit);
  const figures: Html[] = [];
  for (const [, eras] of probes)
    figures.push(await driftFigure(context, numbers, eras, own, figures.length === 0));
  const rows = probes.flatMap(([, eras]) => eras.slice(-1));
  const body = html`${rows.length === 0 && html`<p class="empty">${text.unitNone}</p>`}
${driftTable(context, numbers, { caption: text.unitCaption(review.drift.to), rows, withUnit: false })}
${figures}`;
  return { id: 'drift', heading: text.heading, body };
}
