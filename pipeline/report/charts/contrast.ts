import type { TopLevelSpec } from 'vega-lite';
import type { ContrastRow } from '../rows/contrast-rows.ts';
import { type Position, scaleFromZero } from './layer.ts';
import { palette } from './palette.ts';
import { textWidth } from './text-width.ts';
import { FONT_SIZE } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

/** The picture is small enough for a telephone's screen with text that can be read. */
const PLOT_WIDTH = 240;
const MOST_LABEL_WIDTH = 210;
const STEP = 24;

/**
 * Rates with and without an exposure, from zero, one line each with its exact interval: below the name of each comparison its two sides, the exposed one
 * dark and square, the other a ring. Counts stand at the right.
 */
export function contrastChart(
  rows: readonly ContrastRow[],
  { valueTitle }: { valueTitle: string },
): TopLevelSpec {
  const sides = rows.filter((row) => row.side !== 'name');
  const names = rows.filter((row) => row.side === 'name');
  const widest = Math.max(...sides.map((row) => textWidth(row.label, FONT_SIZE)));
  const labelWidth = Math.min(MOST_LABEL_WIDTH, Math.ceil(widest) + 18);
  const labels = Object.fromEntries(rows.map((row) => [row.place, row.side === 'name' ? '' : row.label]));
  const { max } = scaleFromZero(sides, (row) => [row.high_drawn, row.per_100]);
  const y: Position = {
    field: 'place',
    type: 'ordinal',
    sort: 'ascending',
    scale: { domain: rows.map((row) => row.place), padding: 0 },
    title: null,
    axis: {
      labelExpr: `${JSON.stringify(labels)}[datum.value]`,
      minExtent: labelWidth,
      maxExtent: labelWidth,
      labelAlign: 'left',
      labelPadding: labelWidth - 10,
      labelLimit: labelWidth - 14,
    },
  };
  const x: Position = {
    type: 'quantitative',
    title: valueTitle,
    scale: { domain: [0, max], zero: true, nice: true },
    axis: { tickCount: 5, grid: true, titleAnchor: 'start' },
  };
  const look = sides.map((row) => ({
    ...row,
    line_colour: row.side === 'exposed' ? '#d9a48f' : '#a9c4d2',
    point_line: row.side === 'exposed' ? palette.failure : palette.series,
    point_fill: row.side === 'exposed' ? palette.failure : palette.paper,
    shape: row.side === 'exposed' ? 'square' : 'circle',
  }));
  return {
    data: { values: look },
    width: PLOT_WIDTH,
    height: { step: STEP },
    layer: [
      {
        mark: { ...toldMark, type: 'rule', strokeWidth: 7 },
        encoding: {
          ...toldChannel,
          y,
          x: { field: 'low', ...x },
          x2: { field: 'high_drawn' },
          color: { field: 'line_colour', type: 'nominal', scale: null },
        },
      },
      {
        mark: { type: 'point', shape: 'triangle-right', filled: true, size: 90 },
        encoding: {
          y,
          x: { field: 'arrow', ...x },
          color: { field: 'line_colour', type: 'nominal', scale: null },
        },
      },
      {
        mark: { ...toldMark, type: 'point', filled: true, size: 75, strokeWidth: 2 },
        encoding: {
          ...toldChannel,
          y,
          x: { field: 'per_100', ...x },
          stroke: { field: 'point_line', type: 'nominal', scale: null },
          fill: { field: 'point_fill', type: 'nominal', scale: null },
          shape: { field: 'shape', type: 'nominal', scale: null },
        },
      },
      {
        mark: { ...toldMark, type: 'text', align: 'left', baseline: 'middle' },
        encoding: {
          ...toldChannel,
          y,
          x: { value: PLOT_WIDTH + 12 },
          text: { field: 'counts', type: 'nominal' },
        },
      },
      {
        data: { values: names },
        mark: { type: 'text', align: 'left', baseline: 'middle', fontWeight: 'bold' },
        encoding: { y, x: { value: -labelWidth }, text: { field: 'label', type: 'nominal' } },
      },
    ],
  };
}
