import type { DriftOperatingCharacteristics } from '../../findings/drift/operating-characteristics.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { dataTable } from '../parts/data-table.ts';
import type { Section } from '../parts/page.ts';

type Row = DriftOperatingCharacteristics['scenarios'][number];

/** How good the drift watch was on simulated sites; no section where that was not measured. */
export function driftMeasuredSection(context: ReportContext, numbers: Numbering): Section[] {
  const { review, words } = context;
  const measured = review.drift_operating_characteristics;
  if (measured === null) return [];
  const text = words.drift.measured;
  const { heads } = text;
  const share = (value: Row['found']): Html =>
    value === null
      ? html`${text.notAsked}`
      : html`<span class="figures">${words.pages.outOf(value.count, value.of)}</span> <span class="sub">${words.pages.rateShort(
          words.format.percent(value.count / value.of),
          words.format.percent(value.low),
          words.format.percent(value.high),
        )}</span>`;
  const lead = ({ lead_share: part, lead_days: days }: Row): Html =>
    part === null || days === null
      ? html`${text.notAsked}`
      : html`<span class="figures">${text.days(days.median)}</span> <span class="sub">${text.share(words.format.percent(part.median))}</span>`;
  const calls = ({ false_calls: of }: Row): Html =>
    html`<span class="figures">${words.format.figures(of.per_unit_year)}</span> <span class="sub">${text.span(of.low, of.high)}</span>`;
  return [
    {
      id: 'drift-measured',
      heading: text.heading,
      body: html`<p>${text.intro(measured.version, measured.stride)}</p>
${dataTable(context, numbers, {
  caption: text.caption,
  rows: measured.scenarios,
  columns: [
    { head: heads.scenario, kind: 'long', cell: (row) => text.scenario(row.scenario, row.says) },
    { head: heads.falseCalls, kind: 'number', cell: calls },
    { head: heads.found, kind: 'number', cell: (row) => share(row.found) },
    { head: heads.lead, kind: 'number', cell: lead },
    { head: heads.steps, kind: 'number', cell: (row) => share(row.steps_called_slopes) },
    { head: heads.intervals, kind: 'number', cell: (row) => share(row.later_intervals) },
    { head: heads.teeth, kind: 'number', cell: (row) => share(row.teeth_named) },
  ],
})}
<p class="note">${text.runLengths(range(measured, 'normal'), range(measured, 'heavy tails'))}</p>`,
    },
  ];
}

/** Least and largest mean run length over charts and autocorrelations. */
function range(
  { run_lengths: rows }: DriftOperatingCharacteristics,
  noise: DriftOperatingCharacteristics['run_lengths'][number]['noise'],
): { low: number; high: number } {
  const means = rows.filter((row) => row.noise === noise).map((row) => row.mean);
  return { low: Math.min(...means), high: Math.max(...means) };
}

/** The same in one sentence, for the drift section of the review. */
export function driftMeasuredNote({ review, words }: ReportContext): Html | false {
  const scenarios = review.drift_operating_characteristics?.scenarios ?? [];
  const quiet = scenarios.find((of) => of.scenario === 'no drift');
  const drift = scenarios.find((of) => of.scenario === 'drift');
  if (!quiet || !drift?.found || !drift.lead_days) return false;
  const text = words.drift.measured;
  return html`<p class="note">${text.note({
    calls: text.calls(quiet.false_calls.per_unit_year, quiet.false_calls.low, quiet.false_calls.high),
    found: words.pages.rateShort(
      words.format.percent(drift.found.count / drift.found.of),
      words.format.percent(drift.found.low),
      words.format.percent(drift.found.high),
    ),
    lead: text.days(drift.lead_days.median),
  })} <a class="screen" href="methods.html#drift-measured">${text.more}</a></p>`;
}
