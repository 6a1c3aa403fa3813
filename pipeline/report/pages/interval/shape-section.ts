import { SPELL_ENDS } from '../../../findings/interval/spells.ts';
import { html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import type { SectionContext } from './section-context.ts';

/** Shapes on each clock, in both readings of contradicted records, and what the spells ended with. */
export function shapeSection({ context, numbers, found, text }: SectionContext): Section {
  const { evidence, argument } = text;
  const { format } = context.words;
  const heads = evidence.shapesHeads;
  const number = (value: number | null) => (value === null ? '' : format.fixed(value, 2));
  const { robust_low, robust_high } = found.answer;
  const ends = SPELL_ENDS.filter((end) => found.spells.ended_by[end] > 0).map(
    (end) => `${format.integer(found.spells.ended_by[end])} ${evidence.spellEnd[end]}`,
  );
  const median = found.spells.median_length;
  const after = found.after_failure;
  return {
    id: 'shape',
    heading: evidence.sections.shape,
    body: html`${dataTable(context, numbers, {
      caption: evidence.shapesCaption,
      rows: found.fits,
      columns: [
        { head: heads.outcome, kind: 'head', cell: (fit) => evidence.outcome[fit.outcome] },
        { head: heads.clock, cell: (fit) => argument.clockNames[fit.clock] },
        { head: heads.reading, cell: (fit) => evidence.readings[fit.reading] },
        { head: heads.events, kind: 'number', cell: (fit) => format.integer(fit.events) },
        { head: heads.chances, kind: 'number', cell: (fit) => format.integer(fit.chances) },
        {
          head: heads.shape(context.level),
          kind: 'number',
          cell: (fit) =>
            fit.shape === null
              ? html`${context.words.reason(fit.not_computable ?? '')}`
              : html`${number(fit.shape)} <span class="sub">${argument.between(number(fit.low), fit.high === null ? null : number(fit.high))}</span>`,
        },
        { head: heads.p, kind: 'number', cell: (fit) => (fit.p === null ? '' : format.pValue(fit.p)) },
        { head: heads.detectable, kind: 'number', cell: (fit) => number(fit.smallest_detectable_shape) },
        { head: heads.spread, kind: 'number', cell: (fit) => number(fit.spread) },
      ],
    })}
<p class="left-out">${evidence.shapesNote}</p>
${
  robust_low !== null &&
  robust_high !== null &&
  html`<p>${evidence.robust(number(robust_low), number(robust_high), evidence.drawn[found.bootstrap.drawn])}</p>`
}
${ends.length > 0 && html`<p>${evidence.spellEnds(ends)}${median !== null && ` ${evidence.medianLength(argument.interval(median, found.clock))}`}</p>`}
<p>${evidence.afterFailure[after.in_force](after.followed_by_cleaning, after.failures)}</p>`,
  };
}
