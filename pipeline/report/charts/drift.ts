import type { TopLevelSpec } from 'vega-lite';
import type { Layer, Position } from './layer.ts';
import { dots, strokes } from './one-path.ts';
import { eventShape, palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { timeMeta, toldChannel, toldMark } from './told.ts';

export interface DriftOptions {
  timeTitle: string;
  /** First and last day of the axis, and the first day of the month under review. */
  from: number;
  to: number;
  monthFrom: number;
  months: readonly { day: number; label: readonly string[] }[];
  /** Usual band of each era, by days. */
  bands: readonly { from: number; to: number; low: number; high: number }[];
  /** Limit, if there is one, with its name. */
  limit: { value: number; name: string } | null;
  /** Movement as it was fitted: from the day it began to its last value. */
  movement: { from: number; to: number; from_value: number; to_value: number } | null;
  events: readonly { day: number; kind: 'failure' | 'cleaning' | 'service'; told: string }[];
}

/**
 * A probe over time: each day's value, the unit's own usual band, its limit, the movement, and at the foot what was done or failed. The title above the
 * picture names the probe and its unit of measure, and the ends of the scale come in as rows: so charts of all probes have one shape and are compiled once.
 */
export function driftChart(
  rows: readonly { day: number; value: number; low: number; high: number; tip: string }[],
  unit: string,
  options: DriftOptions,
): TopLevelSpec {
  const end = options.to + 1;
  const labels = Object.fromEntries(options.months.map(({ day, label }) => [day, label]));
  const held = [
    ...rows.flatMap((row) => [row.low, row.high]),
    ...options.bands.flatMap((band) => [band.low, band.high]),
    ...(options.limit ? [options.limit.value] : []),
  ];
  const low = Math.min(...held);
  const high = Math.max(...held);
  const margin = (high - low || Math.abs(high) || 1) * 0.08;
  const x: Position = {
    field: 'day',
    type: 'quantitative',
    title: options.timeTitle,
    scale: { domain: [options.from, end], nice: false, zero: false },
    axis: {
      values: options.months.map(({ day }) => day),
      labelExpr: `${JSON.stringify(labels)}[datum.value]`,
      labelOverlap: false,
      labelAlign: 'left',
      grid: true,
    },
  };
  const y: Position = {
    field: 'value',
    type: 'quantitative',
    title: null,
    scale: { nice: false, zero: false },
    axis: { tickCount: 4 },
  };
  const layers: Layer[] = [
    {
      data: { values: [low - 2.5 * margin, high + margin].map((value) => ({ day: options.from, value })) },
      mark: { type: 'point', size: 0, opacity: 0 },
      encoding: { x, y },
    },
    {
      data: { values: [{ day: options.monthFrom, day_to: end }] },
      mark: { type: 'rect', color: '#eef3f5' },
      encoding: { x, x2: { field: 'day_to' } },
    },
  ];
  if (options.bands.length > 0)
    layers.push({
      data: {
        values: options.bands.map((band) => ({
          day: band.from,
          day_to: band.to + 1,
          value: band.low,
          value_to: band.high,
        })),
      },
      mark: { type: 'rect', color: palette.seriesPale },
      encoding: { x, x2: { field: 'day_to' }, y, y2: { field: 'value_to' } },
    });
  const service = options.events.filter((event) => event.kind === 'service');
  if (service.length > 0)
    layers.push({
      data: { values: service },
      mark: { ...toldMark, type: 'rule', color: palette.service },
      encoding: { ...toldChannel, x },
    });
  const weeks = rows.filter((row) => row.low < row.high);
  if (weeks.length > 0) layers.push(strokes(weeks, { x, y, color: palette.series, opacity: 0.3 }));
  layers.push(dots(rows, unit, { x, y, color: palette.series, opacity: 0.75 }));
  if (options.movement) {
    const { from, to, from_value, to_value } = options.movement;
    layers.push({
      data: {
        values: [
          { day: from, value: from_value },
          { day: to, value: to_value },
        ],
      },
      mark: { type: 'line', color: palette.failure, strokeWidth: 2.5 },
      encoding: { x, y },
    });
  }
  if (options.limit) {
    const { value, name } = options.limit;
    layers.push(
      {
        data: { values: [{ value }] },
        mark: { type: 'rule', color: palette.failure, strokeDash: [6, 3] },
        encoding: { y },
      },
      {
        data: { values: [{ day: options.from, value, name }] },
        mark: {
          type: 'text',
          align: 'left',
          baseline: 'top',
          dx: 4,
          dy: 3,
          color: palette.failure,
          fontSize: 11,
        },
        encoding: { x, y, text: { field: 'name', type: 'nominal' } },
      },
    );
  }
  const foot = low - 1.8 * margin;
  for (const [kind, colour] of [
    ['cleaning', palette.cleaning],
    ['failure', palette.failure],
  ] as const) {
    const values = options.events
      .filter((event) => event.kind === kind)
      .map((event) => ({ ...event, value: foot }));
    if (values.length > 0)
      layers.push({
        data: { values },
        mark: { ...toldMark, type: 'point', filled: true, shape: eventShape[kind], size: 55, color: colour },
        encoding: { ...toldChannel, x, y },
      });
  }
  return { ...timeMeta({ from: options.from, to: end }), width: FULL_WIDTH - 60, height: 130, layer: layers };
}
