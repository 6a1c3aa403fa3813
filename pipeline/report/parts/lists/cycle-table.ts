import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../data-table.ts';

/** Cycles that a page shows of one list; the tables have all. */
const MOST_CYCLES = 200;

/** A cycle that stands in a list for those who decide. */
type ListedCycle = Omit<Review['cycles_without_pass'][number]['cycles'][number], 'date' | 'certain'>;

/** The cycles of a list, and how many more there are. `mark` stands beside the start of a cycle. */
export function cycleTable<Cycle extends ListedCycle>(
  context: ReportContext,
  numbers: Numbering,
  {
    caption,
    cycles,
    mark,
  }: { caption: string; cycles: readonly Cycle[]; mark?: (cycle: Cycle) => Html | false },
): Html {
  const { lookBack, where } = context.words.records;
  const { format, terms } = context.words;
  const rows = cycles.slice(0, MOST_CYCLES);
  const { heads } = lookBack;
  return html`${dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      {
        head: heads.number,
        kind: 'head',
        cell: (cycle) => (cycle.cycle_number === null ? lookBack.noNumber : String(cycle.cycle_number)),
      },
      { head: heads.start, cell: (cycle) => html`${format.time(cycle.started)}${mark?.(cycle)}` },
      {
        head: heads.kind,
        cell: (cycle) => terms.cycleKind[cycle.kind as keyof typeof terms.cycleKind] ?? cycle.kind,
      },
      { head: heads.standing, cell: (cycle) => terms.standing[cycle.standing] ?? cycle.standing },
      { head: heads.where, kind: 'long', cell: (cycle) => where(cycle.file, null, cycle.row) },
    ],
  })}
${cycles.length > rows.length && html`<p>${lookBack.more(cycles.length - rows.length)}</p>`}`;
}

/** The wall time of a test, or its date where no more is known. */
export const timeOrDate = ({ words: { format } }: ReportContext, wall: string, byDate: boolean): string =>
  byDate ? format.date(wall.slice(0, 'yyyy-MM-dd'.length)) : format.time(wall);
