import type { TopLevelSpec } from 'vega-lite';
import type { RankingRow } from '../rows/ranking-rows.ts';
import type { Position, SharedScale } from './layer.ts';
import { palette } from './palette.ts';
import { FONT_SIZE, FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface RankingOptions {
  valueTitle: string;
  scale: SharedScale;
  labelWidth: number;
}

const COUNT_WIDTH = 90;

/**
 * Units by their rate, highest first: on two bands within which units like all others lie (95 and 99.8 %), the rate as counted (ring) and the rate drawn
 * toward the fleet with its interval (point on a line). Counts stand at the left.
 */
export function rankingChart(rows: readonly RankingRow[], options: RankingOptions): TopLevelSpec {
  const { labelWidth, scale } = options;
  const from = labelWidth + COUNT_WIDTH;
  const y: Position = {
    field: 'unit',
    type: 'nominal',
    sort: rows.map((row) => row.unit),
    title: null,
    scale: { padding: 0 },
    axis: {
      minExtent: from,
      maxExtent: from,
      labelAlign: 'left',
      labelPadding: from,
      labelLimit: labelWidth - 6,
      labelFontWeight: 'bold',
      labelFontSize: FONT_SIZE,
    },
  };
  const x: Position = {
    type: 'quantitative',
    title: options.valueTitle,
    scale: { domain: [0, scale.max], nice: true, zero: true },
    axis: { tickCount: 6, grid: true, titleAnchor: 'start' },
  };
  const band = (low: 'outer_low' | 'inner_low', high: 'outer_high' | 'inner_high', fill: string) =>
    ({
      mark: { type: 'bar', height: 20, color: fill },
      encoding: { y, x: { field: low, ...x }, x2: { field: high } },
    }) as const;
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - from - 20,
    height: { step: 24 },
    layer: [
      band('outer_low', 'outer_high', '#eef3f5'),
      band('inner_low', 'inner_high', palette.seriesPale),
      {
        mark: { ...toldMark, type: 'rule', strokeWidth: 2, color: palette.series },
        encoding: { ...toldChannel, y, x: { field: 'shrunken_low', ...x }, x2: { field: 'shrunken_high' } },
      },
      {
        mark: { type: 'point', filled: false, size: 60, color: palette.ink, strokeWidth: 1.5 },
        encoding: { y, x: { field: 'per_100', ...x } },
      },
      {
        mark: { ...toldMark, type: 'point', filled: true, size: 60, color: palette.series },
        encoding: { ...toldChannel, y, x: { field: 'shrunken', ...x } },
      },
      {
        mark: { type: 'text', align: 'right', baseline: 'middle' },
        encoding: { y, x: { value: -12 }, text: { field: 'label', type: 'nominal' } },
      },
    ],
  };
}
