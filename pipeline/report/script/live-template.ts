import { type Html, html } from '../html/html.ts';
import type { Words } from '../words/words.ts';

/** Inert markup and sentences for the page's script; without script nothing of it is shown. */
export function liveTemplate({ live }: Words): Html {
  const data = Object.entries(live.says).map(([name, text]) => html` data-${attribute(name)}="${text}"`);
  const way = (name: 'closer' | 'wider' | 'earlier' | 'later' | 'whole') =>
    html`<button type="button" data-way="${name}">${live[name]}</button>`;
  return html`<template id="live"${data}>
<p data-part="voice" class="hidden" aria-live="polite"></p>
<div data-part="tip" class="tip" aria-hidden="true" hidden></div>
<div data-part="marked" class="marked" role="region" aria-label="${live.markedUnit}" hidden><span>${live.markedUnit} <b></b></span><a href="#content">${live.toPage}</a><button type="button">${live.unmark}</button></div>
<div data-part="tools" class="tools"><label><span>${live.read}</span><input type="range" min="0" max="1" value="0" step="1"></label><div data-part="time" class="time" role="group">${way('closer')}${way('wider')}${way('earlier')}${way('later')}${way('whole')}<output></output></div></div>
</template>`;
}

/** The attribute that a script reads as `dataset.name`. */
const attribute = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
