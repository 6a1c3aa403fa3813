import type { Review } from '../../findings/review-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

type Unit = Review['units'][number];
type State = keyof ReportContext['words']['live']['finder']['states'];

const ATTENTION: readonly State[] = ['act', 'decide', 'look', 'calm'];
const MONTH: readonly State[] = ['missed', 'overdue', 'failed', 'moving', 'contradicted'];

/** Search and filter over the units: hidden until the page's script shows it, as without script the lists are whole. */
export function finder({ words, review }: ReportContext): Html {
  const text = words.live.finder;
  const options = (states: readonly State[]) =>
    states.map((state) => html`<option value="${state}">${text.states[state]}</option>`);
  return html`<form id="finder" class="finder" role="search" aria-label="${text.name}" hidden>
<label><span>${text.text}</span><input type="search" name="text" autocomplete="off" spellcheck="false"></label>
<label><span>${text.state}</span><select name="state"><option value="">${text.all}</option><optgroup label="${text.groups.attention}">${options(ATTENTION)}</optgroup><optgroup label="${text.groups.month}">${options(MONTH)}</optgroup></select></label>
<label><span>${text.unit}</span><select name="unit"><option value="">${text.noUnit}</option>${review.units.map(({ unit }) => html`<option value="${unit}">${unit}</option>`)}</select></label>
<button type="button">${text.clear}</button>
<output></output>
</form>
`;
}

/** What a unit is found by: its id, name and site as text, and its states. */
export function findData({ review, siteName }: ReportContext, unit: Unit): Record<string, string> {
  return {
    unit: unit.unit,
    find: [unit.unit, unit.name, siteName(unit.site), unit.site].join(' '),
    has: statesOf(review, unit).join(' '),
  };
}

function statesOf(review: Review, unit: Unit): State[] {
  const codes = new Set(unit.attention.map((reason) => reason.code));
  const month = unit.tests.find((tests) => tests.span === 'month');
  const missed = review.cleaning.month.some((row) => row.unit === unit.unit && row.missed > 0);
  const states: [State, boolean][] = [
    ['act', unit.attention.some((reason) => reason.level === 'act')],
    ['decide', unit.attention.some((reason) => reason.level === 'decide')],
    ['look', unit.attention.some((reason) => reason.level === 'look')],
    ['calm', unit.attention.length === 0],
    ['missed', missed],
    ['overdue', (unit.chamber.days_past_due ?? 0) > 0],
    ['failed', (month?.failures ?? 0) > 0],
    ['moving', codes.has('drift_moving') || codes.has('drift_near_limit')],
    ['contradicted', codes.has('records_contradicted')],
  ];
  return states.filter(([, holds]) => holds).map(([state]) => state);
}
