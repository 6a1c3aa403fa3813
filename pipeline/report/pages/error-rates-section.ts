import type { OperatingCharacteristics } from '../../findings/operating-characteristics.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { dataTable } from '../parts/data-table.ts';
import type { Section } from '../parts/page.ts';

type Share = OperatingCharacteristics['scenarios'][number]['false_shown'];

/** How often the verdicts were wrong on simulated fleets; no section where that was not measured. */
export function errorRatesSection(context: ReportContext, numbers: Numbering): Section[] {
  const { review, words } = context;
  const measured = review.operating_characteristics;
  if (measured === null) return [];
  const { errorRates } = words.methods;
  const { heads } = errorRates;
  const share = (value: Share | null): Html =>
    value === null
      ? html`${errorRates.notAsked}`
      : html`<span class="figures">${words.pages.outOf(value.count, value.of)}</span> <span class="sub">${words.pages.rateShort(
          words.format.percent(value.share),
          words.format.percent(value.low),
          words.format.percent(value.high),
        )}</span>`;
  return [
    {
      id: 'error-rates',
      heading: errorRates.heading,
      body: html`<p>${errorRates.intro(measured.fleets, measured.made, measured.version)}${measured.version !== review.version && ` ${errorRates.since(review.version)}`}</p>
${dataTable(context, numbers, {
  caption: errorRates.caption,
  rows: measured.scenarios,
  columns: [
    { head: heads.scenario, kind: 'head', cell: (row) => errorRates.scenario(row.scenario, row.says) },
    { head: heads.falseShown, kind: 'number', cell: (row) => share(row.false_shown) },
    { head: heads.falseEither, kind: 'number', cell: (row) => share(row.false_shown_or_suggested) },
    { head: heads.found, kind: 'number', cell: (row) => share(row.units_shown) },
    { head: heads.foundEither, kind: 'number', cell: (row) => share(row.units_shown_or_suggested) },
    { head: heads.coverage, kind: 'number', cell: (row) => share(row.coverage) },
  ],
})}`,
    },
  ];
}
