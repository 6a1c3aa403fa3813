import type { TopLevelSpec } from 'vega-lite';
import { palette } from './palette.ts';
import { FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

/** Inspections of one score in a class of the clock, as a piece of its bar; pieces without inspections have no row. */
export interface AppearanceRow {
  class_label: string;
  score: number;
  from_count: number;
  to_count: number;
  middle: number;
  label: string;
  /** What the mark says of itself. */
  told: string;
}

/** From clean to worst, darker with each step; the score stands in its piece. */
const SHADES = ['#eef4f7', '#d7e5ec', '#a9c4d2', '#5b8ba3', palette.series];

/** Appearance by class of the clock: a bar of inspections, each score a piece with its number. */
export function intervalAppearanceChart(
  rows: readonly AppearanceRow[],
  options: { classes: readonly string[]; clockTitle: string; countTitle: string },
): TopLevelSpec {
  const x = {
    field: 'class_label',
    type: 'ordinal' as const,
    sort: [...options.classes],
    scale: { domain: [...options.classes], paddingInner: 0.2 },
    title: options.clockTitle,
    axis: { labelAngle: 0, labelOverlap: false as const },
  };
  return {
    data: { values: [...rows] },
    width: FULL_WIDTH - 60,
    height: 190,
    layer: [
      {
        mark: { ...toldMark, type: 'rect', stroke: palette.muted, strokeWidth: 0.5 },
        encoding: {
          ...toldChannel,
          x,
          y: {
            field: 'from_count',
            type: 'quantitative',
            title: options.countTitle,
            scale: { zero: true },
            axis: { tickCount: 4, format: 'd' },
          },
          y2: { field: 'to_count' },
          fill: {
            field: 'score',
            type: 'ordinal',
            scale: { domain: [0, 1, 2, 3, 4], range: SHADES },
            legend: null,
          },
        },
      },
      {
        mark: { type: 'text', baseline: 'middle', fontSize: 11 },
        encoding: {
          x,
          y: { field: 'middle', type: 'quantitative' },
          text: { field: 'label', type: 'nominal' },
          color: {
            condition: { test: 'datum.score >= 3', value: palette.paper },
            value: palette.ink,
          },
        },
      },
    ],
  };
}
