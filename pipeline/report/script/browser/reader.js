import { marksOf } from './marks.js';
import { hideTip, showTip } from './tip.js';
import { markedUnit, markUnit, onMarked } from './units.js';
import { announce, part, say } from './words.js';
import { onZoom, spanText, step, timeOf, zoomTo } from './zoom.js';

/**
 * The tools below a picture: a slider that reads one mark after the other, by keyboard, touch or pointer, and the buttons of the time shown.
 *
 * @param {SVGSVGElement} svg
 */
export function addTools(svg) {
  const figure = svg.closest('figure');
  const tools = part('tools');
  const foot = figure?.querySelector('.figure-foot');
  if (!figure || !tools || !foot) return;
  const slider = /** @type {HTMLInputElement} */ (tools.querySelector('input'));
  const name = figure.querySelector('figcaption .number')?.textContent ?? '';
  slider.setAttribute('aria-label', say('read', { figure: name }));
  slider.setAttribute('aria-valuetext', say('notBegun'));
  addReader(svg, slider);
  const time = tools.querySelector('[data-part="time"]');
  if (timeOf(svg)) addTime(/** @type {HTMLElement} */ (time), name);
  else time?.remove();
  foot.prepend(tools);
}

/**
 * @param {SVGSVGElement} svg
 * @param {HTMLInputElement} slider
 */
function addReader(svg, slider) {
  /** @type {import('./marks.js').Mark[] | undefined} */
  let marks;
  const list = () => {
    if (marks) return marks;
    const all = marksOf(svg);
    const own = all.filter((mark) => mark.unit === markedUnit());
    const seen = new Set();
    // A mark drawn in two layers, such as a point on its interval, is read once.
    marks = (own.length > 0 && markedUnit() !== '' ? own : all).filter(
      (mark) => !seen.has(`${mark.unit} ${mark.tip}`) && seen.add(`${mark.unit} ${mark.tip}`),
    );
    slider.max = String(Math.max(0, marks.length - 1));
    return marks;
  };
  const read = () => {
    const mark = list()[Number(slider.value)];
    if (!mark) return;
    slider.setAttribute('aria-valuetext', mark.tip);
    const chart = svg.parentElement;
    if (chart && chart.scrollWidth > chart.clientWidth)
      chart.scrollLeft = (mark.x / svg.viewBox.baseVal.width) * chart.scrollWidth - chart.clientWidth / 2;
    // The scrolling above hides any words that are shown, so these come a frame later.
    requestAnimationFrame(() => showTip(mark));
  };
  const forget = () => {
    marks = undefined;
  };
  onMarked(forget);
  onZoom(forget);
  slider.addEventListener('focus', () => list());
  slider.addEventListener('input', read);
  slider.addEventListener('blur', () => hideTip());
  slider.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const unit = list()[Number(slider.value)]?.unit ?? '';
    if (unit !== '') markUnit(unit === markedUnit() ? '' : unit);
    else announce(say('noUnit'));
  });
}

/**
 * @param {HTMLElement} time
 * @param {string} figure
 */
function addTime(time, figure) {
  time.setAttribute('aria-label', say('time', { figure }));
  const shown = /** @type {HTMLElement} */ (time.querySelector('output'));
  const buttons = /** @type {HTMLButtonElement[]} */ ([...time.querySelectorAll('button')]);
  for (const button of buttons) {
    const way = button.dataset.way ?? '';
    button.addEventListener('click', () => {
      if (way === 'whole') zoomTo(undefined);
      else step(/** @type {'closer' | 'wider' | 'earlier' | 'later'} */ (way));
    });
  }
  const state = (/** @type {import('./zoom.js').Span | undefined} */ span) => {
    shown.textContent = span ? spanText(span) : '';
    // Not "disabled", which would take the focus from whoever just pressed it.
    for (const button of buttons)
      if (button.dataset.way !== 'closer') button.setAttribute('aria-disabled', String(span === undefined));
  };
  onZoom(state);
  state(undefined);
}
