import type { TopLevelSpec } from 'vega-lite';
import type { MonthlyRow } from '../rows/monthly-rows.ts';
import type { Layer, Position } from './layer.ts';
import { type MonthlyOptions, monthlyAxes, monthlyTime } from './monthly-layers.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

const look = (rows: readonly MonthlyRow[]) =>
  rows.map((row) => ({ ...row, bar_fill: row.point === 'review_month' ? palette.ink : '#7fa3b5' }));

function layers(rows: readonly MonthlyRow[], options: MonthlyOptions, labels: boolean): Layer[] {
  const axes = monthlyAxes(rows, options);
  const x = { ...axes.x, scale: { ...axes.x.scale, paddingInner: 0.25, paddingOuter: 0.12 } } as Position;
  // Room above the highest bar for its count.
  const y = {
    ...axes.y,
    field: 'events',
    scale: { domain: [0, options.scale.max * (labels ? 1.15 : 1)], nice: false, zero: true },
    axis: { tickCount: 4, tickMinStep: 1, format: 'd' },
  } as Position;
  const bars: Layer = {
    mark: { ...toldMark, type: 'bar' },
    encoding: { ...toldChannel, x, y, fill: { field: 'bar_fill', type: 'nominal', scale: null } },
  };
  if (!labels) return [bars];
  return [
    bars,
    {
      mark: { type: 'text', dy: -6, fontSize: 11, color: palette.muted },
      encoding: { x, y, text: { field: 'count_label', type: 'nominal' } },
    },
  ];
}

/** Events of one scope by month as bars from zero, for series with too few events for a rate with limits. Each bar is labelled with its events. */
export function monthlyCountsChart(rows: readonly MonthlyRow[], options: MonthlyOptions): TopLevelSpec {
  return {
    ...monthlyTime(rows),
    data: {
      values: look(rows).map((row) => ({ ...row, count_label: row.of > 0 ? String(row.events) : '' })),
    },
    width: FULL_WIDTH - 40,
    height: 130,
    layer: layers(rows, options, true),
  };
}

/** The same for each unit, small, with one scale for all. */
export function monthlyCountsByUnitChart(
  rows: readonly MonthlyRow[],
  options: MonthlyOptions & { columns: number },
): TopLevelSpec {
  return {
    ...monthlyTime(rows),
    data: { values: look(rows) },
    facet: {
      field: 'scope_label',
      type: 'nominal',
      sort: [...new Set(rows.map((row) => row.scope_label))],
      title: null,
    },
    columns: options.columns,
    spacing: { row: 14, column: 22 },
    spec: {
      width: Math.floor(FULL_WIDTH / options.columns) - 44,
      height: 64,
      layer: layers(rows, { ...options, valueTitle: '' }, false),
    },
    resolve: { axis: { x: 'independent', y: 'independent' } },
  };
}
