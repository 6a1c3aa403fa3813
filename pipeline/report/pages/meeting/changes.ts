import type { Changes } from '../../../findings/changes/changes-schema.ts';
import type { AttentionCode, Exposure, OutcomeName, Verdict } from '../../../findings/review-schema.ts';
import { CLEANING_TASKS } from '../../../site/vocabulary.ts';
import { type Html, type HtmlValue, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { unitLink } from '../../parts/unit-link.ts';

/** What moved since the review before, or why nothing can be said of it. */
export function changesSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { changes: text } = words;
  const { changes } = review;
  const { previous } = changes;
  const body =
    previous.state !== 'read'
      ? html`<p class="empty">${text.state[previous.state](previous)}</p>`
      : html`<p>${text.intro(words.format.month(previous.month!), month)}</p>
${
  nothingMoved(changes) && html`<p class="empty">${text.nothing}</p>`
}${changes.units_new.length > 0 && html`<p>${text.unitsNew(words.format.list(changes.units_new))}</p>`}
${changes.units_gone.length > 0 && html`<p>${text.unitsGone(words.format.list(changes.units_gone))}</p>`}
<h3>${text.verdictsHeading}</h3>
${verdicts(context, numbers)}
<h3>${text.driftHeading}</h3>
${drift(context, numbers)}
<h3>${text.attentionHeading}</h3>
${attention(context, numbers)}
<h3>${text.cleaningHeading}</h3>
${cleaning(context, numbers)}
${settings(context, numbers)}`;
  return { id: 'changes', heading: text.heading, body };
}

const nothingMoved = ({ verdicts, drift, attention, settings }: Changes): boolean =>
  verdicts.length + drift.length + settings.length === 0 && attention.every((row) => row.change === 'stays');

/** A unit as a link where it has a page; one that is gone has none. */
const unitOf = (context: ReportContext, unit: string | null): HtmlValue =>
  unit === null
    ? context.words.terms.fleet
    : context.review.units.some((of) => of.unit === unit)
      ? unitLink(context, unit)
      : unit;

function verdicts(context: ReportContext, numbers: Numbering): Html {
  const { changes: text, terms, format } = context.words;
  const { verdicts: rows, verdicts_same } = context.review.changes;
  const heads = text.verdictHeads;
  const verdict = (value: string | null) =>
    value === null ? text.notMade : (terms.verdict[value as Verdict] ?? value);
  const ratio = (value: number | null) => (value === null ? text.noRatio : format.ratio(value));
  return html`<p>${rows.length === 0 && text.noVerdicts} ${text.verdictsSame(verdicts_same)}</p>
${dataTable(context, numbers, {
  caption: text.verdictsCaption,
  rows,
  columns: [
    { head: heads.unit, kind: 'head', cell: (row) => unitOf(context, row.unit) },
    {
      head: heads.question,
      cell: (row) =>
        `${terms.outcome[row.outcome as OutcomeName] ?? row.outcome}, ${terms.exposure[row.exposure as Exposure] ?? row.exposure}`,
    },
    { head: heads.before, cell: (row) => verdict(row.before) },
    { head: heads.now, cell: (row) => html`<b>${verdict(row.now)}</b>` },
    {
      head: heads.ratio,
      kind: 'number',
      cell: (row) => text.ratios(ratio(row.ratio_before), ratio(row.ratio_now)),
    },
  ],
})}`;
}

function drift(context: ReportContext, numbers: Numbering): Html {
  const { changes: text, terms, drift: words } = context.words;
  const { drift: rows, drift_same } = context.review.changes;
  const heads = text.driftHeads;
  const state = (value: Changes['drift'][number]['now']) =>
    value === null ? text.notWatched : words.state[value];
  return html`<p>${rows.length === 0 && text.noDrift} ${text.driftSame(drift_same)}</p>
${dataTable(context, numbers, {
  caption: text.driftCaption,
  rows,
  columns: [
    { head: heads.unit, kind: 'head', cell: (row) => unitOf(context, row.unit) },
    { head: heads.probe, cell: (row) => terms.probe[row.probe] },
    { head: heads.before, cell: (row) => state(row.before) },
    { head: heads.now, cell: (row) => html`<b>${state(row.now)}</b>` },
    { head: heads.note, cell: (row) => row.new_era && text.newEra },
  ],
})}`;
}

function attention(context: ReportContext, numbers: Numbering): Html {
  const { changes: text, terms, attention: words } = context.words;
  const all = context.review.changes.attention;
  const heads = text.attentionHeads;
  const of = (change: string) => all.filter((row) => row.change === change).length;
  const rows = all.filter((row) => row.change !== 'stays' || row.level_before !== row.level_now);
  const level = (value: 'act' | 'decide' | 'look' | null) => (value === null ? '' : words.level[value]);
  const about = (value: string | null) =>
    value !== null && value in terms.probe && `: ${terms.probe[value as keyof typeof terms.probe]}`;
  return html`<p>${rows.length === 0 ? text.noAttention : text.attentionCounts(of('new'), of('gone'), of('stays'))}</p>
${dataTable(context, numbers, {
  caption: text.attentionCaption,
  rows,
  columns: [
    { head: heads.unit, kind: 'head', cell: (row) => unitOf(context, row.unit) },
    {
      head: heads.reason,
      cell: (row) => html`${text.reason[row.code as AttentionCode] ?? row.code}${about(row.about)}`,
    },
    {
      head: heads.change,
      cell: (row) =>
        row.change === 'stays'
          ? text.change.stays(level(row.level_before), level(row.level_now))
          : row.change === 'new'
            ? html`<b>${text.change.new(level(row.level_now))}</b>`
            : text.change.gone(level(row.level_before)),
    },
  ],
})}`;
}

type Line = Pick<Changes['cleaning'][number], 'task' | 'before' | 'now' | 'moved'> & { unit: string };

function cleaning(context: ReportContext, numbers: Numbering): Html {
  const { words, month, review } = context;
  const { changes: text, terms, pages, format } = words;
  const rows = review.changes.cleaning;
  const heads = text.cleaningHeads;
  if (rows.length === 0) return html`<p class="empty">${text.noCleaning}</p>`;
  const cell = (of: Line['now'], field: 'done' | 'missed') => of && pages.outOf(of[field], of.due);
  const counts: Column<Line>[] = [
    { head: heads.doneBefore, kind: 'number', cell: (row) => cell(row.before, 'done') },
    { head: heads.doneNow, kind: 'number', cell: (row) => cell(row.now, 'done') },
    { head: heads.missedBefore, kind: 'number', cell: (row) => cell(row.before, 'missed') },
    { head: heads.missedNow, kind: 'number', cell: (row) => cell(row.now, 'missed') },
  ];
  const before = format.month(review.changes.previous.month!);
  return html`${dataTable(context, numbers, {
    caption: text.cleaningCaption(before, month),
    rows: CLEANING_TASKS.flatMap((task) => {
      const of = rows.filter((row) => row.task === task);
      return of.length === 0 ? [] : [sumOf(task, of)];
    }),
    columns: [{ head: heads.task, kind: 'head', cell: (row) => terms.task[row.task] }, ...counts],
  })}
${dataTable(context, numbers, {
  caption: text.cleaningMovedCaption,
  rows: rows.filter((row) => row.moved !== 'same'),
  columns: [
    { head: heads.unit, kind: 'head', cell: (row) => unitOf(context, row.unit) },
    { head: heads.task, cell: (row) => terms.task[row.task] },
    ...counts,
    { head: heads.moved, cell: (row) => text.moved[row.moved] },
  ],
})}`;
}

function sumOf(task: Line['task'], rows: readonly Line[]): Line {
  const sum = (side: 'before' | 'now'): Line['now'] => {
    const of = rows.flatMap((row) => row[side] ?? []);
    const total = (field: 'due' | 'done' | 'missed' | 'not_recorded') =>
      of.reduce((all, row) => all + row[field], 0);
    return of.length === 0
      ? null
      : {
          due: total('due'),
          done: total('done'),
          missed: total('missed'),
          not_recorded: total('not_recorded'),
        };
  };
  return { unit: '', task, before: sum('before'), now: sum('now'), moved: 'same' };
}

function settings(context: ReportContext, numbers: Numbering): Html | false {
  const { changes: text } = context.words;
  const { settings: rows } = context.review.changes;
  const heads = text.settingHeads;
  if (rows.length === 0) return false;
  return html`<h3>${text.settingsHeading}</h3>
<p>${text.settingsNote}</p>
${dataTable(context, numbers, {
  caption: text.settingsCaption,
  rows,
  columns: [
    { head: heads.name, kind: 'head', cell: (row) => html`<code>${row.name}</code>` },
    { head: heads.before, kind: 'long', cell: (row) => html`<code>${row.before ?? text.noSetting}</code>` },
    { head: heads.now, kind: 'long', cell: (row) => html`<code>${row.now ?? text.noSetting}</code>` },
  ],
})}`;
}
