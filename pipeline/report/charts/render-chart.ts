import * as vega from 'vega';
import type { TopLevelSpec } from 'vega-lite';
import { escapeHtml, fitText, type Html, trusted } from '../html/html.ts';
import { type ChartRuntimes, viewOf } from './chart-runtimes.ts';
import { ChartError, checkFields } from './check-spec.ts';
import { textWidth } from './text-width.ts';
import type { ChartLocale } from './theme.ts';
import { timeAttribute, toldAttributes } from './told.ts';

/** What a chart is called for those who can't see it. `id` must be unique in its page and is the stem of all ids in the picture. */
export interface ChartText {
  id: string;
  title: string;
  description: string;
}

/** A drawn chart: markup for a page, and its natural size in px. */
export interface DrawnChart {
  svg: Html;
  width: number;
  height: number;
}

setTextWidth();

const ENGLISH: ChartLocale = {
  decimal: '.',
  thousands: ',',
  grouping: [3],
  currency: ['', ''],
  percent: '%',
};

/**
 * Draws a chart as SVG for a page with a strict content policy: no style, no script, ids unique in the page, the same bytes each time.
 *
 * @param runtimes compiled charts to use again, and to add to
 * @param locale marks of the numbers on axes
 * @throws ChartError where a field is not in the rows or Vega-Lite or Vega warns of anything
 */
export async function renderChart(
  spec: TopLevelSpec,
  text: ChartText,
  runtimes: ChartRuntimes = new Map(),
  locale: ChartLocale = ENGLISH,
): Promise<DrawnChart> {
  checkFields(spec);
  const logger = warnings(text.id);
  vega.resetSVGDefIds();
  const view = viewOf(spec, runtimes, logger, locale);
  const markup = await view.toSVG();
  view.finalize();
  logger.fail();
  return cleanSvg(markup, text, timeAttribute(spec));
}

/**
 * Vega's SVG made ready for a page: own root with title and description, no fonts, roles or classes inside, numbers cut to two
 * decimals, ids with the chart's id before them. The text of a mark becomes its words and its unit, for the page's script; frames of plots and titles of
 * axes are named for it too.
 *
 * @param attributes more attributes of the root, escaped
 */
export function cleanSvg(markup: string, { id, title, description }: ChartText, attributes = ''): DrawnChart {
  const root = /^<svg[^>]*\bwidth="([\d.]+)" height="([\d.]+)"[^>]*>/.exec(markup);
  if (!root) throw new ChartError(`${id}: the renderer must give an SVG with width and height`);
  const width = Math.ceil(Number(root[1]));
  const height = Math.ceil(Number(root[2]));
  const inner = fitText(markup.slice(root[0].length, markup.lastIndexOf('</svg>')))
    .replace(/<rect width="[\d.]+" height="[\d.]+" fill="transparent"\/>/, '')
    .replace(/<path class="(?:background|foreground)" aria-hidden="true" d="(?:M0,0h0v0h0Z)?"[^>]*\/>/g, '')
    .replace(/<[^>]*>/g, (tag) => cleanTag(tag, id));
  // What stands in values and texts is looked away from only where there is something: taking them out takes longer than looking.
  if (
    MORE_THAN_SHAPES.test(inner) &&
    MORE_THAN_SHAPES.test(inner.replace(/>[^<]*</g, '><').replace(/="[^"]*"/g, '='))
  )
    throw new ChartError(`${id}: the picture must hold shapes and text only`);
  const head =
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-desc" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"${attributes}>` +
    `<title id="${id}-title">${escapeHtml(title)}</title><desc id="${id}-desc">${escapeHtml(description)}</desc>`;
  return { svg: trusted(`${head}${inner}</svg>`), width, height };
}

const MORE_THAN_SHAPES = /<script|<foreignObject|<image|\sstyle=|\son\w+=|href=/i;

/** Attributes that a page has no use for, beside those for screen readers, which the page has its own of. */
const NEEDLESS = new Set(['role', 'class', 'font-family', 'pointer-events']);
const OPACITY = new Set(['opacity', 'stroke-opacity', 'fill-opacity']);

function cleanTag(tag: string, id: string): string {
  if (!tag.includes('=')) return tag;
  const named = tag
    .replace(/^<g class="[^"]*\brole-axis-title\b[^"]*"/, '<g data-still=""')
    .replace(/^<path class="background"/, '<path data-plot=""');
  // Looked through by hand: a regular expression with a function for each of a picture's thousands of attributes takes twice the time.
  let cleaned = '';
  let at = 0;
  for (let equals = named.indexOf('="'); equals >= 0; equals = named.indexOf('="', at)) {
    const blank = named.lastIndexOf(' ', equals);
    const end = named.indexOf('"', equals + 2) + 1;
    const value = named.slice(equals + 2, end - 1);
    cleaned += named.slice(at, blank);
    cleaned += cleanAttribute(named.slice(blank, end), named.slice(blank + 1, equals), value, id);
    at = end;
  }
  return cleaned + named.slice(at);
}

function cleanAttribute(attribute: string, name: string, value: string, id: string): string {
  if (name === 'aria-label') return toldAttributes(value);
  if (name.startsWith('aria-') || NEEDLESS.has(name) || (value === '1' && OPACITY.has(name))) return '';
  if (name.startsWith('data-')) return attribute;
  if (name === 'id') return ` id="${id}-${value}"`;
  const named = value.includes('url(') ? attribute.replace(/url\(#([^)]*)\)/g, `url(#${id}-$1)`) : attribute;
  return value.includes('.') ? named.replace(/(\d+\.\d\d)\d+/g, '$1') : named;
}

function warnings(id: string) {
  const found: unknown[][] = [];
  const keep = (...args: unknown[]) => {
    found.push(args);
    return logger;
  };
  const logger = {
    level: () => logger,
    error: keep,
    warn: keep,
    info: () => logger,
    debug: () => logger,
    fail: () => {
      if (found.length > 0) throw new ChartError(`${id}: ${found.map(String).join('; ')}`);
    },
  };
  // biome-ignore lint/suspicious/noExplicitAny: the two libraries type `level` as an overload of getter and setter
  return logger as any;
}

/** Vega measures text with a canvas where one is installed, and guesses where not. Ours is the same everywhere. */
function setTextWidth(): void {
  const metrics = (vega as unknown as { textMetrics: { width: unknown } }).textMetrics;
  metrics.width = (
    item: { fontSize?: number; fontWeight?: unknown; limit?: number },
    text: unknown,
  ): number => {
    const width = textWidth(
      String(text ?? ''),
      item.fontSize ?? 11,
      item.fontWeight === 'bold' || item.fontWeight === 600,
    );
    return item.limit && item.limit > 0 ? Math.min(width, item.limit) : width;
  };
}
