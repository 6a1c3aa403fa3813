import { pictures } from './marks.js';
import { announce, part, say } from './words.js';

const bar = part('marked');
let pinned = '';
let drawn = '';
/** @type {((unit: string) => void)[]} */
const markListeners = [];

/**
 * Calls the listener whenever another unit is marked, or none.
 *
 * @param {(unit: string) => void} listener
 */
export function onMarked(listener) {
  markListeners.push(listener);
}

export function markedUnit() {
  return pinned;
}

/** Puts the bar that names the marked unit into the page. */
export function startUnits() {
  if (!bar) return;
  document.body.append(bar);
  bar.querySelector('button')?.addEventListener('click', () => markUnit(''));
}

/**
 * Marks one unit in all pictures and tables until another is marked; an empty name marks none.
 *
 * @param {string} unit
 */
export function markUnit(unit) {
  if (unit === pinned) return;
  pinned = unit;
  const figures = light(unit);
  if (bar) {
    const held = bar.contains(document.activeElement);
    bar.hidden = unit === '';
    if (held && unit === '') document.getElementById('content')?.focus();
    const name = bar.querySelector('b');
    if (name) name.textContent = unit;
    const link = bar.querySelector('a');
    const page = pageOf(unit);
    if (link) link.hidden = page === undefined;
    if (link && page) link.href = page;
  }
  announce(unit === '' ? say('unmarked') : say('marked', { unit, figures }));
  for (const listener of markListeners) listener(unit);
}

/**
 * Marks a unit while the pointer is on it; with no unit the marked one stands again.
 *
 * @param {string} unit
 */
export function glance(unit) {
  light(unit || pinned);
}

/**
 * @param {string} unit
 * @returns {number} pictures that hold the unit
 */
function light(unit) {
  if (unit === drawn) return 0;
  drawn = unit;
  let figures = 0;
  for (const svg of pictures()) {
    const units = new Set(
      /** @type {SVGElement[]} */ ([...svg.querySelectorAll('[data-unit]')]).map(
        (of) => of.dataset.unit ?? '',
      ),
    );
    const holds = unit !== '' && units.has(unit);
    if (holds) figures++;
    svg.classList.toggle('one', holds && units.size > 1);
    for (const text of svg.querySelectorAll('text:not([data-unit])'))
      if (units.has(text.textContent ?? ''))
        /** @type {SVGElement} */ (text).dataset.unit = text.textContent ?? '';
    for (const of of /** @type {NodeListOf<SVGElement>} */ (svg.querySelectorAll('[data-unit]')))
      of.classList.toggle('lit', of.dataset.unit === unit);
  }
  for (const row of /** @type {NodeListOf<HTMLElement>} */ (
    document.querySelectorAll('tr[data-unit], .case[data-unit]')
  ))
    row.classList.toggle('lit', unit !== '' && row.dataset.unit === unit);
  return figures;
}

/**
 * The page of a unit, from a link of this page that has its name.
 *
 * @param {string} unit
 */
function pageOf(unit) {
  for (const link of /** @type {NodeListOf<HTMLAnchorElement>} */ (
    document.querySelectorAll('a[href^="unit-"]')
  ))
    if (link.textContent === unit) return link.getAttribute('href') ?? undefined;
  return undefined;
}
