import { DUE_STATES } from '../../findings/review-schema.ts';
import { dueStateLook, notDueLook } from '../charts/palette.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** Key of the states of due tasks as they are drawn, each with its letter, its word and its meaning. */
export function stateKey({ words }: Pick<ReportContext, 'words'>): Html {
  const swatch = (look: { fill: string; line: string; letter: string; letterColour: string }) =>
    html`<svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false"><rect x="0.5" y="0.5" width="17" height="17" fill="${look.fill}" stroke="${look.line}"/><text x="9" y="13" text-anchor="middle" font-size="11" font-weight="bold" fill="${look.letterColour}">${look.letter}</text></svg>`;
  const { terms } = words;
  return html`<ul class="key" aria-label="${words.cleaning.key}">
${DUE_STATES.map((state) => html`<li>${swatch({ ...dueStateLook[state], letter: terms.dueLetter[state] })}<span><b>${terms.dueState[state]}</b>: ${terms.dueStateMeans[state]}</span></li>`)}
<li>${swatch({ ...notDueLook, letter: '', letterColour: 'none' })}<span>${terms.notDue}</span></li>
<li><span>${terms.idle}</span></li>
</ul>`;
}
