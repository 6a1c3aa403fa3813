import { markUnit, onMarked } from './units.js';
import { announce, say } from './words.js';

/** What is looked for: text, a state, a unit. */
/** @typedef {{ text: string, state: string, unit: string }} Search */

const form = /** @type {HTMLFormElement | null} */ (document.getElementById('finder'));
const field = (/** @type {string} */ name) =>
  /** @type {HTMLInputElement} */ (form?.elements.namedItem(name));

/**
 * Search and filter over the lists of units. Whatever is filtered away is only off the screen: printed, the lists are whole.
 *
 * @param {(search: Search) => void} changed
 */
export function startFinder(changed) {
  if (!form) return;
  form.hidden = false;
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', (event) => {
    if (event.target === field('unit')) markUnit(field('unit').value);
    keepInPlace(filter);
    changed(search());
  });
  form.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || (field('text').value === '' && field('state').value === '')) return;
    event.stopPropagation();
    keepInPlace(clear);
    changed(search());
  });
  form.querySelector('button')?.addEventListener('click', () => {
    keepInPlace(clear);
    changed(search());
    field('text').focus({ preventScroll: true });
  });
  onMarked((unit) => {
    field('unit').value = unit;
    changed(search());
  });
  for (const link of document.querySelectorAll('a[data-find-unit]'))
    link.addEventListener('click', () => setTimeout(() => field('text').focus()));
}

/** @returns {Search} */
export function search() {
  return {
    text: field('text')?.value ?? '',
    state: field('state')?.value ?? '',
    unit: field('unit')?.value ?? '',
  };
}

/**
 * @param {Search} wanted
 */
export function setSearch(wanted) {
  if (!form) return;
  field('text').value = wanted.text;
  field('state').value = wanted.state;
  filter();
}

function clear() {
  setSearch({ text: '', state: '', unit: '' });
}

/** Leaves in sight what has each word of the text and the state. */
function filter() {
  const { text, state } = search();
  const words = plain(text).split(/\s+/).filter(Boolean);
  const units = { shown: 0, all: 0 };
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-find]'))) {
    const own = plain(item.dataset.find ?? '');
    const fits =
      words.every((word) => own.includes(word)) &&
      (state === '' || (item.dataset.has ?? '').split(' ').includes(state));
    item.classList.toggle('out', !fits);
    if (item.tagName !== 'TR') continue;
    units.all++;
    if (fits) units.shown++;
  }
  const active = words.length > 0 || state !== '';
  for (const folded of /** @type {NodeListOf<HTMLDetailsElement>} */ (
    document.querySelectorAll('#attention details')
  ))
    if (active) folded.open = true;
  const count = form?.querySelector('output');
  const says = active ? foundText(units, state) : '';
  if (count && count.textContent !== says) {
    count.textContent = says;
    announce(says);
  }
}

/**
 * @param {{ shown: number, all: number }} units
 * @param {string} state
 */
function foundText(units, state) {
  if (units.shown > 0) return say('found', units);
  return say(state === '' ? 'foundNoName' : 'foundNone');
}

/**
 * Holds the form where it stands on the screen while blocks above and below it come and go. Where there is nothing left to scroll, the page gets room
 * above or below instead.
 *
 * @param {() => void} change
 */
function keepInPlace(change) {
  if (!form) return;
  const top = () => form.getBoundingClientRect().top;
  const before = top();
  const above = document.getElementById('attention');
  if (above) above.style.minHeight = '';
  document.body.style.minHeight = '';
  change();
  const move = () => window.scrollBy({ top: top() - before, behavior: 'instant' });
  move();
  const rest = before - top();
  if (rest > 1 && above) above.style.minHeight = `${above.offsetHeight + rest}px`;
  if (rest < -1) {
    document.body.style.minHeight = `${document.body.scrollHeight - rest}px`;
    move();
  }
}

/**
 * Text without marks on letters and in small letters, so that "kuche" finds "Küche".
 *
 * @param {string} text
 */
function plain(text) {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
