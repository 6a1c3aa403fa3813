import { type Html, html } from '../../html/html.ts';
import type { Section } from '../../parts/page.ts';
import { type ArgumentPart, argumentText } from './argument-text.ts';
import type { SectionContext } from './section-context.ts';

/** The argument on one sheet: question, records, finding, cost and benefit, what would change our mind, limits, cautions. */
export function argumentSection({ found, text }: SectionContext): Section {
  const parts = argumentText(found, text);
  const column = (ids: readonly string[]) =>
    html`<div>${parts.filter((part) => ids.includes(part.id)).map(partOf)}</div>
`;
  return {
    id: 'argument',
    heading: text.evidence.sections.argument,
    body: html`<div class="answers">
${column(['question', 'records', 'finding'])}
${column(['cost', 'mind', 'limits'])}</div>
${parts.filter((part) => part.id === 'cautions').map(cautionsOf)}`,
  };
}

const partOf = ({ heading, lead, paragraphs, list }: ArgumentPart): Html => html`<h3>${heading}</h3>
${lead !== null && html`<p class="lead">${lead}</p>`}
${[...paragraphs, ...list].map(
  (paragraph) => html`<p>${paragraph}</p>
`,
)}`;

/** The cautions run under both columns, so that the whole argument stays on one sheet. */
const cautionsOf = ({ heading, list }: ArgumentPart): Html =>
  html`<p class="note"><strong>${heading}.</strong> ${list.join(' ')}</p>`;
