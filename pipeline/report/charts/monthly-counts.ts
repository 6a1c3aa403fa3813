import type { TopLevelSpec } from 'vega-lite';
import type { MonthlyRow } from '../rows/monthly-rows.ts';
import type { Layer, Position } from './layer.ts';
import { type MonthlyOptions, monthlyAxes, monthlyTime } from './monthly-layers.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

/** The exact interval of a month's rate as a count of the same chances; null where there were none. */
export function countBounds({ of, low, high }: Pick<MonthlyRow, 'of' | 'low' | 'high'>): {
  low_count: number | null;
  high_count: number | null;
} {
  return {
    low_count: low === null ? null : (low / 100) * of,
    high_count: high === null ? null : (high / 100) * of,
  };
}

const look = (rows: readonly MonthlyRow[]) =>
  rows.map((row) => {
    const bounds = countBounds(row);
    const dark = row.point === 'review_month';
    return {
      ...row,
      ...bounds,
      // What of the interval lies on a dark bar is drawn light.
      low_in_dark: dark ? bounds.low_count : null,
      high_in_dark: dark && bounds.high_count !== null ? Math.min(row.events, bounds.high_count) : null,
      bar_fill: dark ? palette.ink : '#7fa3b5',
    };
  });

/** Where the row of counts stands, px below the top of the plot. */
const COUNTS_AT = 4;

function layers(rows: readonly MonthlyRow[], options: MonthlyOptions, labels: boolean): Layer[] {
  const axes = monthlyAxes(rows, options);
  const x = { ...axes.x, scale: { ...axes.x.scale, paddingInner: 0.25, paddingOuter: 0.12 } } as Position;
  // Room above the highest interval for the row of counts.
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
  const interval = (from: string, to: string, color: string): Layer => ({
    mark: { type: 'rule', strokeWidth: labels ? 1.5 : 1, color },
    encoding: { x, y: { ...y, field: from }, y2: { field: to } },
  });
  const both = [
    bars,
    interval('low_count', 'high_count', labels ? palette.ink : palette.muted),
    interval('low_in_dark', 'high_in_dark', palette.paper),
  ];
  if (!labels) return both;
  const numbers = (halo: { stroke?: string; strokeWidth?: number; strokeJoin?: 'round' }): Layer => ({
    mark: { type: 'text', baseline: 'middle', fontSize: 11, color: palette.muted, ...halo },
    encoding: { x, y: { value: COUNTS_AT }, text: { field: 'count_label', type: 'nominal' } },
  });
  return [...both, numbers({ stroke: palette.paper, strokeWidth: 3, strokeJoin: 'round' }), numbers({})];
}

/** Events of one scope by month as bars from zero, each with its exact interval, for series with too few events for a rate with limits. The events stand as numbers in a row above. */
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
