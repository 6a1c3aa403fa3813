import type { TopLevelSpec } from 'vega-lite';
import type { HistogramRow } from '../rows/histogram-rows.ts';
import type { Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface ClockHistogramOptions {
  clockTitle: string;
  daysTitle: string;
}

/** Test days by days since the last chamber cleaning: bars from zero, the failed ones dark at the foot, counts above. */
export function clockHistogramChart(
  rows: readonly HistogramRow[],
  options: ClockHistogramOptions,
): TopLevelSpec {
  const x: Position = {
    field: 'class_label',
    type: 'ordinal',
    sort: [...new Set(rows.map((row) => row.class_label))],
    title: options.clockTitle,
    axis: { labelAngle: 0, labelOverlap: false },
    scale: { paddingInner: 0.25, paddingOuter: 0.15 },
  };
  const y: Position = {
    field: 'from_count',
    type: 'quantitative',
    title: options.daysTitle,
    // Room above the highest bar for its count.
    scale: { domain: [0, Math.max(1, ...rows.map((row) => row.to_count)) * 1.15], nice: false, zero: true },
    axis: { tickCount: 4, tickMinStep: 1, format: 'd' },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 60,
    height: 150,
    layer: [
      {
        mark: { ...toldMark, type: 'rect' },
        encoding: {
          ...toldChannel,
          x,
          y,
          y2: { field: 'to_count' },
          fill: {
            field: 'result',
            type: 'nominal',
            scale: { domain: ['failed', 'passed'], range: [palette.failure, palette.seriesPale] },
            legend: null,
          },
        },
      },
      {
        mark: { type: 'text', baseline: 'bottom', dy: -3, fontSize: 11 },
        encoding: { x, y: { ...y, field: 'to_count' }, text: { field: 'label', type: 'nominal' } },
      },
    ],
  };
}
