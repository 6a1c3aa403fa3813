import { byCodeUnit } from '../../../by-code-unit.ts';
import type { AttentionCode } from '../../../findings/review-schema.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../../site/vocabulary.ts';
import { cleaningCalendarChart } from '../../charts/cleaning-calendar.ts';
import { notDueLook } from '../../charts/palette.ts';
import { textWidth } from '../../charts/text-width.ts';
import { FONT_SIZE } from '../../charts/theme.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import { folded } from '../../parts/folded.ts';
import type { Section } from '../../parts/page.ts';
import { picturedUnits, picturesNote } from '../../parts/pictured-units.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { aheadLook, aheadRows, datesOf, withInterval } from '../../rows/ahead-rows.ts';

/** Units in one calendar: what fits a printed page with room to spare. */
const UNITS_IN_CALENDAR = 30;
/** A longer table is folded. */
const ROWS_IN_SIGHT = 45;

/** Tasks of the next month, as a picture by unit and day and as a list. */
export async function nextMonthSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { review, words } = context;
  const { meeting, format, terms } = words;
  const ahead = review.next_month;
  const month = format.month(ahead.month);
  const tasks = withInterval(ahead).toSorted((a, b) => byCodeUnit(a.date, b.date));
  const heads = meeting.taskHeads;
  const table = dataTable(context, numbers, {
    caption: meeting.tasksCaption(month),
    rows: tasks,
    columns: [
      { head: heads.day, kind: 'head', cell: (row) => format.date(row.date) },
      { head: heads.unit, cell: (row) => unitLink(context, row.unit) },
      { head: heads.task, cell: (row) => terms.task[row.task] },
      {
        head: heads.state,
        cell: (row) =>
          html`${meeting.taskState[row.state]} <span class="sub">${
            row.state === 'outstanding'
              ? meeting.taskSince(row.due)
              : row.after === 'chamber_cleaning'
                ? meeting.afterChamber
                : row.due !== row.date && meeting.taskOn(row.due)
          }</span>`,
      },
      {
        head: heads.last,
        cell: (row) => (row.last_done === null ? meeting.never : format.date(row.last_done)),
      },
    ],
  });
  return {
    id: 'next-month',
    heading: meeting.nextHeading(month),
    body: html`<p>${meeting.nextIntro(ahead.weeks)}</p>
${
  tasks.length === 0
    ? html`<p class="empty">${meeting.tasksNone(month)}</p>`
    : html`${picturesNote(context)}${await calendars(context, numbers, month)}
${folded(tasks.length > ROWS_IN_SIGHT, meeting.tasksCaption(month), table)}`
}
${daily(context)}
${context.hasInterval && html`<p class="screen"><a href="interval.html#plan">${words.interval.evidence.sections.plan}</a></p>`}`,
  };
}

async function calendars(context: ReportContext, numbers: Numbering, month: string): Promise<Html[]> {
  const { review, words } = context;
  const { meeting, terms, format } = words;
  const ahead = review.next_month;
  const rows = aheadRows(review, words);
  const tasks = withInterval(ahead);
  const pictured = picturedUnits(review);
  const units = ahead.expected_use
    .map((of) => of.unit)
    .filter((unit) => pictured.has(unit) && tasks.some((of) => of.unit === unit));
  const figures: Html[] = [];
  for (let from = 0; from < units.length; from += UNITS_IN_CALENDAR) {
    const part = new Set(units.slice(from, from + UNITS_IN_CALENDAR));
    const of = (task: CleaningTask, state: string) =>
      tasks.filter((row) => row.task === task && row.state === state && part.has(row.unit)).length;
    const parts = CLEANING_TASKS.filter((task) => of(task, 'due') + of(task, 'outstanding') > 0).map((task) =>
      meeting.calendarCount(terms.task[task], of(task, 'due'), of(task, 'outstanding')),
    );
    const widest = Math.max(...[...part].map((unit) => textWidth(unit, FONT_SIZE)));
    figures.push(
      await figure(context, numbers, {
        id: `figure-ahead${from === 0 ? '' : `-${from}`}`,
        title: meeting.calendarTitle(month),
        description: meeting.calendarDescription(month, format.list(parts)),
        spec: cleaningCalendarChart(
          rows.filter((row) => part.has(row.unit)),
          {
            dayTitle: meeting.dayTitle(month),
            days: datesOf(ahead).map((date) => Number(date.slice(8, 10))),
            labelWidth: Math.min(150, Math.max(36, Math.ceil(widest) + 10)),
          },
        ),
        ...(from === 0 && { key: aheadKey(context) }),
        csv: 'tables/tasks-ahead.csv',
      }),
    );
  }
  return figures;
}

function aheadKey({ words, review }: ReportContext): Html {
  const { meeting, terms } = words;
  const swatch = (look: { fill: string; line: string }, letter: string) =>
    html`<svg width="22" height="18" viewBox="0 0 22 18" aria-hidden="true" focusable="false"><rect x="0.5" y="0.5" width="21" height="17" fill="${look.fill}" stroke="${look.line}"/><text x="11" y="13" text-anchor="middle" font-size="11" font-weight="bold">${letter}</text></svg>`;
  const tasks = withInterval(review.next_month);
  const shown = CLEANING_TASKS.filter((task) => tasks.some((row) => row.task === task));
  return html`<ul class="key" aria-label="${meeting.key}">
${shown.map((task) => html`<li>${swatch(aheadLook.due, meeting.letter[task])}<span>${terms.task[task]}</span></li>`)}
${
  tasks.some((task) => task.state === 'outstanding') &&
  html`<li>${swatch(aheadLook.outstanding, meeting.outstandingMark)}<span>${meeting.keyOutstanding}</span></li>`
}
<li>${swatch(notDueLook, '')}<span>${meeting.keyExpected}</span></li>
<li><span>${meeting.keyIdle}</span></li>
</ul>`;
}

/** Tasks of each day of use, in a sentence each. */
function daily({ words, review }: ReportContext): Html[] {
  return CLEANING_TASKS.flatMap((task) => {
    const rows = review.next_month.tasks.filter(
      (row) => row.task === task && row.state === 'each_day_of_use',
    );
    const units = new Set(rows.map((row) => row.unit)).size;
    return rows.length === 0
      ? []
      : [html`<p>${words.meeting.daily(words.terms.task[task], rows.length, units)}</p>`];
  });
}

/** Units whose reasons for attention do not end with the month. */
export function watchSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, level } = context;
  const { meeting, attention } = words;
  const units = new Map(review.units.map((unit) => [unit.unit, unit]));
  const rows = review.next_month.watch;
  const body =
    rows.length === 0
      ? html`<p class="empty">${meeting.watchNone}</p>`
      : html`<p>${meeting.watchIntro}</p>
${dataTable(context, numbers, {
  caption: meeting.watchCaption,
  rows,
  columns: [
    { head: meeting.watchHeads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
    {
      head: meeting.watchHeads.why,
      kind: 'prose',
      cell: (row) => {
        const reason = units.get(row.unit)?.attention[row.reason];
        return reason
          ? attention.reason[reason.code](reason.numbers, level).evidence
          : words.changes.reason[row.code as AttentionCode];
      },
    },
  ],
})}`;
  return { id: 'watch', heading: meeting.watchHeading, body };
}

/** Data that the next review will not have if nothing changes. */
export function missingSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words } = context;
  const { meeting, format } = words;
  const heads = meeting.missingHeads;
  const rows = review.next_month.missing;
  const body =
    rows.length === 0
      ? html`<p class="empty">${meeting.missingNone}</p>`
      : html`<p>${meeting.missingIntro}</p>
${dataTable(context, numbers, {
  caption: meeting.missingCaption,
  rows,
  columns: [
    {
      head: heads.what,
      kind: 'head',
      cell: (row) =>
        html`${meeting.missing[row.code]}${row.count !== null && html` <span class="sub">${meeting.missingCount(row)}</span>`}`,
    },
    { head: heads.where, cell: (row) => meeting.missingWhere(row) },
    { head: heads.since, cell: (row) => (row.since === null ? meeting.never : format.date(row.since)) },
    { head: heads.effect, kind: 'prose', cell: (row) => meeting.missingEffect[row.code] },
  ],
})}`;
  return { id: 'missing', heading: meeting.missingHeading, body };
}
