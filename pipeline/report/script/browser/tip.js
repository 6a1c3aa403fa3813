import { ringOf } from './marks.js';
import { part } from './words.js';

/** @typedef {import('./marks.js').Mark} Mark */

const box = part('tip');
/** @type {Mark | undefined} */
let shown;
/** @type {SVGGraphicsElement | undefined} */
let ringed;
let leaving = 0;

/** Puts the box for the words of a mark into the page. The pointer may move onto it without losing it. */
export function startTip() {
  if (!box) return;
  document.body.append(box);
  box.addEventListener('pointerenter', () => clearTimeout(leaving));
  box.addEventListener('pointerleave', () => hideTip());
  addEventListener('scroll', () => hideTip(), { capture: true, passive: true });
}

export function shownMark() {
  return shown;
}

/**
 * Shows the words of a mark beside it and rings the mark.
 *
 * @param {Mark} mark
 */
export function showTip(mark) {
  clearTimeout(leaving);
  if (!box || shown === mark) return;
  hideTip();
  shown = mark;
  ringed = ringOf(mark);
  ringed.classList.add('read');
  box.textContent = mark.tip;
  box.hidden = false;
  const at = ringed.getBoundingClientRect();
  const own = box.getBoundingClientRect();
  const left = Math.min(
    Math.max(8, at.left + at.width / 2 - own.width / 2),
    document.documentElement.clientWidth - own.width - 8,
  );
  const above = at.top - own.height - 10;
  box.style.left = `${left}px`;
  box.style.top = `${above > 8 ? above : at.bottom + 10}px`;
}

export function hideTip() {
  clearTimeout(leaving);
  ringed?.classList.remove('read');
  if (shown?.isDot) ringed?.remove();
  shown = ringed = undefined;
  if (box) box.hidden = true;
}

/** Hides the words in a moment, unless the pointer comes to them or to another mark. */
export function leaveTip() {
  clearTimeout(leaving);
  leaving = window.setTimeout(hideTip, 250);
}
