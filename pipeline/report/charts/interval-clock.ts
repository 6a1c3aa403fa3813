import type { TopLevelSpec } from 'vega-lite';
import type { Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

/** A class of the clock with its rate and exact interval per 100, and what the fit expects per 100; drawn bounds are cut to the scale. */
export interface IntervalClockRow {
  class_label: string;
  per_100: number | null;
  low: number | null;
  high_drawn: number | null;
  arrow_high: number | null;
  fitted_per_100: number | null;
  label: string;
  /** What the mark says of itself. */
  told: string;
}

const HEIGHT = 170;

/** Rate in each class of the clock: a point on its exact interval, a short bar for the fit, counts below. A cut interval ends in an arrow. */
export function intervalClockChart(
  rows: readonly IntervalClockRow[],
  options: { valueTitle: string; clockTitle: string; max: number },
): TopLevelSpec {
  const x: Position = {
    field: 'class_label',
    type: 'ordinal',
    sort: rows.map((row) => row.class_label),
    title: options.clockTitle,
    scale: { padding: 0 },
    axis: { labelAngle: 0, labelOverlap: false, titlePadding: 26, labelPadding: 5 },
  };
  const y: Position = {
    type: 'quantitative',
    scale: { domain: [0, options.max], nice: true, zero: true },
    title: options.valueTitle,
    axis: { tickCount: 4 },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 60,
    height: HEIGHT,
    layer: [
      {
        mark: { ...toldMark, type: 'rule', strokeWidth: 7, color: '#a9c4d2' },
        encoding: { ...toldChannel, x, y: { field: 'low', ...y }, y2: { field: 'high_drawn' } },
      },
      {
        mark: { type: 'point', shape: 'triangle-up', filled: true, size: 90, color: '#a9c4d2' },
        encoding: { x, y: { field: 'arrow_high', ...y } },
      },
      {
        mark: { type: 'tick', thickness: 3, size: 34, orient: 'horizontal', color: palette.failure },
        encoding: { x, y: { field: 'fitted_per_100', ...y } },
      },
      {
        mark: { ...toldMark, type: 'point', filled: true, size: 70, color: palette.series },
        encoding: { ...toldChannel, x, y: { field: 'per_100', ...y } },
      },
      {
        mark: { type: 'text', fontSize: 11, color: palette.muted, baseline: 'top' },
        encoding: { x, y: { value: HEIGHT + 22 }, text: { field: 'label', type: 'nominal' } },
      },
    ],
  };
}
