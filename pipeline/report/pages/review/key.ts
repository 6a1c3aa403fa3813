import { VERDICTS } from '../../../findings/review-schema.ts';
import { contrastChart } from '../../charts/contrast.ts';
import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { whyOf } from '../../parts/comparison-figure.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import { type ContrastRow, contrastRows } from '../../rows/contrast-rows.ts';
import { keyQuestion, type Question, questionsOf } from './comparisons.ts';

/** Comparisons in the picture, at most. */
const MOST = 2;

/** The one picture of the first page: what says most about the question behind the review, as counts with and without the exposure. */
export async function keySection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { words, review, level } = context;
  const key = keyQuestion(questionsOf(review.comparisons));
  if (key === undefined)
    return {
      id: 'key',
      heading: words.pages.keyHeading,
      body: html`<p class="empty">${words.unit.noComparison}</p>`,
    };
  const { story } = words.answers;
  const chosen = strongest(key);
  const first = chosen[0]!;
  const rows = contrastRows(chosen, context);
  const counts = (side: ContrastRow['side']) =>
    rows.find((row) => row.id === first.id && row.side === side)!.counts;
  const { terms, comparisons, charts } = words;
  return {
    id: 'key',
    heading: words.pages.keyHeading,
    body: html`<p class="lede">${comparisons.questionLong(first)}</p>
<p>${story.plain(
      terms.outcomes[first.outcome],
      first.unit ?? terms.fleetInText,
      terms.exposure[first.exposure],
      terms.otherwise[first.exposure],
      counts('exposed'),
      counts('unexposed'),
    )} ${story.verdict(terms.verdict[first.verdict], comparisons.ratioCell(first), level)}</p>
${await figure(context, numbers, {
  id: 'figure-key',
  title: story.figure(terms.outcomes[first.outcome], terms.exposure[first.exposure]),
  description: chosen
    .map(
      (of) => `${of.unit ?? terms.fleet}: ${comparisons.evidence(of, level)}; ${terms.verdict[of.verdict]}.`,
    )
    .join(' '),
  spec: contrastChart(rows, {
    valueTitle: first.outcome === 'failed_test' ? charts.failedPer100 : charts.abortsPer100,
  }),
  reading: [story.reading(level), ...chosen.filter(isWeak).map((of) => whyWeak(context, of))].join(' '),
  csv: 'tables/comparisons.csv',
})}
<p class="ways screen"><a href="#comparisons">${story.allUnits}</a> <a href="comparisons.html#${key.id}">${story.numbers}</a> <a href="comparisons.html#verdicts">${story.means}</a></p>`,
  };
}

type Chosen = Question['comparisons'][number];

/** A verdict whose numbers may look like more than it says. */
const isWeak = ({ verdict }: Chosen): boolean => verdict !== 'shown' && verdict !== 'suggested';

const whyWeak = (context: ReportContext, of: Chosen): string =>
  context.words.comparisons.why(
    of.unit ?? context.words.terms.fleet,
    context.words.terms.verdict[of.verdict],
    whyOf(context, of),
  );

/** The strongest verdicts first; where none is shown or suggested, all units together come first. */
function strongest({ comparisons }: Question): Question['comparisons'] {
  const rank = (of: Question['comparisons'][number]) => VERDICTS.indexOf(of.verdict);
  const speaking = comparisons.filter((of) => of.verdict === 'shown' || of.verdict === 'suggested');
  const fleet = comparisons.filter((of) => of.unit === null);
  const rest = comparisons.filter((of) => of.unit !== null);
  const ordered =
    speaking.length > 0
      ? [...speaking.toSorted((a, b) => rank(a) - rank(b)), ...fleet]
      : [...fleet, ...rest.toSorted((a, b) => rank(a) - rank(b))];
  return [...new Set(ordered)].slice(0, MOST);
}
