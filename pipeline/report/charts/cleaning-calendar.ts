import type { TopLevelSpec } from 'vega-lite';
import type { CalendarRow } from '../rows/calendar-rows.ts';
import type { Layer, Position } from './layer.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

export interface CleaningCalendarOptions {
  /** Axis title with the month. */
  dayTitle: string;
  /** Days of the month, all of them, as the axis shows each. */
  days: readonly number[];
  /** Room for the names of the units, px. */
  labelWidth: number;
}

/** Cleaning calendar of one task: a row for each unit, a cell for each operating day, with the colour and the letter of its state. */
export function cleaningCalendarChart(
  rows: readonly CalendarRow[],
  { dayTitle, days, labelWidth }: CleaningCalendarOptions,
): TopLevelSpec {
  const lettered = rows.filter((row) => row.letter !== '');
  const units = [...new Set(rows.map((row) => row.unit))];
  const y: Position = {
    field: 'unit',
    type: 'nominal',
    sort: units,
    title: null,
    scale: { paddingInner: 0.14, paddingOuter: 0.07 },
    axis: { minExtent: labelWidth, maxExtent: labelWidth, labelLimit: labelWidth - 6 },
  };
  const x: Position = {
    field: 'day_of_month',
    type: 'ordinal',
    title: dayTitle,
    scale: { domain: [...days], paddingInner: 0.14, paddingOuter: 0.07 },
    axis: { labelAngle: 0, ticks: false, domain: false, labelOverlap: false },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - labelWidth - 10,
    height: { step: 20 },
    layer: [
      {
        mark: { ...toldMark, type: 'rect', strokeWidth: 1 },
        encoding: {
          ...toldChannel,
          y,
          x,
          fill: { field: 'fill', type: 'nominal', scale: null },
          stroke: { field: 'line', type: 'nominal', scale: null },
        },
      },
      ...(lettered.length === 0 ? [] : [letters(lettered, x, y)]),
    ],
  };
}

function letters(rows: readonly CalendarRow[], x: Position, y: Position): Layer {
  return {
    data: { values: [...rows] },
    mark: { ...toldMark, type: 'text', fontSize: 11, fontWeight: 'bold', baseline: 'middle', dy: 0.5 },
    encoding: {
      ...toldChannel,
      y,
      x,
      text: { field: 'letter', type: 'nominal' },
      color: { field: 'letter_colour', type: 'nominal', scale: null },
    },
  };
}
