import { type Html, html } from '../../html/html.ts';
import { type Column, dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import type { SectionContext } from './section-context.ts';

/** Every input in force with where it came from. */
export function inputsSection({ context, numbers, found, text }: SectionContext): Section {
  const { inputs, evidence } = text;
  const { format } = context.words;
  const value = (name: string) => found.inputs.find((row) => row.name === name)?.value ?? 0;
  const ml = value('cleaner_ml_per_litre') * value('sprayer_litres') * value('fillings');
  const hours =
    value('cool_down_hours') +
    (value('work_minutes') + value('warm_up_minutes') + value('test_minutes')) / 60;
  const heads = inputs.heads;
  return {
    id: 'inputs',
    heading: evidence.sections.inputs,
    body: html`<p>${inputs.hours(format.twoFigures(hours))} ${inputs.dose(format.fixed(ml, 2), format.twoFigures(value('sprayer_litres') * value('fillings')))}</p>
${dataTable(context, numbers, {
  caption: inputs.caption,
  rows: found.inputs,
  columns: [
    { head: heads.name, kind: 'head', cell: (row) => inputs.name(row.name) },
    {
      head: heads.value,
      kind: 'number',
      cell: (row) => {
        if (row.value === null) return '';
        const unit = row.unit === 'cost' ? found.currency : (inputs.units[row.unit] ?? row.unit);
        return `${format.twoFigures(row.value)}${unit === '' ? '' : ` ${unit}`}`;
      },
    },
    { head: heads.origin, cell: (row) => inputs.origin[row.origin] },
    {
      head: heads.records,
      kind: 'number',
      cell: (row) => (row.from_records === null ? '' : format.integer(row.from_records)),
    },
  ],
})}
${measuredTable({ context, numbers, found, text })}`,
  };
}

/** How often the case was right where the truth was known. */
function measuredTable({ context, numbers, found, text }: SectionContext): Html | false {
  const { evidence } = text;
  const { format, pages } = context.words;
  const { measured } = found;
  if (measured === null) return html`<p class="left-out">${evidence.notMeasured}</p>`;
  type Scenario = (typeof measured.scenarios)[number];
  const heads = evidence.measuredHeads;
  const share = (head: string, part: 'supported' | 'shape_held' | 'range_held'): Column<Scenario> => ({
    head,
    kind: 'number',
    cell: ({ [part]: of }) =>
      of.of === 0
        ? ''
        : html`${pages.outOf(of.count, of.of)} <span class="sub">${format.range(format.percent(of.low ?? 0), format.percent(of.high ?? 1))}</span>`,
  });
  return dataTable(context, numbers, {
    caption: evidence.measuredCaption(format.date(measured.made), measured.version),
    rows: measured.scenarios,
    columns: [
      {
        head: heads.scenario,
        kind: 'head',
        cell: (row) => evidence.scenarioName(row.scenario),
      },
      { head: heads.says, cell: (row) => evidence.scenario(row.scenario, row.says) },
      { head: heads.shape, kind: 'number', cell: (row) => format.twoFigures(row.shape) },
      { head: heads.failures, kind: 'number', cell: (row) => format.integer(row.failures) },
      share(heads.supported, 'supported'),
      share(heads.shapeHeld, 'shape_held'),
      share(heads.rangeHeld, 'range_held'),
    ],
  });
}
