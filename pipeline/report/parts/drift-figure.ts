import type { ProbeDrift, UnitDrift } from '../../findings/drift/drift-schema.ts';
import { parseDay } from '../../site/day.ts';
import { driftChart } from '../charts/drift.ts';
import { toldText } from '../charts/told.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { driftRows } from '../rows/drift-rows.ts';
import { driftPoints, hasWeeks } from '../rows/drift-weeks.ts';
import { monthsFromTo } from '../rows/months.ts';
import { figure } from './figure.ts';

const dayOf = (date: string): number => parseDay(date)!;
const DAYS_PER_WEEK = 7;

/**
 * One probe of a unit over its whole record. Empty where it has no value.
 *
 * @param explained whether the marks are explained above the picture: once in a section is enough
 */
export async function driftFigure(
  context: ReportContext,
  numbers: Numbering,
  eras: readonly ProbeDrift[],
  unit: UnitDrift | undefined,
  explained: boolean,
): Promise<Html> {
  const { words, review } = context;
  const { drift, charts } = words;
  const { record_from, record_to, from } = review.period;
  const bare = driftRows(eras);
  const now = eras.at(-1);
  if (!now || bare.length === 0 || record_from === null || record_to === null) return html``;
  const { probe, measure, limit } = now;
  const tipOf = (date: string, what: string) => words.tips.day(date, what);
  const points = driftPoints(bare, dayOf(record_from), dayOf(record_to));
  const rows = points.map(({ values, ...row }) => {
    const value = drift.value(row.value, measure);
    return { ...row, tip: tipOf(row.date, values === 1 ? value : drift.weekMedian(value, values)) };
  });
  const reading = hasWeeks(points) ? `${drift.reading} ${drift.readingWeeks}` : drift.reading;
  return figure(context, numbers, {
    id: `figure-drift-${now.unit}-${probe}`.replace(/[^A-Za-z0-9_-]/g, '-'),
    title: drift.figureTitle(probe, measure, now.unit),
    description: eras
      .map((era) => drift.describe(drift.probe(probe), drift.state[era.state], era.values))
      .join(' '),
    spec: driftChart(rows, now.unit, {
      timeTitle: charts.time,
      from: dayOf(record_from),
      to: dayOf(record_to),
      monthFrom: dayOf(from),
      months: months(context, record_from, record_to),
      bands: eras.flatMap(({ era, baseline, step }) => {
        if (baseline === null) return [];
        // The level is that since the last step.
        const first = step !== null && step.date > era.from ? step.date : era.from;
        return [{ from: dayOf(first), to: dayOf(era.to), low: baseline.low, high: baseline.high }];
      }),
      limit: limit && { value: limit.value, name: drift.limit[limit.source] },
      movement: movementOf(now),
      events: (unit?.events ?? []).map(({ date, kind }) => {
        const look =
          kind === 'failed_test'
            ? 'failure'
            : kind === 'chamber' || kind === 'drain_flush'
              ? 'cleaning'
              : 'service';
        const tip = tipOf(date, eventName(words, kind, look));
        return { day: dayOf(date), kind: look, told: toldText({ unit: now.unit, tip }) };
      }),
    }),
    ...(explained && { reading }),
    csv: 'tables/drift.csv',
  });
}

function eventName(
  { charts, terms }: ReportContext['words'],
  kind: UnitDrift['events'][number]['kind'],
  look: 'failure' | 'cleaning' | 'service',
): string {
  if (kind === 'chamber' || kind === 'drain_flush') return terms.task[kind];
  return terms.era[kind] ?? charts.lane[look] ?? look;
}

/** The movement drawn back from the level now at the fitted pace. */
function movementOf({ since, rate_per_week, level_now, state, era }: ProbeDrift) {
  if (since === null || rate_per_week === null || level_now === null || state === 'stepped') return null;
  const from = dayOf(since);
  const to = dayOf(era.to);
  const rise = (rate_per_week.value * (to - from)) / DAYS_PER_WEEK;
  return { from, to, from_value: level_now - rise, to_value: level_now };
}

function months({ words }: ReportContext, from: string, to: string) {
  const all = monthsFromTo(from.slice(0, 7), to.slice(0, 7));
  const step = all.length > 30 ? 3 : all.length > 18 ? 2 : 1;
  const named = all.length > 120 ? ['-01'] : ['-01', '-07'];
  return all
    .filter((month, index) => (all.length > 60 ? named.includes(month.slice(4)) : index % step === 0))
    .map((month, index) => {
      const first = `${month}-01`;
      const name = words.format.monthShort(month);
      return {
        day: dayOf(first < from ? from : first),
        label: index === 0 || month.endsWith('-01') ? [name, month.slice(0, 4)] : [name],
      };
    });
}
