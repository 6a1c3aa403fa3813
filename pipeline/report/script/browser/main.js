import { search, setSearch, startFinder } from './finder.js';
import { pictures } from './marks.js';
import { openAtNewest } from './newest.js';
import { addPointer } from './pointer.js';
import { addTools } from './reader.js';
import { hideTip, shownMark, startTip } from './tip.js';
import { markedUnit, markUnit, startUnits } from './units.js';
import { startVoice } from './words.js';
import { addToZoom, zoomed, zoomTo } from './zoom.js';

startVoice();
startTip();
startUnits();
for (const svg of pictures()) {
  addToZoom(svg);
  addTools(svg);
  addPointer(svg);
  openAtNewest(svg);
}
startFinder(writeAddress);
readAddress(true);
addEventListener('hashchange', () => readAddress(false));

addEventListener('keydown', (event) => {
  if (event.key !== 'Escape') return;
  if (shownMark()) hideTip();
  else if (zoomed()) zoomTo(undefined);
  else if (markedUnit() !== '') markUnit('');
});

// Paper gets the whole record.
let before = zoomed();
addEventListener('beforeprint', () => {
  before = zoomed();
  zoomTo(undefined);
});
addEventListener('afterprint', () => zoomTo(before));

/**
 * Takes the marked unit and the search from the address, as in "#unit=Q2" or "#find=wing&state=act".
 *
 * @param {boolean} first whether the page was just opened
 */
function readAddress(first) {
  const hash = location.hash.slice(1);
  if (!hash.includes('=')) return;
  const wanted = new URLSearchParams(hash);
  const unit = wanted.get('unit') ?? '';
  setSearch({ text: wanted.get('find') ?? '', state: wanted.get('state') ?? '', unit });
  markUnit(unit);
  const at = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('[data-find]')]).find(
    (item) => unit !== '' && item.dataset.unit === unit,
  );
  if (at?.closest('details')) /** @type {HTMLDetailsElement} */ (at.closest('details')).open = true;
  if (first || unit !== '') (at ?? document.getElementById('finder'))?.scrollIntoView();
}

/** Writes the marked unit and the search into the address, so that it can be sent on. */
function writeAddress() {
  const { text, state, unit } = { ...search(), unit: markedUnit() };
  const wanted = new URLSearchParams();
  if (unit !== '') wanted.set('unit', unit);
  if (text !== '') wanted.set('find', text);
  if (state !== '') wanted.set('state', state);
  const hash = wanted.toString();
  if (hash !== '' || location.hash.includes('='))
    history.replaceState(null, '', hash === '' ? location.pathname : `#${hash}`);
}
