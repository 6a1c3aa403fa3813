import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { cleaningClocksTable, clocksOff } from '../parts/lists/cleaning-clocks.ts';
import { withoutPassLists } from '../parts/lists/cycles-without-pass.ts';
import { filesTable, joinsTable, problemsTable, sourcesTable, textsTable } from '../parts/lists/data-read.ts';
import { clocksTable, countersTable, entryTable } from '../parts/lists/record-quality.ts';
import {
  contradictedTable,
  lookBackLists,
  requalificationTable,
  returnsTable,
  stopsTable,
  timingTable,
} from '../parts/lists/single-records.ts';
import type { Section } from '../parts/page.ts';

/** `month`: what the review's first page shows. `record`: everything, on the page of records and data. */
export type Scope = 'month' | 'record';

/** The lists of single records and the account of the reading, as sections. */
export function recordSections(context: ReportContext, numbers: Numbering, scope: Scope): Section[] {
  return [
    contradictedSection(context, numbers, scope),
    timingSection(context, numbers),
    ...withoutPassSection(context, numbers),
    lookBackSection(context, numbers),
    returnsSection(context, numbers, scope),
    stopsSection(context, numbers),
    qualitySection(context, numbers, scope),
    dataSection(context, numbers, scope),
  ];
}

const whole = ({ words }: ReportContext, anchor: string): Html =>
  html`<p class="screen"><a href="records.html#${anchor}">${words.records.onPage}</a></p>`;

function contradictedSection(context: ReportContext, numbers: Numbering, scope: Scope): Section {
  const { review, words, month, span } = context;
  const { contradicted } = words.records;
  const rows = review.contradicted_records.filter((row) => scope === 'record' || row.in_month);
  const before = review.contradicted_records.length - rows.length;
  const period = scope === 'month' ? month : span;
  const counts =
    review.settings.find((row) => row.name === 'rules.contradicted_counts_as_done')?.value === 'true';
  return {
    id: 'contradicted',
    heading: contradicted.heading,
    body: html`<p>${contradicted.intro} ${contradicted.rule(counts)}</p>
${
  rows.length === 0
    ? html`<p class="empty">${contradicted.none(period)}</p>`
    : contradictedTable(context, numbers, rows, contradicted.caption(period))
}
${rows.length > 0 && clockCaution(context)}
${before > 0 && html`<p class="note">${contradicted.before(before)}. <a class="screen" href="records.html#contradicted">${words.records.onPage}</a></p>`}`,
  };
}

/** Where the clock of a cleaning log is off, records contradict the cycle log though the work was done. */
function clockCaution({ review, words }: ReportContext): Html | false {
  const sources = [...new Set(clocksOff(review).map(({ source }) => source))];
  const { contradicted } = words.records;
  return (
    sources.length > 0 &&
    html`<p class="note">${contradicted.clock(sources)} <a class="screen" href="#quality">${words.quality.heading}</a></p>`
  );
}

function timingSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { timing } = words.records;
  const sum = (field: 'missing' | 'late' | 'time_unknown' | 'production_days') =>
    review.units.reduce((total, unit) => total + unit.tests.find((of) => of.span === 'month')![field], 0);
  const days = sum('production_days');
  const failed = review.test_timing.filter((row) => row.timing === 'after_failure').length;
  return {
    id: 'tests',
    heading: timing.heading,
    body: html`<p>${timing.intro}</p>
${
  days === 0
    ? html`<p class="empty">${timing.nothing(month)}</p>`
    : html`<p>${timing.counts(sum('missing'), sum('late'), failed, sum('time_unknown'), days)}</p>`
}
${
  review.test_timing.length > 0
    ? timingTable(context, numbers, review.test_timing, timing.caption(month))
    : days > 0 && sum('time_unknown') === 0 && html`<p class="empty">${timing.none(month)}</p>`
}`,
  };
}

/** Only where there is such a cycle: that there is none is said of the tests. */
function withoutPassSection(context: ReportContext, numbers: Numbering): Section[] {
  const { withoutPass } = context.words.records;
  const lists = context.review.cycles_without_pass;
  if (lists.length === 0) return [];
  return [
    {
      id: 'without-pass',
      heading: withoutPass.heading,
      body: html`<p>${withoutPass.intro}</p>
${withoutPassLists(context, numbers, lists)}`,
    },
  ];
}

function lookBackSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { lookBack } = words.records;
  return {
    id: 'look-back',
    heading: lookBack.heading,
    body: html`<p>${lookBack.intro}</p>
${
  review.look_backs.length === 0
    ? html`<p class="empty">${lookBack.none(month)}</p>`
    : lookBackLists(context, numbers, review.look_backs)
}`,
  };
}

function returnsSection(context: ReportContext, numbers: Numbering, scope: Scope): Section {
  const { review, words, month, span } = context;
  const { returns } = words.records;
  const period = scope === 'month' ? month : span;
  const cleanings = review.incomplete_returns.filter((row) => scope === 'record' || row.in_month);
  const services = review.requalifications.filter(
    (row) => scope === 'record' || row.in_month || row.state === 'incomplete',
  );
  return {
    id: 'returns',
    heading: returns.heading,
    body: html`<p>${returns.intro}</p>
${
  cleanings.length === 0
    ? html`<p class="empty">${returns.none(period)}</p>`
    : returnsTable(context, numbers, cleanings, returns.cleaningCaption(period))
}
${
  services.length > 0
    ? requalificationTable(context, numbers, services, returns.serviceCaption)
    : review.requalifications.length === 0 && html`<p>${returns.noService}</p>`
}
${scope === 'month' && review.incomplete_returns.length > cleanings.length && whole(context, 'returns')}`,
  };
}

function stopsSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { stops } = words.records;
  return {
    id: 'early-stops',
    heading: stops.heading,
    body: html`<p>${stops.intro}</p>
${
  review.early_stops.length === 0
    ? html`<p class="empty">${stops.none(month)}</p>`
    : stopsTable(context, numbers, review.early_stops, stops.caption(month))
}
${textsTable(context, numbers)}`,
  };
}

/** How good the records are: in one sentence on the review, in full on the page of records. */
function qualitySection(context: ReportContext, numbers: Numbering, scope: Scope): Section {
  const { words, review } = context;
  const { quality } = words;
  const { clock_differences, cleaning_clocks, entry, counters } = review.record_quality;
  const empty = clock_differences.length + cleaning_clocks.length + entry.length + counters.length === 0;
  const apart = clock_differences.filter((row) => row.verdict !== 'agree' && row.verdict !== 'too_few');
  const logsOff = clocksOff(review).length;
  const rounded = entry.filter((row) => row.on_five_p !== null && row.on_five_p < 0.001);
  const jumping = counters.filter((row) => row.events.length > 0);
  return {
    id: 'quality',
    heading: quality.heading,
    body: empty
      ? html`<p class="empty">${quality.none}</p>`
      : html`<p>${quality.intro}</p>
<p>${quality.short(apart.length, rounded.length, jumping.length)}${logsOff > 0 && html` ${quality.cleaningShort(logsOff)}`}</p>
${
  scope === 'month'
    ? html`<p class="screen"><a href="records.html#quality">${quality.more}</a></p>`
    : html`${clocksTable(context, numbers, clock_differences)}
${cleaningClocksTable(context, numbers)}
${entryTable(context, numbers, entry)}
${countersTable(context, numbers, counters)}`
}`,
  };
}

function dataSection(context: ReportContext, numbers: Numbering, scope: Scope): Section {
  const { review, words } = context;
  const { data } = words.records;
  return {
    id: 'data',
    heading: data.heading,
    body: html`<p>${data.intro}${review.period.later_records > 0 && ` ${data.later(review.period.later_records)}`}</p>
${sourcesTable(context, numbers)}
${scope === 'record' && previousFile(context)}
${problemsTable(context, numbers, scope === 'record' ? 'with_examples' : 'counts_only')}
${scope === 'month' && review.files.length > 0 && html`<p class="screen"><a href="records.html#data">${data.filesSummary(review.files.length)}</a></p>`}
${scope === 'record' && review.files.length > 0 && filesTable(context, numbers)}
${scope === 'record' && review.joins.length > 0 && joinsTable(context, numbers)}`,
  };
}

/** The review before is an input like the exports. */
function previousFile({ words, review }: ReportContext): Html | false {
  const { previous } = review.changes;
  if (previous.sha256 === null) return false;
  return html`<p>${previous.state === 'read' ? words.changes.file(previous) : words.changes.unread(previous)}</p>`;
}
