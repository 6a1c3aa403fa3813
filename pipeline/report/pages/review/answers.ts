import type { Comparison, Review } from '../../../findings/review-schema.ts';
import { outstandingTasks } from '../../../findings/summaries/outstanding.ts';
import { groupBy } from '../../../group-by.ts';
import { type Html, html } from '../../html/html.ts';
import type { ReportContext } from '../../page-context.ts';
import type { Section } from '../../parts/page.ts';
import { sumDue } from '../../rows/due-rows.ts';
import type { AnswerWords, FailuresAnswer } from '../../words/en/answers.ts';
import type { Words } from '../../words/words.ts';

/** The month in one sentence for each question, with the way to what stands behind it. */
export function answersSection({ review, words }: ReportContext): Section {
  const { answers } = words;
  const block = (question: string, answer: AnswerWords, anchor: string, more: string): Html =>
    html`<div>
<h3>${question}</h3>
<p class="lead">${answer.lead}</p>
<p>${answer.detail}</p>
<p class="screen"><a href="#${anchor}">${more}</a></p>
</div>
`;
  const aside = (question: string, answer: AnswerWords, anchor: string, more: string): Html =>
    html`<p class="aside"><b>${question}</b> ${answer.lead} <span class="screen">${answer.detail}</span> <a class="screen" href="#${anchor}">${more}</a></p>`;
  return {
    id: 'answers',
    heading: answers.heading,
    body: html`<div class="answers">
${block(answers.questions.cleaning, cleaningAnswer(review, words), 'cleaning', answers.more.cleaning)}
${block(answers.questions.failures, failuresAnswer(review, words), 'comparisons', answers.more.failures)}
${block(answers.questions.units, unitsAnswer(review, words), 'attention', answers.more.units)}
</div>
${aside(answers.questions.reading, readingAnswer(review, words), 'data', answers.more.reading)}`,
  };
}

function cleaningAnswer(review: Review, { answers, terms }: Words): AnswerWords {
  const sum = sumDue(review.cleaning.month);
  const outstanding = outstandingTasks(review.next_month);
  return answers.cleaning({
    due: sum.due,
    done: sum.done,
    late: sum.done_late,
    missed: sum.missed,
    notRecorded: sum.not_recorded,
    contradicted: sum.contradicted,
    open: sum.open,
    outstanding: [...groupBy(outstanding, ({ task }) => task)].map(([task, { length }]) => ({
      task: terms.task[task],
      count: length,
    })),
    fromBefore: outstanding.filter(({ due }) => due < review.period.from).length,
  });
}

function failuresAnswer(review: Review, { answers, terms, comparisons }: Words): AnswerWords {
  const of = (verdict: Comparison['verdict']) =>
    review.comparisons.filter((comparison) => comparison.verdict === verdict);
  const name = (comparison: Comparison) =>
    comparisons.named(comparison.unit ?? terms.fleetInText, comparison);
  const adjusted = of('suggested').flatMap(({ adjusted_p }) => adjusted_p ?? []);
  return answers.failures({
    total: review.comparisons.length,
    shown: of('shown').map(name),
    suggested: of('suggested').map(name),
    notShown: of('not_shown').length,
    cannotTell: of('cannot_tell').length,
    notComparable: of('not_comparable').length,
    suggestedP: adjusted.length === 0 ? null : { low: Math.min(...adjusted), high: Math.max(...adjusted) },
    measured: wrongVerdicts(review),
  });
}

/** How often a verdict was wrong in the scenarios in which nothing is going on, so that there is nothing to find; by the calibration kept with the program. */
function wrongVerdicts({ operating_characteristics: measured }: Review): FailuresAnswer['measured'] {
  const still = measured?.scenarios.filter(
    (of) => of.units_shown === null && of.fleet_shown === null && of.wrong_exposure_shown === null,
  );
  if (still === undefined || still.length === 0) return null;
  const range = (field: 'false_shown' | 'false_shown_or_suggested'): [number, number] => {
    const shares = still.map((of) => of[field].share);
    return [Math.min(...shares), Math.max(...shares)];
  };
  return { shown: range('false_shown'), either: range('false_shown_or_suggested') };
}

function unitsAnswer(review: Review, { answers }: Words): AnswerWords {
  const units = new Map(review.units.map((unit) => [unit.unit, unit]));
  const first = (unit: string) => units.get(unit)?.attention[0]?.level;
  const at = (level: string) => review.attention_order.filter((unit) => first(unit) === level);
  return answers.units({
    units: review.units.length,
    act: at('act'),
    decide: at('decide'),
    look: at('look'),
  });
}

function readingAnswer(review: Review, { answers }: Words): AnswerWords {
  const { totals } = review;
  const problems = (isMeant: (problem: Review['problems_by_code'][number]) => boolean) =>
    review.problems_by_code.filter(isMeant).reduce((sum, { count }) => sum + count, 0);
  return answers.reading({
    files: totals.files,
    rows: totals.rows,
    records: totals.records,
    duplicates: totals.duplicates,
    rejected: totals.rejected,
    skipped: totals.skipped,
    cellsLost: totals.cells_lost,
    filesFailed: problems(({ costs }) => costs === 'file'),
    lone: problems(({ code }) => code === 'lone_record'),
    unclassifiedTexts: review.unclassified_abort_texts.length,
  });
}
