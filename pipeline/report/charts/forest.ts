import type { TopLevelSpec } from 'vega-lite';
import { FOREST_DOMAIN, type ForestRow } from '../rows/forest-rows.ts';
import type { Layer, Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface ForestOptions {
  ratioTitle: string;
  /** Words on the two sides of 1. */
  fewer: string;
  more: string;
  /** Heads of the columns of text. */
  heads: { exposed: string; unexposed: string; ratio: string; verdict: string };
  labelWidth: number;
  /** Labels stand in two lines, cut at "|". */
  lines?: 1 | 2;
}

const COUNT_WIDTH = 88;
/** Room for ratio and verdict. */
const WORDS_WIDTH = 250;
const LEAST_PLOT_WIDTH = 170;
/** What says more is drawn darker: a filled square where a rise is shown, a hollow ring where the record can't tell. */
const WEIGHT_LOOK = {
  strong: { line_colour: palette.failure, point_fill: palette.failure, shape: 'square' },
  middle: { line_colour: palette.series, point_fill: palette.series, shape: 'circle' },
  faint: { line_colour: '#7d8a91', point_fill: palette.paper, shape: 'circle' },
} as const;

/**
 * Ratios with their intervals on a log axis, one row for each comparison, with counts, ratio and verdict in words beside it. Filled: shown; ruled
 * and pale ones say less. A bound beyond the axis, or none, ends in an arrow.
 */
export function forestChart(rows: readonly ForestRow[], options: ForestOptions): TopLevelSpec {
  const { labelWidth, heads } = options;
  const labels = rows.map((row) => row.label);
  const exposedAt = -12 - COUNT_WIDTH;
  const unexposedAt = -12;
  const plotFrom = labelWidth + 2 * COUNT_WIDTH + 12;
  const plotWidth = Math.max(LEAST_PLOT_WIDTH, FULL_WIDTH - plotFrom - WORDS_WIDTH);
  const ratioAt = plotWidth + 14;
  const verdictAt = ratioAt + 128;
  const y: Position = {
    field: 'label',
    type: 'nominal',
    sort: labels,
    title: null,
    axis: {
      minExtent: plotFrom,
      maxExtent: plotFrom,
      labelAlign: 'left',
      labelPadding: plotFrom,
      labelLimit: labelWidth - 6,
      labelFontWeight: 'bold',
      ...(options.lines === 2 && { labelExpr: "split(datum.label, '|')", labelOffset: -7 }),
    },
  };
  const axis: Position = {
    type: 'quantitative',
    scale: { type: 'log', domain: [...FOREST_DOMAIN], nice: false },
  };
  const colour = { field: 'line_colour', type: 'nominal', scale: null } as const;
  const text = (field: string, x: number, more: object = {}): Layer => ({
    mark: { ...toldMark, type: 'text', align: 'left', baseline: 'middle', ...more },
    encoding: { ...toldChannel, y, x: { value: x }, text: { field, type: 'nominal' } },
  });
  const head = (words: string, x: number, align: 'left' | 'right'): Layer => ({
    data: { values: [{ head: words }] },
    mark: { type: 'text', align, baseline: 'bottom', color: palette.muted, fontSize: 11 },
    encoding: { y: { value: -6 }, x: { value: x }, text: { field: 'head', type: 'nominal' } },
  });
  const arrow = (field: 'arrow_low' | 'arrow_high'): Layer => ({
    mark: {
      type: 'point',
      shape: field === 'arrow_low' ? 'triangle-left' : 'triangle-right',
      size: 50,
      filled: true,
    },
    encoding: { y, x: { field, ...axis }, color: colour },
  });
  return {
    data: { values: rows.map((row) => ({ ...row, ...WEIGHT_LOOK[row.weight] })) },
    width: plotWidth,
    height: { step: options.lines === 2 ? 36 : 24 },
    layer: [
      {
        data: { values: [{ one: 1 }] },
        mark: { type: 'rule', color: palette.muted, strokeDash: [3, 3] },
        encoding: { x: { field: 'one', ...axis } },
      },
      {
        mark: { ...toldMark, type: 'rule', strokeWidth: 2 },
        encoding: {
          ...toldChannel,
          y,
          x: {
            field: 'low_drawn',
            ...axis,
            title: options.ratioTitle,
            axis: {
              values: [0.1, 0.3, 1, 3, 10, 30],
              format: '~g',
              grid: true,
              labelOverlap: false,
              titleAnchor: 'start',
            },
          },
          x2: { field: 'high_drawn' },
          color: colour,
        },
      },
      arrow('arrow_low'),
      arrow('arrow_high'),
      {
        mark: { ...toldMark, type: 'point', filled: true, strokeWidth: 2, size: 70 },
        encoding: {
          ...toldChannel,
          y,
          x: { field: 'ratio_drawn', ...axis },
          stroke: colour,
          fill: { field: 'point_fill', type: 'nominal', scale: null },
          shape: { field: 'shape', type: 'nominal', scale: null },
        },
      },
      text('exposed_text', exposedAt, { align: 'right' }),
      text('unexposed_text', unexposedAt, { align: 'right' }),
      text('ratio_text', ratioAt),
      text('verdict_word', verdictAt, { fontWeight: 'bold' }),
      head(heads.exposed, exposedAt, 'right'),
      head(heads.unexposed, unexposedAt, 'right'),
      head(heads.ratio, ratioAt, 'left'),
      head(heads.verdict, verdictAt, 'left'),
      {
        data: { values: [{ head: `← ${options.fewer}`, at: 0.92 }] },
        mark: { type: 'text', align: 'right', baseline: 'bottom', color: palette.muted, fontSize: 11 },
        encoding: { y: { value: -6 }, x: { field: 'at', ...axis }, text: { field: 'head', type: 'nominal' } },
      },
      {
        data: { values: [{ head: `${options.more} →`, at: 1.08 }] },
        mark: { type: 'text', align: 'left', baseline: 'bottom', color: palette.muted, fontSize: 11 },
        encoding: { y: { value: -6 }, x: { field: 'at', ...axis }, text: { field: 'head', type: 'nominal' } },
      },
    ],
  };
}
