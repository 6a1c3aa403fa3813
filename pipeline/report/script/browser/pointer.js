import { markAt } from './marks.js';
import { hideTip, leaveTip, shownMark, showTip } from './tip.js';
import { glance, markedUnit, markUnit } from './units.js';
import { dayAt, zoomTo } from './zoom.js';

/** A pull shorter than this is a click, px. */
const PULL = 10;

/**
 * Pointer and touch on a picture: words of the nearest mark, its unit marked everywhere while the pointer is there or, after a click, until the next;
 * pulling the mouse across a time axis shows the time pulled over.
 *
 * @param {SVGSVGElement} svg
 */
export function addPointer(svg) {
  /** @type {{ x: number, day: number, y: number } | undefined} */
  let pull;
  let pulled = false;
  let wasShown = shownMark();
  svg.addEventListener('pointermove', (event) => {
    if (pull && Math.abs(event.clientX - pull.x) > PULL) {
      pulled = true;
      svg.classList.add('pulled');
      hideTip();
      return;
    }
    if (event.pointerType === 'touch') return;
    const mark = markAt(svg, event);
    if (mark) showTip(mark);
    else leaveTip();
    glance(mark?.unit ?? labelUnit(event));
  });
  svg.addEventListener('pointerleave', () => {
    leaveTip();
    glance('');
  });
  svg.addEventListener('pointerdown', (event) => {
    wasShown = shownMark();
    pulled = false;
    const day =
      event.pointerType === 'mouse' && event.button === 0
        ? dayAt(svg, event.clientX, event.clientY)
        : undefined;
    pull = day === undefined ? undefined : { x: event.clientX, y: event.clientY, day };
    if (pull) event.preventDefault();
  });
  addEventListener('pointerup', (event) => {
    svg.classList.remove('pulled');
    if (!pull) return;
    const day = pulled ? dayAt(svg, event.clientX, pull.y) : undefined;
    if (day !== undefined) zoomTo({ from: Math.min(day, pull.day), to: Math.max(day, pull.day) });
    pull = undefined;
  });
  svg.addEventListener('click', (event) => {
    if (pulled) return;
    const mark = markAt(svg, event);
    const unit = mark?.unit ?? labelUnit(event);
    // The first touch shows the words, the second marks the unit; a mouse has shown them before.
    if (mark && wasShown !== mark) showTip(mark);
    else if (unit !== '') markUnit(unit === markedUnit() ? '' : unit);
  });
}

/**
 * The unit that a label of a picture names.
 *
 * @param {Event} event
 */
function labelUnit(event) {
  return /** @type {Element} */ (event.target).closest('text')?.getAttribute('data-unit') ?? '';
}
