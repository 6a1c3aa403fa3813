/** @typedef {{ element: SVGGraphicsElement, tip: string, unit: string, x: number, y: number }} Mark */

/** @type {WeakMap<SVGSVGElement, Mark[]>} */
const known = new WeakMap();

/** @returns {SVGSVGElement[]} all pictures of the page that have marks with words */
export function pictures() {
  return /** @type {SVGSVGElement[]} */ ([...document.querySelectorAll('.chart > svg')]).filter((svg) =>
    svg.querySelector('[data-tip]'),
  );
}

/**
 * The marks of a picture that can be seen, from left to right and from top to bottom, with their middles in the picture's own measure.
 *
 * @param {SVGSVGElement} svg
 * @returns {Mark[]}
 */
export function marksOf(svg) {
  const found = known.get(svg);
  if (found) return found;
  const frame = svg.getBoundingClientRect();
  const scale = svg.viewBox.baseVal.width / frame.width;
  const marks = /** @type {SVGGraphicsElement[]} */ ([...svg.querySelectorAll('[data-tip]')])
    .filter((element) => element.getAttribute('visibility') !== 'hidden')
    .map((element) => {
      const box = element.getBoundingClientRect();
      return {
        element,
        tip: element.dataset.tip ?? '',
        unit: element.dataset.unit ?? '',
        x: (box.left + box.width / 2 - frame.left) * scale,
        y: (box.top + box.height / 2 - frame.top) * scale,
      };
    });
  known.set(svg, marks);
  return marks;
}

/**
 * Forgets where the marks of a picture are, after they were moved.
 *
 * @param {SVGSVGElement} svg
 */
export function forgetMarks(svg) {
  known.delete(svg);
}

/** How far from a mark the pointer may be to read it, px. */
const REACH = 22;

/**
 * The mark under the pointer, or the nearest one within reach.
 *
 * @param {SVGSVGElement} svg
 * @param {PointerEvent | MouseEvent} event
 * @returns {Mark | undefined}
 */
export function markAt(svg, event) {
  const marks = marksOf(svg);
  const under = /** @type {Element} */ (event.target).closest('[data-tip]');
  if (under) return marks.find((mark) => mark.element === under);
  const frame = svg.getBoundingClientRect();
  const scale = svg.viewBox.baseVal.width / frame.width;
  const x = (event.clientX - frame.left) * scale;
  const y = (event.clientY - frame.top) * scale;
  let best;
  let distance = (REACH * scale) ** 2;
  for (const mark of marks) {
    const away = (mark.x - x) ** 2 + (mark.y - y) ** 2;
    if (away < distance) [best, distance] = [mark, away];
  }
  return best;
}
