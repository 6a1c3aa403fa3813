import type { TopLevelSpec } from 'vega-lite';
import type { ClockRow } from '../rows/clock-rows.ts';
import type { Position, SharedScale } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface ByClockOptions {
  valueTitle: string;
  clockTitle: string;
  scale: SharedScale;
}

const HEIGHT = 180;

/** Rate in each class of days since the last cleaning: a point on its exact interval, with the counts below. A cut interval ends in an arrow. */
export function byClockChart(rows: readonly ClockRow[], options: ByClockOptions): TopLevelSpec {
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
    scale: { domain: [0, options.scale.max], nice: true, zero: true },
    title: options.valueTitle,
    axis: { tickCount: 4 },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 60,
    height: HEIGHT,
    layer: [
      {
        mark: { type: 'rule', strokeWidth: 7, color: '#a9c4d2' },
        encoding: { x, y: { field: 'low', ...y }, y2: { field: 'high_drawn' } },
      },
      {
        mark: { type: 'point', shape: 'triangle-up', filled: true, size: 90, color: '#a9c4d2' },
        encoding: { x, y: { field: 'arrow_high', ...y } },
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
