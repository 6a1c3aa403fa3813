import type { TopLevelSpec } from 'vega-lite';
import type { DueRow } from '../rows/due-rows.ts';
import type { Position } from './layer.ts';
import { textWidth } from './text-width.ts';
import { FONT_SIZE, FULL_WIDTH } from './theme.ts';
import { toldChannel, toldMark } from './told.ts';

const LABEL_WIDTH = 150;
const BAR_WIDTH = FULL_WIDTH - LABEL_WIDTH - 24;

/** Due tasks by state: one bar for each task from 0 to all that fell due, its parts labelled with their counts. */
export function dueBarsChart(rows: readonly DueRow[], { shareTitle }: { shareTitle: string }): TopLevelSpec {
  const tasks = [...new Set(rows.map((row) => row.task_label))];
  const y: Position = {
    field: 'task_label',
    type: 'nominal',
    sort: tasks,
    title: null,
    scale: { paddingInner: 0.4, paddingOuter: 0.1 },
    axis: {
      minExtent: LABEL_WIDTH,
      maxExtent: LABEL_WIDTH,
      labelAlign: 'left',
      labelPadding: LABEL_WIDTH,
      labelLimit: LABEL_WIDTH,
      labelExpr: "split(datum.label, '|')",
      labelBaseline: 'middle',
      labelOffset: -7,
    },
  };
  return {
    data: { values: rows.map((row) => ({ ...row, fitting_label: fittingLabel(row) })) },
    width: BAR_WIDTH,
    height: { step: 44 },
    layer: [
      {
        mark: { ...toldMark, type: 'rect', strokeWidth: 1 },
        encoding: {
          ...toldChannel,
          y,
          x: {
            field: 'share_from',
            type: 'quantitative',
            title: shareTitle,
            scale: { domain: [0, 1], nice: false },
            axis: { format: '.0%', values: [0, 0.25, 0.5, 0.75, 1] },
          },
          x2: { field: 'share_to' },
          fill: { field: 'fill', type: 'nominal', scale: null },
          stroke: { field: 'line', type: 'nominal', scale: null },
        },
      },
      {
        mark: { type: 'text', baseline: 'middle', fontWeight: 'bold' },
        encoding: {
          y,
          x: { field: 'share_middle', type: 'quantitative' },
          text: { field: 'fitting_label', type: 'nominal' },
          color: { field: 'letter_colour', type: 'nominal', scale: null },
        },
      },
    ],
  };
}

/** The longest of the labels that fits into the part of the bar; none where not even the letter does. */
function fittingLabel(row: DueRow): string {
  const room = (row.share_to - row.share_from) * BAR_WIDTH - 2;
  return [row.label, row.short_label].find((text) => textWidth(text, FONT_SIZE, true) <= room) ?? '';
}
