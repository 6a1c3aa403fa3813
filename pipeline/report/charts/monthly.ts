import type { TopLevelSpec } from 'vega-lite';
import type { MonthlyRow } from '../rows/monthly-rows.ts';
import type { Layer } from './layer.ts';
import {
  type MonthlyOptions,
  monthlyAxes,
  monthlyLayers,
  monthlyLook,
  monthlyTime,
} from './monthly-layers.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';

export interface MonthlyChartOptions extends MonthlyOptions {
  /** Names of centre line and limits, written at the end of the lines. */
  words: { centre: string; upper: string; lower: string };
}

const RIGHT = 84;

/** Monthly series of one scope with control limits; names of the lines at their end, counts at the points that signal and at the month under review. */
export function monthlyChart(rows: readonly MonthlyRow[], options: MonthlyChartOptions): TopLevelSpec {
  const { x, y } = monthlyAxes(rows, options);
  const last = rows.at(-1);
  const drawn = rows.some((row) => row.upper !== null);
  const layers: Layer[] = [
    ...monthlyLayers(rows, options),
    {
      mark: {
        type: 'text',
        dy: -11,
        fontWeight: 'bold',
        fontSize: 11,
        stroke: palette.paper,
        strokeWidth: 3,
        strokeJoin: 'round',
      },
      encoding: { x, y, text: { field: 'label', type: 'nominal' } },
    },
    {
      mark: { type: 'text', dy: -11, fontWeight: 'bold', fontSize: 11 },
      encoding: { x, y, text: { field: 'label', type: 'nominal' } },
    },
  ];
  if (drawn && last) {
    const ends = [
      { month: last.month, value: last.upper, name: options.words.upper },
      { month: last.month, value: last.centre, name: options.words.centre },
      { month: last.month, value: last.lower === 0 ? null : last.lower, name: options.words.lower },
    ].filter((end) => end.value !== null);
    if (ends.length > 0) {
      layers.push({
        data: { values: ends },
        mark: { type: 'text', align: 'left', baseline: 'middle', dx: 26, color: palette.muted, fontSize: 11 },
        encoding: { x, y: { ...y, field: 'value' }, text: { field: 'name', type: 'nominal' } },
      });
    }
  }
  return {
    ...monthlyTime(rows),
    data: { values: monthlyLook(rows, options) },
    width: FULL_WIDTH - 40 - RIGHT,
    height: 200,
    padding: { left: 2, right: RIGHT, top: 2, bottom: 2 },
    autosize: { type: 'pad', contains: 'content' },
    layer: layers,
  };
}

export interface MonthlyByUnitOptions extends MonthlyOptions {
  columns: number;
}

/** The same for each unit, small, with one scale for all. */
export function monthlyByUnitChart(rows: readonly MonthlyRow[], options: MonthlyByUnitOptions): TopLevelSpec {
  const width = Math.floor(FULL_WIDTH / options.columns) - 52;
  return {
    ...monthlyTime(rows),
    data: { values: monthlyLook(rows, options) },
    facet: {
      field: 'scope_label',
      type: 'nominal',
      sort: [...new Set(rows.map((row) => row.scope_label))],
      title: null,
    },
    columns: options.columns,
    spacing: { row: 14, column: 22 },
    spec: { width, height: 76, layer: monthlyLayers(rows, { ...options, valueTitle: '' }) },
    resolve: { axis: { x: 'independent', y: 'independent' } },
  };
}
