import { html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
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
})}`,
  };
}
