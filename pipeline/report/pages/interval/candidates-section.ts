import type { Candidate, Expected } from '../../../findings/interval/argument-schema.ts';
import { intervalCurveChart } from '../../charts/interval-curve.ts';
import { toldText } from '../../charts/told.ts';
import { type Html, html } from '../../html/html.ts';
import { type Column, dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import type { SectionContext } from './section-context.ts';

/** Candidates with their expected year, the curve of hours or cost, and which input moves the best interval. */
export async function candidatesSection(section: SectionContext): Promise<Section> {
  const { found, text } = section;
  const { evidence } = text;
  if (found.candidates.length === 0)
    return {
      id: 'candidates',
      heading: evidence.sections.candidates,
      body: html`<p class="empty">${evidence.noCandidates}</p>`,
    };
  return {
    id: 'candidates',
    heading: evidence.sections.candidates,
    body: html`${candidateTable(section)}
<p class="left-out">${evidence.candidatesNote}${leftOut(section)}</p>
${await curveFigure(section)}
${found.answer.code === 'supported' && sensitivityTable(section)}`,
  };
}

/** Candidates without a year, by why. */
function leftOut({ found, text, context }: SectionContext): string {
  const { evidence, argument } = text;
  const standings = [...new Set(found.candidates.map((row) => row.standing))].filter(
    (of) => of !== 'compared',
  );
  return standings
    .map((standing) => {
      const intervals = found.candidates.filter((row) => row.standing === standing);
      const last = intervals.at(-1)!;
      const names = intervals.map((row) =>
        row === last
          ? argument.interval(row.interval, found.clock)
          : context.words.format.integer(row.interval),
      );
      return ` ${evidence.leftOut(context.words.format.list(names), evidence.standing[standing])}`;
    })
    .join('');
}

/** What the litres of cleaner rest on. */
const CLEANER_INPUTS = new Set(['sprayer_litres', 'fillings', 'cleaner_ml_per_litre']);

function candidateTable({ context, numbers, found, text }: SectionContext): Html | false {
  const { evidence, argument } = text;
  const { format } = context.words;
  const heads = evidence.candidateHeads;
  const cell = (value: Expected): Html =>
    html`${format.twoFigures(value.estimate)} <span class="sub">${argument.between(format.twoFigures(value.low), format.twoFigures(value.high))}</span>`;
  const of = (
    head: string,
    value: (row: NonNullable<Candidate['year']>) => Expected | null,
  ): Column<Candidate> => ({
    head,
    kind: 'number',
    cell: (row) => {
      const expected = row.year && value(row.year);
      return expected ? cell(expected) : '';
    },
  });
  const byDefault = found.inputs.some(({ name, origin }) => CLEANER_INPUTS.has(name) && origin === 'default');
  const columns: Column<Candidate>[] = [
    {
      head: heads.interval,
      kind: 'head',
      cell: (row) =>
        html`${argument.interval(row.interval, found.clock)}${row.in_force && html` <span class="sub">${evidence.inForceMark}</span>`}`,
    },
    {
      head: heads.cleanings,
      kind: 'number',
      cell: (row) => (row.year ? format.integer(row.year.cleanings.estimate) : ''),
    },
    of(heads.failures, (year) => year.failures),
    of(heads.aborts, (year) => year.aborts),
    of(heads.hours, (year) => year.hours_total),
    {
      head: heads.labour,
      kind: 'number',
      cell: (row) => (row.year ? format.integer(row.year.labour_hours.estimate) : ''),
    },
    {
      head: byDefault ? heads.cleanerByDefault : heads.cleaner,
      kind: 'number',
      cell: (row) => (row.year ? format.twoFigures(row.year.cleaner_litres.estimate) : ''),
    },
    ...(found.objective === 'cost' ? [of(heads.cost, (year) => year.cost_total)] : []),
    {
      head: heads.breakEven,
      kind: 'number',
      cell: ({ break_even: even }) => {
        if (even === null) return '';
        const [value, low, high] =
          even.cost !== null
            ? [even.cost, even.cost_low, even.cost_high]
            : [even.hours!, even.hours_low, even.hours_high];
        return html`${format.twoFigures(value)} <span class="sub">${argument.breakEvenRange(low, high)}</span>`;
      },
    },
  ];
  return dataTable(context, numbers, {
    caption: evidence.candidatesCaption,
    rows: found.candidates.filter((row) => row.year !== null),
    columns,
  });
}

async function curveFigure({ context, numbers, found, text }: SectionContext): Promise<Html | null> {
  const { best, curve, objective } = found;
  if (best === null || objective === null || curve.length < 2) return null;
  const { evidence, argument } = text;
  const { format, tips } = context.words;
  const named = found.answer.code === 'supported';
  const valueAt = (interval: number) => curve.find((row) => row.interval === interval)?.value;
  const inForce = found.in_force === null ? undefined : valueAt(found.in_force);
  const marks = [
    ...(named
      ? [{ interval: best.interval, value: best.value, name: argument.interval(best.interval, found.clock) }]
      : []),
    ...(inForce !== undefined && !(named && best.interval === found.in_force)
      ? [{ interval: found.in_force!, value: inForce, name: evidence.inForceMark }]
      : []),
  ];
  // The first days cost many times the rest; the scale ends where the middle of the curve is still read.
  const max = 4 * Math.min(...curve.map((row) => row.value));
  const shown = curve.filter((row) => row.value <= max);
  const points = curve.filter((_, index) => index % Math.max(1, Math.floor(curve.length / 6)) === 0);
  return figure(context, numbers, {
    id: 'interval-curve',
    title: evidence.curveTitle[objective],
    ...(named
      ? {
          reading: evidence.curveReading(
            argument.interval(best.interval, found.clock),
            format.integer(best.low),
            argument.interval(best.high, found.clock),
          ),
        }
      : {}),
    description: evidence.curveDescription(
      points.map((row) => `${argument.interval(row.interval, found.clock)} ${format.integer(row.value)}`),
    ),
    spec: intervalCurveChart(
      shown.map(({ interval, value, low, high }) => ({
        interval,
        value,
        low,
        high_drawn: Math.min(high, max),
        told: toldText({
          unit: '',
          tip: tips.year[objective](argument.interval(interval, found.clock), value, low, high),
        }),
      })),
      {
        intervalTitle: `${evidence.candidateHeads.interval}, ${argument.clockNames[found.clock]}`,
        valueTitle: evidence.curveAxis[objective],
        range: named ? { low: best.low, high: best.high } : null,
        marks,
        max,
      },
    ),
  });
}

function sensitivityTable({ context, numbers, found, text }: SectionContext): Html | false {
  const { evidence, argument, inputs } = text;
  const { format } = context.words;
  const heads = evidence.sensitivityHeads;
  return html`${dataTable(context, numbers, {
    caption: evidence.sensitivityCaption,
    rows: found.sensitivity.filter((row) => row.moves > 0),
    columns: [
      { head: heads.input, kind: 'head', cell: (row) => inputs.name(row.input) },
      {
        head: heads.values,
        kind: 'number',
        cell: (row) =>
          argument.between(
            ...inputs.changed(row.input, format.twoFigures(row.low_value), format.twoFigures(row.high_value)),
          ),
      },
      {
        head: heads.best,
        kind: 'number',
        cell: (row) =>
          argument.between(format.integer(row.best_at_low), argument.interval(row.best_at_high, found.clock)),
      },
    ],
  })}
<p class="left-out">${evidence.sensitivityNote}</p>`;
}
