import { timeOf } from './zoom.js';

/**
 * Opens a picture over time that is wider than its box at its newest end, as soon as it is seen in that width: at the start, when what holds it is
 * unfolded, or when the telephone is turned. Pictures of several plots side by side stay at their first plot, those without a time axis at their start.
 *
 * @param {SVGSVGElement} svg
 */
export function openAtNewest(svg) {
  const chart = svg.parentElement;
  if (!chart || !timeOf(svg) || svg.querySelectorAll('path[data-plot]').length !== 1) return;
  const observer = new ResizeObserver(() => {
    if (chart.scrollWidth <= chart.clientWidth) return;
    observer.disconnect();
    // Whoever has scrolled already stays there.
    if (chart.scrollLeft === 0) chart.scrollLeft = chart.scrollWidth;
  });
  observer.observe(chart);
}
