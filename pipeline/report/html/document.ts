import { contentPolicy } from './content-policy.ts';
import { type Html, html, trusted } from './html.ts';

/** A page of one file. */
export interface Document {
  lang: string;
  title: string;
  /** The one style sheet. */
  style: string;
  /** The one script; left out: none may run. */
  script?: string;
  body: Html;
}

/** A whole HTML document that loads nothing, sends nothing, and runs its own style and script only. */
export function htmlDocument({ lang, title, style, script = '', body }: Document): string {
  const document = html`<!doctype html>
<html lang="${lang}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${contentPolicy(style, script)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<link rel="icon" href="data:,">
<style>${trusted(style)}</style>
</head>
<body>
${body}
${
  script !== '' &&
  html`<script>${trusted(script)}</script>
`
}</body>
</html>
`;
  return document.toString();
}
