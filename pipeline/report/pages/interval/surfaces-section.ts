import { type AppearanceRow, intervalAppearanceChart } from '../../charts/interval-appearance.ts';
import { toldText } from '../../charts/told.ts';
import { type Html, html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import type { SectionContext } from './section-context.ts';

/** Inspections by days since cleaning, water beside its limits, deposits that stay. */
export async function surfacesSection(section: SectionContext): Promise<Section> {
  const { found, text, context } = section;
  const { evidence } = text;
  const { format } = context.words;
  const { surfaces } = found;
  const { trend } = surfaces;
  const body = html`${
    surfaces.by_clock.length === 0
      ? html`<p class="empty">${evidence.noInspections}</p>`
      : html`${await appearanceFigure(section)}
<p>${trend.gamma === null ? context.words.reason(trend.not_computable ?? '') : evidence.trend(format.fixed(trend.gamma, 2), format.pValue(trend.p!), trend.units)} ${evidence.residueTrend(surfaces.residue_trend.p, surfaces.residue_trend.not_computable)}</p>`
  }
<h3>${evidence.depositsHeading}</h3>
${deposits(section)}
${waterTable(section)}`;
  return { id: 'surfaces', heading: evidence.sections.surfaces, body };
}

function deposits({ found, text, context }: SectionContext): Html {
  const { evidence } = text;
  const { deposits: rows } = found.surfaces;
  if (rows.length === 0) return html`<p>${evidence.noDeposits}</p>`;
  return html`<ul>${rows.map((row) => {
    const advice = adviceText(evidence, row);
    return html`<li>${evidence.deposit({ unit: row.unit, residue: row.residue, of: row.of, date: context.words.format.date(row.last_date) })} ${advice}</li>
`;
  })}</ul>`;
}

function adviceText(
  { depositAdvice, determinand }: SectionContext['text']['evidence'],
  row: SectionContext['found']['surfaces']['deposits'][number],
): string {
  switch (row.advice) {
    case 'water_and_professional':
      return depositAdvice.water_and_professional(
        row.water_out.map((of) => `${of.point}: ${determinand(of.determinand)}`).join('; '),
      );
    case 'look_again':
      return depositAdvice.look_again(row.water_within.map(determinand), row.water_examples.map(determinand));
    default:
      return depositAdvice[row.advice];
  }
}

function waterTable({ context, numbers, found, text }: SectionContext): Html | false {
  const { evidence } = text;
  const { water } = found.surfaces;
  if (water.length === 0) return html`<p class="empty">${evidence.noWater}</p>`;
  const heads = evidence.waterHeads;
  const { pages, format } = context.words;
  return dataTable(context, numbers, {
    caption: evidence.waterCaption,
    rows: water,
    columns: [
      {
        head: heads.point,
        kind: 'head',
        cell: (row) => html`${row.point} <span class="sub">${context.siteName(row.site)}</span>`,
      },
      { head: heads.determinand, cell: (row) => evidence.determinand(row.determinand) },
      {
        head: heads.last,
        kind: 'number',
        cell: (row) =>
          html`${format.figures(row.last_value, 6)} ${row.measure.toLowerCase() === row.determinand.toLowerCase() ? '' : row.measure} <span class="sub">${format.date(row.last_date)}</span>`,
      },
      {
        head: heads.out,
        kind: 'number',
        cell: (row) =>
          row.not_compared === null
            ? pages.outOf(row.out, row.samples)
            : evidence.notCompared[row.not_compared],
      },
      {
        head: heads.limit,
        kind: 'number',
        cell: (row) => (row.status === null ? '' : evidence.limit(row.low, row.high)),
      },
      {
        head: heads.edition,
        cell: (row) =>
          row.status === null
            ? ''
            : html`${evidence.edition(row.edition ?? '')} <span class="sub wraps">${evidence.waterStatus[row.status]}</span>`,
      },
    ],
  });
}

async function appearanceFigure({ context, numbers, found, text }: SectionContext): Promise<Html> {
  const { evidence } = text;
  const { format, tips } = context.words;
  const classes = found.surfaces.by_clock.map((row) => evidence.className(row.from_day, row.to_day));
  const rows = found.surfaces.by_clock.flatMap((row, index): AppearanceRow[] => {
    let from = 0;
    return row.scores.flatMap((count, score) => {
      if (count === 0) return [];
      const piece = {
        class_label: classes[index]!,
        score,
        from_count: from,
        to_count: from + count,
        middle: from + count / 2,
        label: count >= 3 ? String(score) : '',
        told: toldText({ unit: '', tip: tips.appearance(classes[index]!, count, score) }),
      };
      from += count;
      return [piece];
    });
  });
  const means = found.surfaces.by_clock.flatMap((row, index) =>
    row.mean === null ? [] : [`${classes[index]} ${format.fixed(row.mean, 1)}`],
  );
  return figure(context, numbers, {
    id: 'interval-appearance',
    title: evidence.appearanceTitle,
    reading: `${evidence.appearanceKey}. ${evidence.appearanceReading(means)}`,
    description: evidence.appearanceReading(means),
    spec: intervalAppearanceChart(rows, {
      classes,
      clockTitle: evidence.clockTitle.calendar_days,
      countTitle: evidence.appearanceAxis,
    }),
  });
}
