import type { ClockClass } from '../../../findings/interval/interval-schema.ts';
import type { Rate } from '../../../findings/review-schema.ts';
import { type IntervalClockRow, intervalClockChart } from '../../charts/interval-clock.ts';
import { intervalCumulativeChart } from '../../charts/interval-cumulative.ts';
import { toldText } from '../../charts/told.ts';
import { type Html, html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import { rateCell } from '../../parts/rates.ts';
import type { SectionContext } from './section-context.ts';

/** An interval that reaches further than so many times the highest rate is cut and ends in an arrow. */
const CUT_AT = 3;

/** Failures and aborts by clock: classes with exact intervals beside the fit, the cumulative record, and the classes of sites and units. */
export async function clockSection(section: SectionContext): Promise<Section> {
  const { found, text } = section;
  const { evidence } = text;
  const fleet = found.by_clock.filter((row) => row.level === 'fleet');
  const body =
    fleet.length === 0 || found.spells.days_at_risk === 0
      ? html`<p class="empty">${evidence.noCandidates}</p>`
      : html`${await clockFigure(section, fleet, 'failures')}
${await clockFigure(section, fleet, 'aborts')}
${await cumulativeFigure(section)}
<p class="left-out">${evidence.fitCheck(found.fit_check.p, found.fit_check.not_computable)}</p>
${classTable(section, fleet, evidence.clockCaption)}
<details><summary>${evidence.perUnit}</summary>
${classTable(
  section,
  found.by_clock.filter((row) => row.level !== 'fleet'),
  evidence.perUnit,
)}</details>`;
  return { id: 'clock', heading: evidence.sections.clock, body };
}

function clockFigure(
  { context, numbers, found, text }: SectionContext,
  fleet: readonly ClockClass[],
  part: 'failures' | 'aborts',
): Promise<Html> {
  const { evidence } = text;
  const fittedOf = (row: ClockClass) => (part === 'failures' ? row.fitted_failures : row.fitted_aborts);
  const rows = chartRows(fleet, part, fittedOf, { context, found, text });
  const title = part === 'failures' ? evidence.clockFailures : evidence.clockAborts;
  return figure(context, numbers, {
    id: `interval-${part}`,
    title,
    reading: evidence.clockReading,
    description: evidence.clockDescription(
      fleet.map((row) =>
        evidence.clockPoint(
          evidence.className(row.from, row.to),
          row[part].events,
          row[part].of,
          fittedOf(row),
        ),
      ),
      title,
    ),
    spec: intervalClockChart(rows, {
      valueTitle: part === 'failures' ? evidence.failuresAxis : evidence.abortsAxis,
      clockTitle: evidence.clockTitle[found.clock],
      max: Math.max(...rows.flatMap((row) => [row.high_drawn ?? 0, row.fitted_per_100 ?? 0]), 0.1),
    }),
  });
}

function chartRows(
  fleet: readonly ClockClass[],
  part: 'failures' | 'aborts',
  fittedOf: (row: ClockClass) => number | null,
  { context, found, text }: Pick<SectionContext, 'context' | 'found' | 'text'>,
): IntervalClockRow[] {
  const { evidence, argument } = text;
  const { tips } = context.words;
  const highest = Math.max(0, ...fleet.map((row) => row[part].rate ?? 0));
  const cut = highest > 0 ? highest * CUT_AT : 1;
  return fleet.map((row) => {
    const rate: Rate = row[part];
    const fitted = fittedOf(row);
    const high = rate.high;
    const class_label = evidence.className(row.from, row.to);
    const per_100 = rate.rate === null ? null : rate.rate * 100;
    const low = rate.low === null ? null : rate.low * 100;
    return {
      class_label,
      per_100,
      low,
      high_drawn: high === null ? null : Math.min(high, cut) * 100,
      arrow_high: high !== null && high > cut ? cut * 100 : null,
      fitted_per_100: fitted === null || rate.of === 0 ? null : (fitted / rate.of) * 100,
      label: rate.of === 0 ? evidence.none : evidence.of(rate.events, rate.of),
      told: toldText({
        unit: '',
        tip: tips.intervalClass(
          argument.clockNames[found.clock],
          class_label,
          rate.events,
          rate.of,
          { per_100, low, high: high === null ? null : high * 100 },
          fitted,
        ),
      }),
    };
  });
}

async function cumulativeFigure({ context, numbers, found, text }: SectionContext): Promise<Html | null> {
  const last = found.cumulative.at(-1);
  if (!last) return null;
  const { evidence, argument } = text;
  const { format } = context.words;
  const top = Math.max(...found.cumulative.map((row) => row.observed)) * 2.2;
  const tipOf = ({ at, observed, low, high, fitted }: typeof last) =>
    evidence.cumulativeDescription(
      argument.interval(at, found.clock),
      format.twoFigures(observed),
      format.twoFigures(low),
      format.twoFigures(high),
      fitted === null ? null : format.twoFigures(fitted),
    );
  const rows = found.cumulative.map((row) => {
    const { high, ...drawn } = row;
    return {
      ...drawn,
      high_drawn: Math.min(high, top),
      told: toldText({ unit: '', tip: tipOf(row) }),
    };
  });
  return figure(context, numbers, {
    id: 'interval-cumulative',
    title: evidence.cumulativeTitle,
    reading: evidence.cumulativeReading,
    description: tipOf(last),
    spec: intervalCumulativeChart(rows, {
      clockTitle: evidence.clockTitle[found.clock],
      valueTitle: evidence.cumulativeAxis,
      observedName: evidence.observedName,
      fittedName: evidence.fittedName,
    }),
  });
}

function classTable(
  { context, numbers, text }: SectionContext,
  rows: readonly ClockClass[],
  caption: string,
): Html | false {
  const { evidence } = text;
  const { format } = context.words;
  const heads = evidence.clockHeads;
  const fitted = (value: number | null) => (value === null ? '' : format.twoFigures(value));
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      {
        head: heads.scope,
        kind: 'head',
        cell: (row) => (row.level === 'fleet' ? evidence.fleet : row.scope),
      },
      { head: heads.from, cell: (row) => evidence.className(row.from, row.to) },
      { head: heads.failures, kind: 'number', cell: (row) => rateCell(context, row.failures) },
      { head: heads.fitted, kind: 'number', cell: (row) => fitted(row.fitted_failures) },
      { head: heads.aborts, kind: 'number', cell: (row) => rateCell(context, row.aborts) },
      { head: heads.fittedAborts, kind: 'number', cell: (row) => fitted(row.fitted_aborts) },
    ],
  });
}
