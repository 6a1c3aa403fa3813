import type { Review } from '../../findings/review-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { verdictWords } from '../parts/comparison-figure.ts';
import { type Column, dataTable } from '../parts/data-table.ts';
import type { Section } from '../parts/page.ts';

type Setting = Review['settings'][number];

const list = (entries: readonly (readonly [string, string])[]): Html =>
  html`<dl class="words">
${entries.map(
  ([name, text]) => html`<div><dt>${name}</dt><dd>${text}</dd></div>
`,
)}</dl>`;

export function methodsSection({ words }: ReportContext): Section {
  const { methods, attention } = words;
  return {
    id: 'methods',
    heading: methods.heading,
    body: html`<p>${methods.intro}</p>
${list([...methods.points, [attention.orderName, attention.order]])}`,
  };
}

export function wordsSection(context: ReportContext): Section {
  const { methods, comparisons } = context.words;
  return {
    id: 'words',
    heading: methods.wordsHeading,
    body: html`${list(methods.words)}
<h3>${comparisons.heads.verdict}</h3>
${verdictWords(context)}`,
  };
}

/** Every setting in force. */
export function settingsSection(context: ReportContext, numbers: Numbering): Section {
  const { methods } = context.words;
  return {
    id: 'settings',
    heading: methods.settingsHeading,
    body: html`<p>${methods.settingsIntro}</p>
${settingsTable(context, numbers, context.review.settings, 'whole')}`,
  };
}

/** The policy and the rules that differ from their defaults; the rest is on its own page. */
export function settingsInShort(context: ReportContext, numbers: Numbering): Section {
  const { methods } = context.words;
  const policy = context.review.settings.filter((row) => row.default === null);
  const changed = context.review.settings.filter(differs);
  return {
    id: 'settings',
    heading: methods.settingsHeading,
    body: html`<p>${methods.changed(changed.length)}${changed.length > 0 && html` ${changed.map((row) => row.name).join(', ')}.`} <a class="screen" href="methods.html#settings">${methods.all}</a></p>
${settingsTable(context, numbers, [...policy, ...changed], 'short')}`,
  };
}

const differs = (row: Setting): boolean => row.default !== null && row.default !== row.value;

/** Values and names as text: codes of the site file's cleaning policy are written as words. */
function settingText({ words }: ReportContext, row: Setting): { name: string; value: string } {
  const task = row.name.startsWith('cleaning.') ? row.name.slice('cleaning.'.length) : '';
  const name = words.terms.task[task as keyof typeof words.terms.task];
  return name === undefined
    ? { name: row.name, value: words.methods.settingValue(row.value) }
    : { name: `${words.methods.policy}: ${name}`, value: words.methods.policyValue(row.value) };
}

function settingsTable(
  context: ReportContext,
  numbers: Numbering,
  rows: readonly Setting[],
  form: 'whole' | 'short',
): Html | false {
  const { methods } = context.words;
  if (rows.length === 0) return false;
  const rest: Column<Setting>[] =
    form === 'short'
      ? []
      : [
          {
            head: methods.settingsHeads.default,
            cell: (row) => (row.default === null ? methods.noDefault : methods.settingValue(row.default)),
          },
          {
            head: methods.settingsHeads.description,
            cell: (row) => methods.settingMeans(row.name, row.description),
          },
        ];
  return dataTable(context, numbers, {
    caption: methods.settingsCaption,
    rows,
    columns: [
      { head: methods.settingsHeads.name, kind: 'head', cell: (row) => settingText(context, row).name },
      {
        head: methods.settingsHeads.value,
        kind: 'long',
        cell: (row) =>
          html`${settingText(context, row).value}${differs(row) && html` <span class="sub">${methods.own}</span>`}`,
      },
      ...rest,
    ],
  });
}

export function cautionsSection({ words }: ReportContext): Section {
  return {
    id: 'cautions',
    heading: words.methods.cautionsHeading,
    body: html`<ol class="cautions">${words.methods.cautions.map(
      (text) => html`<li>${text}</li>
`,
    )}</ol>`,
  };
}
