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
    filter();
    changed(search());
  });
  form.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || (field('text').value === '' && field('state').value === '')) return;
    event.stopPropagation();
    clear();
    changed(search());
  });
  form.querySelector('button')?.addEventListener('click', () => {
    clear();
    changed(search());
    field('text').focus();
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
  const says = active ? say('found', { shown: units.shown, all: units.all }) : '';
  if (count && count.textContent !== says) {
    count.textContent = says;
    announce(says);
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
