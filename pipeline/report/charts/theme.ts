import type { Config } from 'vega-lite';
import { palette } from './palette.ts';

/** Font size of everything in a chart, px: charts are drawn for a column of 720 px and shrink to no less than 10 px. */
export const FONT_SIZE = 12;
/** Width of a full chart, axes included, px. */
export const FULL_WIDTH = 720;

/** How numbers are written on axes, in the form of d3-format. */
export interface ChartLocale {
  decimal: string;
  thousands: string;
  grouping: number[];
  currency: [string, string];
  percent: string;
}

/** The one theme. Text has no font here: the page's style sheet gives it. */
export const theme: Config = {
  background: 'transparent',
  aria: false,
  padding: 2,
  view: { stroke: null },
  axis: {
    labelColor: palette.ink,
    titleColor: palette.ink,
    labelFontSize: FONT_SIZE,
    titleFontSize: FONT_SIZE,
    titleFontWeight: 'normal',
    gridColor: palette.grid,
    domainColor: palette.rule,
    tickColor: palette.rule,
    tickSize: 4,
    labelPadding: 4,
    titlePadding: 8,
  },
  axisY: {
    titleAngle: 0,
    titleAlign: 'left',
    titleAnchor: 'start',
    titleBaseline: 'bottom',
    titleY: -8,
    titleX: 0,
    domain: false,
    ticks: false,
  },
  axisX: { grid: false },
  header: {
    labelColor: palette.ink,
    labelFontSize: FONT_SIZE,
    labelFontWeight: 'bold',
    titleFontSize: FONT_SIZE,
    labelAnchor: 'start',
    labelPadding: 4,
    labelLimit: 180,
  },
  title: { color: palette.ink, fontSize: FONT_SIZE, fontWeight: 'bold', anchor: 'start', offset: 4 },
  text: { color: palette.ink, fontSize: FONT_SIZE },
  rule: { color: palette.ink },
  line: { color: palette.series, strokeWidth: 1.5 },
  point: { color: palette.series, filled: true, size: 36, opacity: 1 },
  rect: { color: palette.series },
  bar: { color: palette.series },
};
