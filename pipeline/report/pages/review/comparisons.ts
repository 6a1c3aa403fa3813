import { type Comparison, EXPOSURES, OUTCOMES, VERDICTS } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { comparisonFigures, comparisonTable, verdictWords } from '../../parts/comparison-figure.ts';
import type { Section } from '../../parts/page.ts';
import { picturedUnits } from '../../parts/pictured-units.ts';
import { besideList, secondLookSection } from './second-looks.ts';

export interface Question {
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

/** Failures after missed cleaning: what each verdict means, findings in words, a picture for each question, and the numbers of those that say something. */
export async function comparisonsSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { review, words, span } = context;
  const { comparisons, pages } = words;
  const questions = questionsOf(review.comparisons);
  const parts: Html[] = [];
  for (const question of questions) {
    const first = question.comparisons[0]!;
    parts.push(html`<h3>${comparisons.questionLong(first)}</h3>
${await questionFigure(context, numbers, question)}
`);
  }
  const leading = keyQuestion(questions)?.comparisons.find((of) => of.unit === null);
  const speaking = review.comparisons.filter(
    (of) => of === leading || (of.verdict !== 'cannot_tell' && of.verdict !== 'not_comparable'),
  );
  const body =
    review.comparisons.length === 0
      ? html`<p class="empty">${words.unit.noComparison}</p>`
      : html`<p>${comparisons.intro(review.comparisons.length, review.family_size, span)} <a href="#key">${comparisons.seeKey}</a></p>
${verdictWords(context)}
${
  speaking.length > 0 &&
  comparisonTable(context, numbers, speaking, comparisons.speakingCaption, 'unit_and_question')
}
<p class="screen"><a href="comparisons.html">${comparisons.allNumbers}</a></p>
${parts}
<p class="left-out">${comparisons.leftOutNote}</p>`;
  return { id: 'comparisons', heading: pages.comparisonsHeading, body };
}

/** All numbers of all comparisons, one section for each question, and the second looks. */
export function comparisonSections(context: ReportContext, numbers: Numbering): Section[] {
  const { review, words, span } = context;
  const { comparisons } = words;
  const questions = questionsOf(review.comparisons).map(({ id, comparisons: list }): Section => {
    const first = list[0]!;
    return {
      id,
      heading: comparisons.question(first),
      body: html`<p>${comparisons.questionLong(first)}</p>
${comparisonTable(context, numbers, list, comparisons.figureTitle(first), 'unit')}
${besideList(context, list)}`,
    };
  });
  return [
    {
      id: 'verdicts',
      heading: comparisons.verdictsMean,
      body: html`${
        review.comparisons.length === 0
          ? html`<p class="empty">${words.unit.noComparison}</p>`
          : html`<p>${comparisons.intro(review.comparisons.length, review.family_size, span)}</p>`
      }
${verdictWords(context)}
<p class="left-out">${comparisons.leftOutNote}</p>`,
    },
    ...questions,
    ...secondLookSection(context, numbers),
  ];
}

async function questionFigure(
  context: ReportContext,
  numbers: Numbering,
  question: Question,
): Promise<Html[]> {
  const { words } = context;
  const first = question.comparisons[0]!;
  const pictured = picturedUnits(context.review);
  return comparisonFigures(context, numbers, {
    id: `figure-${question.id}`,
    title: words.comparisons.figureTitle(first),
    ratioTitle: first.ratio_kind === 'odds_ratio' ? words.charts.oddsRatio : words.charts.rateRatio,
    comparisons: question.comparisons.filter((of) => of.unit === null || pictured.has(of.unit)),
  });
}
