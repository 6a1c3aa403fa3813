import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** The unit's id as a link to its page. */
export function unitLink({ unitPage }: Pick<ReportContext, 'unitPage'>, unit: string): Html {
  return html`<a href="${unitPage(unit)}">${unit}</a>`;
}
