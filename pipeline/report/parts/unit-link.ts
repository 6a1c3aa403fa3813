import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** The unit's id, as a link to its page where it has one. */
export function unitLink({ unitPage }: Pick<ReportContext, 'unitPage'>, unit: string): Html {
  const href = unitPage(unit);
  return href === undefined ? html`${unit}` : html`<a href="${href}">${unit}</a>`;
}
