import type { TopLevelSpec } from 'vega-lite';
import type { Position } from './layer.ts';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface CumulativeRow {
  at: number;
  observed: number;
  low: number;
  high_drawn: number;
  fitted: number | null;
  /** What the step says of itself. */
  told: string;
}

/** Height of a name, as a share of the plot. */
const NAME_HEIGHT = 0.075;

/** Cumulative failures by clock: steps of the record with their interval, and the line of the fit, each named at its end. */
export function intervalCumulativeChart(
  rows: readonly CumulativeRow[],
  options: { clockTitle: string; valueTitle: string; observedName: string; fittedName: string },
): TopLevelSpec {
  const x: Position = {
    field: 'at',
    type: 'quantitative',
    title: options.clockTitle,
    scale: { zero: true, nice: true },
  };
  const y: Position = {
    type: 'quantitative',
    title: options.valueTitle,
    scale: { zero: true },
    axis: { tickCount: 4 },
  };
  const last = rows.at(-1)!;
  const fitted = rows.filter((row) => row.fitted !== null);
  // Names of two lines that end near each other are set apart.
  const top = Math.max(...rows.map((row) => row.high_drawn));
  const end = fitted.at(-1)?.fitted ?? null;
  const near = end !== null && Math.abs(end - last.observed) < top * NAME_HEIGHT;
  const apart = near
    ? (end >= last.observed ? 1 : -1) * ((top * NAME_HEIGHT - Math.abs(end - last.observed)) / 2)
    : 0;
  const names = [
    { at: last.at, value: last.observed - apart, name: options.observedName, colour: palette.series },
    ...fitted.slice(-1).map((row) => ({
      at: row.at,
      value: row.fitted! + apart,
      name: options.fittedName,
      colour: palette.failure,
    })),
  ];
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 110,
    height: 200,
    layer: [
      {
        mark: { type: 'area', interpolate: 'step-after', color: palette.seriesPale },
        encoding: { x, y: { field: 'low', ...y }, y2: { field: 'high_drawn' } },
      },
      {
        mark: { type: 'line', interpolate: 'step-after', strokeWidth: 2, color: palette.series },
        encoding: { x, y: { field: 'observed', ...y } },
      },
      ...(fitted.length > 0
        ? [
            {
              mark: { type: 'line' as const, strokeWidth: 2, strokeDash: [6, 3], color: palette.failure },
              encoding: { x, y: { field: 'fitted', ...y } },
            },
          ]
        : []),
      {
        mark: { ...toldMark, type: 'point', filled: true, size: 60, color: 'transparent' },
        encoding: { ...toldChannel, x, y: { field: 'observed', ...y } },
      },
      {
        data: { values: names },
        mark: { type: 'text', align: 'left', baseline: 'middle', dx: 6, fontWeight: 'bold' },
        encoding: {
          x: { field: 'at', type: 'quantitative' },
          y: { field: 'value', type: 'quantitative' },
          text: { field: 'name', type: 'nominal' },
          color: { field: 'colour', type: 'nominal', scale: null },
        },
      },
    ],
  };
}
