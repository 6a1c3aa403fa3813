import type { Comparison } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';

/** What the comparisons of one question say beside other exposures, and whether units differ. */
export function besideList({ words }: ReportContext, comparisons: readonly Comparison[]): Html | false {
  const { secondLook } = words.comparisons;
  const lines = comparisons.flatMap((of) => {
    const scope = of.unit ?? words.terms.fleet;
    return [
      ...of.beside.map((beside) => secondLook.beside(scope, of, beside)),
      ...(of.homogeneity ? [secondLook.homogeneity(of.homogeneity.p)] : []),
    ];
  });
  return lines.length > 0 && html`<ul class="note">${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
}

/** Looks that decide no verdict: dose and trend, and one model of all exposures. None where the record has neither. */
export function secondLookSection(context: ReportContext, numbers: Numbering): Section[] {
  const { review } = context;
  const doses = review.doses.filter((of) => of.classes.length > 1);
  if (doses.length === 0 && review.joint_models.length === 0) return [];
  const { secondLook } = context.words.comparisons;
  return [
    {
      id: 'second-looks',
      heading: secondLook.heading,
      body: html`<p>${secondLook.intro}</p>
${doses.length > 0 && doseTable(context, numbers, doses)}
${review.joint_models.map((model) => modelTable(context, numbers, model))}
<p><a class="screen" href="tables/strata.csv">${secondLook.strata}</a></p>`,
    },
  ];
}

type Doses = ReportContext['review']['doses'];
type Model = ReportContext['review']['joint_models'][number];

function doseTable(context: ReportContext, numbers: Numbering, doses: Doses): Html {
  const { words } = context;
  const { doseHeads: heads, doseCaption, trend } = words.comparisons.secondLook;
  const rows = doses.flatMap((of) => of.classes.map((part, index) => ({ of, part, first: index === 0 })));
  return dataTable(context, numbers, {
    caption: doseCaption,
    rows,
    columns: [
      {
        head: heads.exposure,
        kind: 'head',
        cell: ({ of }) => words.format.sentence(words.terms.exposure[of.exposure]),
      },
      { head: heads.dose, cell: ({ of, part }) => words.comparisons.secondLook.dose(of.exposure, part.dose) },
      { head: heads.failed, kind: 'number', cell: ({ part }) => words.pages.outOf(part.failed, part.days) },
      { head: heads.trend, cell: ({ of, first }) => first && trend(of.statistic, of.p) },
    ],
  });
}

function modelTable(context: ReportContext, numbers: Numbering, model: Model): Html {
  const { words, level } = context;
  const { secondLook } = words.comparisons;
  const caption = secondLook.modelCaption(words.terms.outcomes[model.outcome], model.days);
  if (model.not_computable !== null) return html`<p>${caption}: ${words.reason(model.not_computable)}</p>`;
  const interval = (low: number | null, high: number | null) =>
    low === null || high === null ? words.pages.none : secondLook.interval(low, high);
  const heads = secondLook.modelHeads;
  return html`${dataTable(context, numbers, {
    caption,
    rows: model.terms,
    columns: [
      {
        head: heads.exposure,
        kind: 'head',
        cell: (term) => words.format.sentence(words.terms.exposure[term.exposure]),
      },
      {
        head: heads.ratio(level),
        cell: (term) => `${words.format.ratio(term.ratio)} (${interval(term.low, term.high)})`,
      },
      { head: heads.p, kind: 'number', cell: (term) => words.format.pValue(term.p) },
      { head: heads.robust, cell: (term) => interval(term.robust_low, term.robust_high) },
    ],
  })}
<p class="note">${words.method(model.method)}.</p>`;
}
