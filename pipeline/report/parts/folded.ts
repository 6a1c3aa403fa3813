import { type Html, html } from '../html/html.ts';

/** Content that is folded under its summary where it is long; printed, it stands open. */
export function folded(fold: boolean, summary: string, body: Html): Html {
  return fold ? html`<details><summary>${summary}</summary>${body}</details>` : body;
}
