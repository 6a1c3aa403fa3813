import type { TopLevelSpec } from 'vega-lite';
import type { Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface CurveRow {
  interval: number;
  value: number;
  low: number;
  high_drawn: number;
  /** What the point of the curve says of itself. */
  told: string;
}

/** Hours or cost of a year by interval: the line on its bootstrap interval, the range ruled, the best and the interval in force named. */
export function intervalCurveChart(
  rows: readonly CurveRow[],
  options: {
    intervalTitle: string;
    valueTitle: string;
    range: { low: number; high: number } | null;
    marks: readonly { interval: number; value: number; name: string }[];
    max: number;
  },
): TopLevelSpec {
  const x: Position = {
    field: 'interval',
    type: 'quantitative',
    title: options.intervalTitle,
    scale: { zero: true, nice: false },
    axis: { tickMinStep: 1 },
  };
  const y: Position = {
    type: 'quantitative',
    title: options.valueTitle,
    scale: { domain: [0, options.max], nice: true, zero: true, clamp: true },
    axis: { tickCount: 4, format: ',.0f' },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 70,
    height: 200,
    layer: [
      ...(options.range
        ? [
            {
              data: { values: [{ from: options.range.low, to: options.range.high }] },
              mark: { type: 'rect' as const, color: palette.grid },
              encoding: {
                x: { field: 'from', type: 'quantitative' as const },
                x2: { field: 'to' },
              },
            },
          ]
        : []),
      {
        mark: { type: 'area', color: palette.seriesPale },
        encoding: { x, y: { field: 'low', ...y }, y2: { field: 'high_drawn' } },
      },
      {
        mark: { type: 'line', strokeWidth: 2, color: palette.series, clip: true },
        encoding: { x, y: { field: 'value', ...y } },
      },
      ...(options.marks.length > 0
        ? [
            {
              data: { values: [...options.marks] },
              mark: { type: 'point' as const, filled: true, size: 80, color: palette.failure },
              encoding: {
                x: { field: 'interval', type: 'quantitative' as const },
                y: { field: 'value', type: 'quantitative' as const },
              },
            },
            {
              data: { values: [...options.marks] },
              mark: {
                type: 'text' as const,
                align: 'right' as const,
                baseline: 'bottom' as const,
                dy: -8,
                fontWeight: 'bold' as const,
              },
              encoding: {
                x: { field: 'interval', type: 'quantitative' as const },
                y: { field: 'value', type: 'quantitative' as const },
                text: { field: 'name', type: 'nominal' as const },
              },
            },
          ]
        : []),
      {
        mark: { ...toldMark, type: 'point', filled: true, size: 60, color: 'transparent' },
        encoding: { ...toldChannel, x, y: { field: 'value', ...y } },
      },
    ],
  };
}
