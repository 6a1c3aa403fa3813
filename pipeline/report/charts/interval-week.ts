import type { TopLevelSpec } from 'vega-lite';
import type { Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

/** An hour of the week of a unit; hours with no use have no row. */
export interface WeekRow {
  unit: string;
  hour: number;
  hour_end: number;
  share: number;
  /** What the hour says of itself, with its unit. */
  told: string;
}

/** Use by hour of the week: a row for each unit, darker where it ran in more of the weeks; a rule at each midnight. */
export function intervalWeekChart(
  rows: readonly WeekRow[],
  options: {
    units: readonly string[];
    days: readonly string[];
    title: string;
    shareTitle: string;
    labelWidth: number;
  },
): TopLevelSpec {
  const y: Position = {
    field: 'unit',
    type: 'nominal',
    sort: [...options.units],
    scale: { domain: [...options.units], paddingInner: 0.15 },
    title: null,
    axis: {
      minExtent: options.labelWidth,
      maxExtent: options.labelWidth,
      labelLimit: options.labelWidth - 6,
    },
  };
  const x: Position = {
    field: 'hour',
    type: 'quantitative',
    title: options.title,
    scale: { domain: [0, 168], nice: false },
    axis: {
      values: options.days.map((_, index) => index * 24 + 12),
      ticks: false,
      grid: false,
      labelExpr: `${JSON.stringify(options.days)}[(datum.value - 12) / 24]`,
    },
  };
  const midnights = options.days.map((_, index) => ({ at: index * 24 }));
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - options.labelWidth - 20,
    height: { step: 18 },
    layer: [
      {
        mark: { ...toldMark, type: 'rect' },
        encoding: {
          ...toldChannel,
          y,
          x,
          x2: { field: 'hour_end' },
          fill: {
            field: 'share',
            type: 'quantitative',
            scale: { domain: [0, 1], range: [palette.seriesPale, palette.series] },
            legend: {
              title: options.shareTitle,
              orient: 'top',
              format: '.0%',
              gradientLength: 160,
              gradientThickness: 10,
              tickCount: 2,
              titleFontWeight: 'normal',
            },
          },
        },
      },
      {
        data: { values: midnights },
        mark: { type: 'rule', color: palette.muted, strokeDash: [2, 3] },
        encoding: { x: { field: 'at', type: 'quantitative' } },
      },
    ],
  };
}
