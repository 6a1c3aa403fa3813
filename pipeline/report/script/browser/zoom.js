import { forgetMarks } from './marks.js';
import { hideTip } from './tip.js';
import { announce, dayText, say } from './words.js';

/** @typedef {{ from: number, to: number }} Span days since 1970, the end not among them */
/** @typedef {{ element: SVGElement, x: number, rest: string, whole: string } | { element: SVGElement }} Placed */
/** @typedef {{ svg: SVGSVGElement, whole: Span, plots: { width: number, placed: Placed[], clipped: Element[] }[] }} TimePicture */

/** Shortest span, days. */
const LEAST = 14;
const SVG = 'http://www.w3.org/2000/svg';

/** @type {TimePicture[]} */
const charts = [];
/** @type {Span | undefined} */
let current;
/** @type {((span: Span | undefined) => void)[]} */
const zoomListeners = [];

/**
 * Calls the listener whenever another span is shown, or the whole record.
 *
 * @param {(span: Span | undefined) => void} listener
 */
export function onZoom(listener) {
  zoomListeners.push(listener);
}

/**
 * The time that a picture spans, if it has a time axis.
 *
 * @param {SVGSVGElement} svg
 * @returns {Span | undefined}
 */
export function timeOf(svg) {
  const [from, to] = (svg.dataset.time ?? '').split(' ').map(Number);
  return from !== undefined && to !== undefined && to > from ? { from, to } : undefined;
}

/** The span that is shown, or nothing where it is the whole record. */
export function zoomed() {
  return current;
}

/** @param {SVGSVGElement} svg */
export function addToZoom(svg) {
  const whole = timeOf(svg);
  if (whole) charts.push({ svg, whole, plots: [] });
}

/** From the first to the last day of all pictures. */
function wholeSpan() {
  return {
    from: Math.min(...charts.map(({ whole }) => whole.from)),
    to: Math.max(...charts.map(({ whole }) => whole.to)),
  };
}

/**
 * Shows a span in all pictures with a time axis; without a span, the whole record.
 *
 * @param {Span | undefined} span
 */
export function zoomTo(span) {
  const whole = wholeSpan();
  if (span) {
    const length = Math.max(LEAST, Math.min(span.to - span.from, whole.to - whole.from));
    const from = Math.min(Math.max(whole.from, span.from), whole.to - length);
    span = length >= whole.to - whole.from ? undefined : { from, to: from + length };
  }
  if (span?.from === current?.from && span?.to === current?.to) return;
  current = span;
  hideTip();
  for (const chart of charts) redraw(chart, span);
  announce(span ? say('spanShown', { span: spanText(span) }) : say('wholeShown'));
  for (const listener of zoomListeners) listener(span);
}

/**
 * @param {'closer' | 'wider' | 'earlier' | 'later'} way
 */
export function step(way) {
  const { from, to } = current ?? wholeSpan();
  const length = to - from;
  if (way === 'closer') zoomTo({ from: from + length / 4, to: to - length / 4 });
  if (way === 'wider') zoomTo({ from: from - length / 2, to: to + length / 2 });
  if (way === 'earlier') zoomTo({ from: from - length / 2, to: to - length / 2 });
  if (way === 'later') zoomTo({ from: from + length / 2, to: to + length / 2 });
}

/**
 * A span as text, first to last day.
 *
 * @param {Span} span
 */
export function spanText({ from, to }) {
  return say('span', { from: dayText(from), to: dayText(to - 1) });
}

/**
 * The day at a point of a picture, by the plot under it.
 *
 * @param {SVGSVGElement} svg
 * @param {number} clientX
 * @param {number} clientY
 */
export function dayAt(svg, clientX, clientY) {
  const whole = timeOf(svg);
  for (const plot of /** @type {NodeListOf<SVGGraphicsElement>} */ (
    svg.querySelectorAll('path[data-plot]')
  )) {
    const box = plot.getBoundingClientRect();
    if (!whole || box.width < 20 || clientY < box.top || clientY > box.bottom) continue;
    if (clientX < box.left - 4 || clientX > box.right + 4) continue;
    const { from, to } = current ?? whole;
    const share = Math.min(1, Math.max(0, (clientX - box.left) / box.width));
    return from + share * (to - from);
  }
  return undefined;
}

/**
 * Moves the marks of a picture to where they stand in the span; what has a width is stretched, lines keep theirs.
 *
 * @param {TimePicture} chart
 * @param {Span | undefined} span
 */
function redraw(chart, span) {
  const { svg, whole } = chart;
  if (chart.plots.length === 0) chart.plots = plotsOf(svg);
  const times = span ? (whole.to - whole.from) / (span.to - span.from) : 1;
  for (const { width, placed, clipped } of chart.plots) {
    const start = span ? ((span.from - whole.from) / (whole.to - whole.from)) * width : 0;
    for (const place of placed) {
      const { element } = place;
      if (!('x' in place)) {
        if (span) {
          element.setAttribute('transform', `matrix(${times} 0 0 1 ${-start * times} 0)`);
          element.setAttribute('vector-effect', 'non-scaling-stroke');
        } else {
          element.removeAttribute('transform');
          element.removeAttribute('vector-effect');
        }
        continue;
      }
      const x = (place.x - start) * times;
      element.setAttribute('transform', span ? `translate(${x}${place.rest}` : place.whole);
      if (span && (x < -1 || x > width + 1)) element.setAttribute('visibility', 'hidden');
      else element.removeAttribute('visibility');
    }
    for (const group of clipped) {
      if (span) group.setAttribute('clip-path', `url(#${clipOf(svg, width)})`);
      else group.removeAttribute('clip-path');
    }
  }
  forgetMarks(svg);
}

/**
 * The plots of a picture, each with what moves in it. Titles, lines across the plot and what stands outside of it stay.
 *
 * @param {SVGSVGElement} svg
 */
function plotsOf(svg) {
  const plots = [];
  for (const frame of /** @type {NodeListOf<SVGGraphicsElement>} */ (
    svg.querySelectorAll('path[data-plot]')
  )) {
    const group = frame.parentElement;
    const { width } = frame.getBBox();
    if (!group || width < 20 || group.querySelectorAll('path[data-plot]').length > 1) continue;
    /** @type {Placed[]} */
    const placed = [];
    const clipped = new Set();
    for (const element of /** @type {NodeListOf<SVGElement>} */ (
      group.querySelectorAll('path, line, text')
    )) {
      if (element === frame || element.closest('[data-still]')) continue;
      const moved = /^translate\((-?[\d.]+)(,.*)$/s.exec(element.getAttribute('transform') ?? '');
      if (!moved && element.nodeName === 'path') {
        placed.push({ element });
        if (element.parentElement) clipped.add(element.parentElement);
      } else if (moved) {
        const x = Number(moved[1]);
        const across = element.nodeName === 'line' && Number(element.getAttribute('x2') ?? 0) !== 0;
        if (!across && x >= -1 && x <= width + 1)
          placed.push({ element, x, rest: moved[2] ?? '', whole: moved[0] });
      }
    }
    plots.push({ width, placed, clipped: [...clipped] });
  }
  return plots;
}

/**
 * The id of a clip as wide as a plot and as high as anything.
 *
 * @param {SVGSVGElement} svg
 * @param {number} width
 */
function clipOf(svg, width) {
  const id = `${svg.closest('figure')?.id}-clip-${Math.round(width)}`;
  if (document.getElementById(id)) return id;
  const clip = document.createElementNS(SVG, 'clipPath');
  clip.id = id;
  const rect = document.createElementNS(SVG, 'rect');
  for (const [name, value] of Object.entries({ x: 0, y: -2000, width, height: 4000 }))
    rect.setAttribute(name, String(value));
  clip.append(rect);
  svg.append(clip);
  return id;
}
