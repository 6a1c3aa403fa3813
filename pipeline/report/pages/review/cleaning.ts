import { DUE_STATES, type DueCounts } from '../../../findings/review-schema.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../../site/vocabulary.ts';
import { cleaningCalendarChart } from '../../charts/cleaning-calendar.ts';
import { dueBarsChart } from '../../charts/due-bars.ts';
import { textWidth } from '../../charts/text-width.ts';
import { FONT_SIZE } from '../../charts/theme.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import { folded } from '../../parts/folded.ts';
import type { Section } from '../../parts/page.ts';
import { listedUnits, picturedNote, picturedUnits } from '../../parts/pictured-units.ts';
import { countCell } from '../../parts/rates.ts';
import { stateKey } from '../../parts/state-key.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { type CalendarRow, calendarRows } from '../../rows/calendar-rows.ts';
import { type DueSum, dueRows, sumDue } from '../../rows/due-rows.ts';

/** Units in one calendar: what fits a printed page with room to spare. */
const UNITS_IN_CALENDAR = 30;
/** A longer table of counts is folded. */
const ROWS_IN_SIGHT = 45;

/** Cleaning done against due: bars over all units, a calendar for each task, counts by unit. */
export async function cleaningSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { review, words, month } = context;
  const { cleaning } = words;
  const bars = dueRows(review, words);
  const rows = calendarRows(review.cleaning.days, words);
  const body =
    bars.length === 0
      ? html`<p class="empty">${cleaning.none(month)}</p>`
      : html`<p>${cleaning.intro(month)}</p>
${await figure(context, numbers, {
  id: 'figure-due',
  title: cleaning.barsTitle,
  description: cleaning.barsDescription(taskLines(context)),
  spec: dueBarsChart(bars, { shareTitle: words.charts.shareOfDue }),
  key: stateKey(context),
  csv: 'tables/cleaning-due.csv',
})}
${picturedNote(context)}
${await calendars(context, numbers, rows)}
${folded(
  review.cleaning.month.length > ROWS_IN_SIGHT,
  cleaning.tableCaption(month),
  dueTable(context, numbers, review.cleaning.month, cleaning.tableCaption(month)),
)}
<p class="left-out">${cleaning.leftOut}</p>`;
  return {
    id: 'cleaning',
    heading: cleaning.heading,
    body: html`${body}
${chamberTable(context, numbers)}`,
  };
}

function taskLines({ review, words }: ReportContext): string[] {
  return CLEANING_TASKS.flatMap((task) => {
    const sum = sumDue(review.cleaning.month.filter((row) => row.task === task));
    return sum.due === 0
      ? []
      : [words.cleaning.taskSummary(words.terms.task[task], sum.done + sum.done_late, sum.due)];
  });
}

async function calendars(
  context: ReportContext,
  numbers: Numbering,
  rows: readonly CalendarRow[],
): Promise<Html[]> {
  const { words, month, review } = context;
  const figures: Html[] = [];
  const pictured = picturedUnits(review);
  for (const task of CLEANING_TASKS) {
    const ofTask = rows.filter((row) => row.task === task && pictured.has(row.unit));
    const due = review.cleaning.month.some((row) => row.task === task);
    const units = [...new Set(ofTask.map((row) => row.unit))];
    if (!due) continue;
    for (let from = 0; from < units.length; from += UNITS_IN_CALENDAR) {
      const part = new Set(units.slice(from, from + UNITS_IN_CALENDAR));
      const shown = ofTask.filter((row) => part.has(row.unit));
      figures.push(
        await figure(context, numbers, {
          id: `figure-calendar-${task.replace('_', '-')}${from === 0 ? '' : `-${from}`}`,
          title: words.cleaning.calendarTitle(words.terms.task[task]),
          description: words.cleaning.calendarDescription(
            words.terms.task[task],
            month,
            stateCounts(context, shown),
          ),
          spec: cleaningCalendarChart(shown, calendarOptions(context, [...part])),
          csv: 'tables/cleaning-calendar.csv',
        }),
      );
    }
  }
  return figures;
}

/** Options of a calendar: the days of the month, and room for the longest label. */
export function calendarOptions({ words, month, review }: ReportContext, labels: readonly string[]) {
  const days = Number(review.period.to.slice(8, 10));
  const widest = Math.max(...labels.map((label) => textWidth(label, FONT_SIZE)));
  return {
    dayTitle: words.charts.dayOfMonth(month),
    days: Array.from({ length: days }, (_, index) => index + 1),
    labelWidth: Math.min(150, Math.max(36, Math.ceil(widest) + 10)),
  };
}

/** "28 done, 2 missed", for the description of a picture. */
export function stateCounts(
  { words }: Pick<ReportContext, 'words'>,
  rows: readonly { state: string }[],
): string {
  const parts = DUE_STATES.flatMap((state) => {
    const count = rows.filter((row) => row.state === state).length;
    return count === 0 ? [] : [`${words.format.integer(count)} ${words.terms.dueState[state]}`];
  });
  return parts.length === 0 ? words.pages.none : words.format.list(parts);
}

interface DueLine extends DueSum {
  unit: string;
  task: CleaningTask | '';
}

/** Counts of due tasks by unit and task, with a line of sums. */
export function dueTable(
  context: ReportContext,
  numbers: Numbering,
  counts: readonly DueCounts[],
  caption: string,
): Html {
  const { words, review } = context;
  const { heads } = words.cleaning;
  const known = new Set(review.units.map((unit) => unit.unit));
  const listed = new Set(listedUnits(review).map((unit) => unit.unit));
  const several = new Set(counts.map((row) => row.unit)).size > 1;
  const lines: DueLine[] = several ? counts.filter((row) => listed.has(row.unit)) : [...counts];
  const number = (field: keyof DueSum): Column<DueLine> => ({
    head: heads[field],
    kind: 'number',
    cell: (row) => countCell(words, row[field]),
  });
  return dataTable(context, numbers, {
    caption,
    rows: lines,
    total: { unit: words.records.data.total, task: '', ...sumDue(counts) },
    columns: [
      {
        head: heads.unit,
        kind: 'head',
        cell: (row) => (row.task !== '' && known.has(row.unit) ? unitLink(context, row.unit) : row.unit),
      },
      { head: heads.task, cell: (row) => row.task !== '' && words.terms.task[row.task] },
      number('due'),
      ...DUE_STATES.map(number),
    ],
  });
}

/** Chamber cleaning records beside the cycle log, over the whole record. */
export function chamberTable(
  context: ReportContext,
  numbers: Numbering,
  units = listedUnits(context.review),
): Html | false {
  const { words, span } = context;
  const { chamberHeads: heads, noInterval, never, notKnown } = words.cleaning;
  const { format, terms } = words;
  if (units.every((unit) => unit.chamber.records === 0 && unit.chamber.interval === null)) return false;
  type Unit = (typeof units)[number];
  const number = (
    head: string,
    field: 'records' | 'supported' | 'running' | 'hot' | 'no_return' | 'not_judged' | 'reactive',
  ): Column<Unit> => ({ head, kind: 'number', cell: (unit) => countCell(words, unit.chamber[field]) });
  return html`${dataTable(context, numbers, {
    caption: words.cleaning.chamberCaption(span),
    rows: units,
    columns: [
      { head: heads.unit, kind: 'head', cell: (unit) => unitLink(context, unit.unit) },
      {
        head: heads.interval,
        cell: ({ chamber }) => {
          if (chamber.interval === null) return noInterval;
          const [every, counted] = chamber.interval.split(' ');
          return html`<span class="figures">${format.integer(Number(every))} ${terms.countedIn[counted ?? ''] ?? counted ?? ''}</span>`;
        },
      },
      {
        head: heads.clock,
        kind: 'number',
        cell: ({ chamber }) => (chamber.clock_days === null ? never : format.integer(chamber.clock_days)),
      },
      {
        head: heads.pastDue,
        kind: 'number',
        cell: ({ chamber }) => {
          if (chamber.interval === null) return false;
          return chamber.days_past_due === null ? notKnown : format.integer(chamber.days_past_due);
        },
      },
      number(heads.records, 'records'),
      number(heads.supported, 'supported'),
      number(heads.running, 'running'),
      number(heads.hot, 'hot'),
      number(heads.noReturn, 'no_return'),
      number(heads.notJudged, 'not_judged'),
      number(heads.reactive, 'reactive'),
    ],
  })}
<p class="left-out">${words.cleaning.chamberNote}</p>`;
}
