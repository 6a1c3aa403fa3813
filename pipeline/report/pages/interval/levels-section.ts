import type { LevelRow } from '../../../findings/interval/interval-schema.ts';
import { type Html, html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { unitLink } from '../../parts/unit-link.ts';
import type { SectionContext } from './section-context.ts';

/** Units and sites by themselves, drawn to the mean. */
export function levelsSection({ context, numbers, found, text }: SectionContext): Section {
  const { evidence, argument } = text;
  const { format, pages } = context.words;
  const heads = evidence.levelHeads;
  const counts = (level: LevelRow['failures']) => pages.outOf(level.events, level.chances);
  const factor = (level: LevelRow['failures']): Html | string =>
    level.factor === null || level.low === null || level.high === null
      ? ''
      : html`${format.twoFigures(level.factor)} <span class="sub">${argument.between(format.twoFigures(level.low), format.twoFigures(level.high))}</span>`;
  const named = found.answer.code === 'supported';
  return {
    id: 'units',
    heading: evidence.sections.units,
    body:
      found.levels.length === 0
        ? html`<p class="empty">${evidence.noCandidates}</p>`
        : html`${dataTable(context, numbers, {
            caption: evidence.levelsCaption,
            rows: found.levels,
            columns: [
              {
                head: heads.scope,
                kind: 'head',
                cell: (row) =>
                  row.level === 'unit' ? unitLink(context, row.scope) : context.siteName(row.scope),
              },
              { head: heads.failures, kind: 'number', cell: (row) => counts(row.failures) },
              { head: heads.factor, kind: 'number', cell: (row) => factor(row.failures) },
              { head: heads.aborts, kind: 'number', cell: (row) => counts(row.aborts) },
              { head: heads.abortFactor, kind: 'number', cell: (row) => factor(row.aborts) },
              {
                head: heads.shape,
                kind: 'number',
                cell: ({ shape }) =>
                  shape === null
                    ? ''
                    : html`${format.fixed(shape.estimate, 2)} <span class="sub">${argument.between(format.fixed(shape.low, 2), shape.high === null ? null : format.fixed(shape.high, 2))}, ${evidence.p(format.pValue(shape.adjusted_p ?? shape.p))}</span>`,
              },
              {
                head: heads.shrunk,
                kind: 'number',
                cell: ({ shape }) =>
                  shape === null || shape.shrunk === null
                    ? ''
                    : html`${format.fixed(shape.shrunk, 2)} <span class="sub">${argument.between(format.fixed(shape.shrunk_low!, 2), format.fixed(shape.shrunk_high!, 2))}</span>`,
              },
              ...(named
                ? [
                    {
                      head: heads.best,
                      kind: 'number' as const,
                      cell: (row: LevelRow) =>
                        row.best === null ? '' : argument.interval(row.best, found.clock),
                    },
                  ]
                : []),
            ],
          })}
<p class="left-out">${evidence.levelsNote}</p>`,
  };
}
