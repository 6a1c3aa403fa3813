import { dayOfDate, parseDay } from '../../site/day.ts';
import type { MonthlyRow } from '../rows/monthly-rows.ts';
import type { Layer, Position, SharedScale } from './layer.ts';
import { palette } from './palette.ts';
import { timeMeta, toldChannel, toldMark } from './told.ts';

export interface MonthlyOptions {
  /** Axis title with the unit of measure. */
  valueTitle: string;
  scale: SharedScale;
  /** Months that the axis names. */
  labelledMonths: readonly string[];
}

/** Months and years as axis labels in two lines, the year below the first label and each January. */
export function monthLabels(rows: readonly MonthlyRow[], labelled: readonly string[]): string {
  const texts = Object.fromEntries(
    rows.map((row): [string, string[]] => {
      const [name, year] = row.month_label.split('|') as [string, string];
      return [row.month, row.month === labelled[0] || row.month.endsWith('-01') ? [name, year] : [name]];
    }),
  );
  return `${JSON.stringify(texts)}[datum.value]`;
}

/** Scale of months and scale of values. */
export function monthlyAxes(
  rows: readonly MonthlyRow[],
  options: MonthlyOptions,
): { x: Position; y: Position } {
  const months = [...new Set(rows.map((row) => row.month))];
  return {
    x: {
      field: 'month',
      type: 'ordinal',
      title: null,
      scale: { type: 'band', domain: months, padding: 0 },
      axis: {
        values: [...options.labelledMonths],
        labelExpr: monthLabels(rows, options.labelledMonths),
        labelAngle: 0,
        labelOverlap: false,
        labelPadding: 5,
      },
    },
    y: {
      field: 'per_100',
      type: 'quantitative',
      title: options.valueTitle,
      scale: { domain: [0, options.scale.max], nice: true, zero: true },
      axis: { tickCount: 4 },
    },
  };
}

/** The time that the months of the rows span. */
export function monthlyTime(rows: readonly MonthlyRow[]): { usermeta: { time: string } } {
  const months = rows.map((row) => row.month).toSorted();
  const [year, month] = months.at(-1)!.split('-').map(Number) as [number, number];
  return timeMeta({
    from: parseDay(`${months[0]}-01`)!,
    to: month === 12 ? dayOfDate(year + 1, 1, 1) : dayOfDate(year, month + 1, 1),
  });
}

/** Intervals of single months, behind their points; darker than the band of the limits. */
const INTERVAL = '#a9c4d2';

/** How a month is drawn: a small point, a large dark one for the month under review, a ring where it signals. */
const POINT_LOOK = {
  month: { point_fill: palette.series, point_line: palette.series, point_size: 26 },
  review_month: { point_fill: palette.ink, point_line: palette.ink, point_size: 70 },
  signal: { point_fill: palette.paper, point_line: palette.failure, point_size: 90 },
} as const;

/** Rows with the look of their band and point; intervals are cut to the scale. */
export function monthlyLook(rows: readonly MonthlyRow[], { scale }: Pick<MonthlyOptions, 'scale'>) {
  return rows.map((row) => ({
    ...row,
    low_drawn: row.low === null ? null : Math.min(row.low, scale.max),
    high_drawn: row.high === null ? null : Math.min(row.high, scale.max),
    band_fill: row.baseline === 1 ? '#eef3f5' : palette.seriesPale,
    ...POINT_LOOK[row.point],
  }));
}

/** Band between the limits (paler in the months that gave them), centre line, interval of each month, series and points. The rows need their look. */
export function monthlyLayers(rows: readonly MonthlyRow[], options: MonthlyOptions): Layer[] {
  const { x, y } = monthlyAxes(rows, options);
  const layers: Layer[] = [];
  if (rows.some((row) => row.upper !== null)) {
    layers.push(
      {
        mark: { type: 'rect', strokeWidth: 0.7 },
        encoding: {
          x,
          y: { ...y, field: 'lower' },
          y2: { field: 'upper' },
          fill: { field: 'band_fill', type: 'nominal', scale: null },
          stroke: { field: 'band_fill', type: 'nominal', scale: null },
        },
      },
      {
        mark: { type: 'line', strokeDash: [5, 3], strokeWidth: 1, color: palette.muted },
        encoding: { x, y: { ...y, field: 'centre' } },
      },
    );
  }
  layers.push(
    {
      mark: { ...toldMark, type: 'rule', strokeWidth: 3, color: INTERVAL },
      encoding: { ...toldChannel, x, y: { ...y, field: 'low_drawn' }, y2: { field: 'high_drawn' } },
    },
    { mark: { type: 'line', strokeWidth: 1.5 }, encoding: { x, y } },
    {
      mark: { ...toldMark, type: 'point', filled: true, strokeWidth: 2 },
      encoding: {
        ...toldChannel,
        x,
        y,
        size: { field: 'point_size', type: 'quantitative', scale: null },
        fill: { field: 'point_fill', type: 'nominal', scale: null },
        stroke: { field: 'point_line', type: 'nominal', scale: null },
      },
    },
  );
  return layers;
}
