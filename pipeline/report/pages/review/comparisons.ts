import { type Comparison, EXPOSURES, OUTCOMES, VERDICTS } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import {
  comparisonFigures,
  comparisonTable,
  verdictCell,
  verdictWords,
} from '../../parts/comparison-figure.ts';
import type { Section } from '../../parts/page.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { besideList, secondLooks } from './second-looks.ts';

interface Question {
  id: string;
  comparisons: Comparison[];
}

/** The questions of a review in their order, each with the comparisons of its units. */
export function questionsOf(comparisons: readonly Comparison[]): Question[] {
  return EXPOSURES.flatMap((exposure) =>
    OUTCOMES.map((outcome) => ({
      id: `${exposure}-${outcome}`.replaceAll('_', '-'),
      comparisons: comparisons.filter((of) => of.exposure === exposure && of.outcome === outcome),
    })),
  ).filter((question) => question.comparisons.length > 0);
}

/** The question that says most: the one with the strongest verdict, the first of them where several have it. */
export function keyQuestion(questions: readonly Question[]): Question | undefined {
  const strength = (question: Question) =>
    Math.min(...question.comparisons.map((of) => VERDICTS.indexOf(of.verdict)));
  return questions.toSorted((a, b) => strength(a) - strength(b))[0];
}

/** The one picture of the first page. */
export async function keySection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { review, words } = context;
  const key = keyQuestion(questionsOf(review.comparisons));
  const body =
    key === undefined
      ? html`<p class="empty">${words.unit.noComparison}</p>`
      : html`<p class="lede">${words.comparisons.questionLong(key.comparisons[0]!)} ${words.comparisons.rowExplained}</p>
${await questionFigure(context, numbers, key)}`;
  return { id: 'key', heading: words.pages.keyHeading, body };
}

/** All comparisons: what each verdict means, findings in words, a picture and a table for each question. */
export async function comparisonsSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { review, words, span, level } = context;
  const { comparisons, pages } = words;
  const questions = questionsOf(review.comparisons);
  const key = keyQuestion(questions);
  const parts: Html[] = [];
  for (const question of questions) {
    const first = question.comparisons[0]!;
    parts.push(html`<section id="question-${question.id}" aria-labelledby="question-${question.id}-heading">
<h3 id="question-${question.id}-heading">${comparisons.question(first)}</h3>
<p>${comparisons.questionLong(first)}</p>
${
  question.id === key?.id
    ? html`<p><a href="#key">${comparisons.seeKey}</a></p>`
    : await questionFigure(context, numbers, question)
}
${besideList(context, question.comparisons)}
<details><summary>${comparisons.tableSummary}</summary>
${comparisonTable(context, numbers, question.comparisons, comparisons.figureTitle(first), 'unit')}
</details>
</section>
`);
  }
  const found = review.comparisons.filter((of) => of.verdict === 'shown' || of.verdict === 'suggested');
  return {
    id: 'comparisons',
    heading: pages.comparisonsHeading,
    body: html`<p>${comparisons.intro(review.comparisons.length, review.family_size, span)}</p>
${verdictWords(context)}
${
  found.length > 0 &&
  html`<h3>${comparisons.findings}</h3>
<ul>${found.map(
    (of) =>
      html`<li>${of.unit === null ? words.terms.fleet : unitLink(context, of.unit)}, ${comparisons.question(of).toLowerCase()}: ${comparisons.evidence(of, level)}; p ${comparisons.p(of.p)}, adjusted ${comparisons.p(of.adjusted_p)}. ${verdictCell(context, of)}</li>
`,
  )}</ul>`
}
${parts}
${secondLooks(context, numbers)}
<p class="left-out">${comparisons.leftOutNote}</p>`,
  };
}

async function questionFigure(
  context: ReportContext,
  numbers: Numbering,
  question: Question,
): Promise<Html[]> {
  const { words } = context;
  const first = question.comparisons[0]!;
  return comparisonFigures(context, numbers, {
    id: `figure-${question.id}`,
    title: words.comparisons.figureTitle(first),
    ratioTitle: first.ratio_kind === 'odds_ratio' ? words.charts.oddsRatio : words.charts.rateRatio,
    comparisons: question.comparisons,
  });
}
