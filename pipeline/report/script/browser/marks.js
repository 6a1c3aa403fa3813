/** A mark with words; where one path draws many, `isDot` and the path. */
/** @typedef {{ element: SVGGraphicsElement, isDot: boolean, tip: string, unit: string, x: number, y: number }} Mark */

/** @type {WeakMap<SVGSVGElement, Mark[]>} */
const known = new WeakMap();

/** @returns {SVGSVGElement[]} all pictures of the page that have marks with words */
export function pictures() {
  return /** @type {SVGSVGElement[]} */ ([...document.querySelectorAll('.chart > svg')]).filter((svg) =>
    svg.querySelector('[data-tip], [data-tips]'),
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
  const marks = /** @type {SVGGraphicsElement[]} */ ([...svg.querySelectorAll('[data-tip], [data-tips]')])
    .filter((element) => element.getAttribute('visibility') !== 'hidden')
    .flatMap((element) => {
      const { tip, tips, unit = '' } = element.dataset;
      const box = element.getBoundingClientRect();
      const points =
        tips === undefined
          ? [{ tip: tip ?? '', x: box.left + box.width / 2, y: box.top + box.height / 2 }]
          : dotsOf(element, tips.split('\n'));
      return points.map((point) => ({
        element,
        isDot: tips !== undefined,
        tip: point.tip,
        unit,
        x: (point.x - frame.left) * scale,
        y: (point.y - frame.top) * scale,
      }));
    });
  known.set(svg, marks);
  return marks;
}

/**
 * The dots of a path that can be seen, each with its words, in the window's measure.
 *
 * @param {SVGGraphicsElement} path
 * @param {readonly string[]} tips
 */
function dotsOf(path, tips) {
  const place = path.getScreenCTM();
  const plot = plotOf(path);
  if (!place || !plot) return [];
  const { left, right } = plot.getBoundingClientRect();
  const places = [...(path.getAttribute('d') ?? '').matchAll(/M(-?[\d.]+),(-?[\d.]+)/g)];
  return places
    .map(([, x, y], index) => {
      const point = new DOMPoint(Number(x), Number(y)).matrixTransform(place);
      return { tip: tips[index] ?? '', x: point.x, y: point.y };
    })
    .filter(({ x }) => x >= left - 1 && x <= right + 1);
}

/**
 * The frame of the plot in which an element stands.
 *
 * @param {Element} element
 */
function plotOf(element) {
  for (let group = element.parentElement; group; group = group.parentElement) {
    const plot = group.querySelector('path[data-plot]');
    if (plot) return plot;
  }
  return null;
}

/**
 * What is ringed of a mark: itself, or of many that one path draws, a ring around its place.
 *
 * @param {Mark} mark
 * @returns {SVGGraphicsElement}
 */
export function ringOf({ element, isDot, x, y }) {
  if (!isDot) return element;
  const ring = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
  for (const [name, value] of Object.entries({ cx: x, cy: y, r: RING, fill: 'none' }))
    ring.setAttribute(name, String(value));
  element.ownerSVGElement?.append(ring);
  return ring;
}

/** Radius of a ring around a dot, px. */
const RING = 4;

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
