import { ACTION_STANDINGS, type ActionStanding } from '../../../findings/actions/actions-schema.ts';
import type { Review } from '../../../findings/review-schema.ts';
import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { unitLink } from '../../parts/unit-link.ts';

/** Actions by how they stand. */
export function standingCounts({ actions }: Review): Record<ActionStanding, number> {
  return Object.fromEntries(
    ACTION_STANDINGS.map((standing) => [
      standing,
      actions.list.filter((action) => action.standing === standing).length,
    ]),
  ) as Record<ActionStanding, number>;
}

/** Actions of the site's list: what was done of what was decided. */
export function actionsSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { meeting, format } = words;
  const { kept, list, settled_before } = review.actions;
  const heads = meeting.actionHeads;
  const known = new Set(review.units.map((unit) => unit.unit));
  const doneOn = (row: (typeof list)[number]) => {
    if (row.done_on === null) return row.standing === 'done' ? meeting.noDay : '';
    return row.done_on > review.period.to ? meeting.afterMonth(row.done_on) : format.date(row.done_on);
  };
  const body = !kept
    ? html`<p class="empty">${meeting.notKept}</p>`
    : html`<p>${meeting.actionsIntro}</p>
${
  list.length === 0
    ? html`<p class="empty">${meeting.noActions(month)}</p>`
    : html`<p>${meeting.actionCounts(standingCounts(review))}</p>
${dataTable(context, numbers, {
  caption: meeting.actionsCaption(month),
  rows: list,
  columns: [
    {
      head: heads.standing,
      cell: (row) =>
        html`<b>${meeting.standing[row.standing]}</b>${row.days_late !== null && html` <span class="sub">${meeting.daysLate(row.days_late)}</span>`}`,
    },
    { head: heads.action, kind: 'head', cell: (row) => row.action },
    {
      head: heads.unit,
      cell: (row) =>
        row.unit === null ? meeting.anyUnit : known.has(row.unit) ? unitLink(context, row.unit) : row.unit,
    },
    { head: heads.role, cell: (row) => row.role ?? meeting.noRole },
    { head: heads.decided, cell: (row) => format.date(row.decided) },
    { head: heads.due, cell: (row) => (row.due === null ? meeting.noDay : format.date(row.due)) },
    { head: heads.done, cell: doneOn },
  ],
})}`
}
${settled_before > 0 && html`<p class="note">${meeting.settledBefore(settled_before)}</p>`}`;
  return { id: 'actions', heading: meeting.actionsHeading, body };
}

/** A next step that follows from a reason for attention; its columns are those of a list of actions. */
export interface NextStep {
  time: string;
  unit: string;
  action: string;
  role: string;
  due: string;
  done_on: string;
  state: string;
  level: Review['units'][number]['attention'][number]['level'];
  evidence: string;
}

export const NEXT_STEP_COLUMNS = [
  'time',
  'unit',
  'action',
  'role',
  'due',
  'done_on',
  'state',
  'level',
  'evidence',
] as const;

const LEVELS = ['act', 'decide', 'look'] as const;

/** Next steps of all reasons, by level, then in the order of the units. */
export function nextSteps({ review, words, level }: ReportContext): NextStep[] {
  const units = new Map(review.units.map((unit) => [unit.unit, unit]));
  const steps = review.attention_order.flatMap((id) =>
    (units.get(id)?.attention ?? []).map((reason): NextStep => {
      const text = words.attention.reason[reason.code](reason.numbers, level);
      return {
        time: '',
        unit: id,
        action: text.next,
        role: text.decides,
        due: '',
        done_on: '',
        state: 'open',
        level: reason.level,
        evidence: text.evidence,
      };
    }),
  );
  return LEVELS.flatMap((of) => steps.filter((step) => step.level === of));
}

/** What to decide: each reason's next step with the role that decides. */
export function stepsSection(context: ReportContext, numbers: Numbering): Section {
  const { meeting, attention } = context.words;
  const heads = meeting.stepHeads;
  const rows = nextSteps(context);
  const body =
    rows.length === 0
      ? html`<p class="empty">${meeting.stepsNone}</p>`
      : html`<p>${meeting.stepsIntro}</p>
${dataTable(context, numbers, {
  caption: meeting.stepsCaption,
  rows,
  columns: [
    { head: heads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
    { head: heads.when, cell: (row) => attention.level[row.level] },
    { head: heads.step, kind: 'prose', cell: (row) => row.action },
    { head: heads.decides, cell: (row) => row.role },
    { head: heads.why, kind: 'prose', cell: (row) => row.evidence },
  ],
})}
<p class="screen">${meeting.stepsFile} <a href="tables/next-steps.csv">next-steps.csv</a></p>`;
  return { id: 'steps', heading: meeting.stepsHeading, body };
}
