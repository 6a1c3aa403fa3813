import type { TopLevelSpec } from 'vega-lite';
import { parseDay } from '../../site/day.ts';
import type { HistoryRow } from '../rows/history-rows.ts';
import type { Layer, Position } from './layer.ts';
import { palette } from './palette.ts';
import { textWidth } from './text-width.ts';
import { FULL_WIDTH } from './theme.ts';
import { timeMeta, toldChannel, toldMark } from './told.ts';

export interface HistoryOptions {
  timeTitle: string;
  /** First and last day of the record. */
  from: string;
  to: string;
  /** First day of the month under review, which is shaded to the end. */
  monthFrom: string;
  /** Names of all lanes, in their order; lanes without a mark stay empty. */
  lanes: readonly string[];
  /** Letter of a record that the cycle log contradicts. */
  contradictedLetter: string;
  /** First days of the months that the axis names, with the lines of their names. */
  months: readonly { date: string; label: readonly string[] }[];
}

const dayOf = (date: string): number => parseDay(date) ?? 0;

const LABEL_WIDTH = 124;
const PLOT_WIDTH = FULL_WIDTH - LABEL_WIDTH - 20;
/** Lines above the lanes for the names of what reset the baseline. */
const LEVELS = 3;

/**
 * A unit's whole record in lanes over one time axis: bars for spells, one shape for each kind of event, lines across all lanes for what reset the baseline.
 */
export function historyChart(rows: readonly HistoryRow[], options: HistoryOptions): TopLevelSpec {
  const { lanes } = options;
  const end = dayOf(options.to) + 1;
  const drawn = rows.map((row) => ({ ...row, from_day: dayOf(row.from), to_day: dayOf(row.to) }));
  const labels = Object.fromEntries(options.months.map(({ date, label }) => [dayOf(date), label]));
  const x: Position = {
    field: 'from_day',
    type: 'quantitative',
    title: options.timeTitle,
    scale: { domain: [dayOf(options.from), end], nice: false, zero: false },
    axis: {
      values: options.months.map(({ date }) => dayOf(date)),
      labelExpr: `${JSON.stringify(labels)}[datum.value]`,
      labelOverlap: false,
      labelAlign: 'left',
      grid: true,
    },
  };
  const y: Position = {
    field: 'lane_label',
    type: 'nominal',
    sort: [...lanes],
    scale: { domain: [...lanes], padding: 0 },
    title: null,
    axis: {
      minExtent: LABEL_WIDTH,
      maxExtent: LABEL_WIDTH,
      labelAlign: 'left',
      labelPadding: LABEL_WIDTH,
      labelLimit: LABEL_WIDTH - 6,
      grid: true,
      tickBand: 'extent',
    },
  };
  const of = (lane: HistoryRow['lane'], detail?: string) =>
    drawn.filter((row) => row.lane === lane && (detail === undefined || row.detail === detail));
  const points = (lane: HistoryRow['lane'], mark: Record<string, unknown>, detail?: string): Layer[] => {
    const values = of(lane, detail);
    if (values.length === 0) return [];
    return [
      {
        data: { values },
        mark: { ...toldMark, type: 'point', filled: true, ...mark } as Extract<
          Layer,
          { mark: unknown }
        >['mark'],
        encoding: { ...toldChannel, x, y },
      },
    ];
  };
  const layers: Layer[] = [
    {
      data: { values: [{ from_day: dayOf(options.monthFrom), to_day: end }] },
      mark: { type: 'rect', color: '#eef3f5' },
      encoding: { x, x2: { field: 'to_day' } },
    },
  ];
  // The lanes stand even where nothing is marked in any of them.
  if (drawn.every((row) => row.lane === 'service'))
    layers.push({
      data: { values: lanes.map((lane_label) => ({ lane_label })) },
      mark: { type: 'point', opacity: 0 },
      encoding: { y },
    });
  const spells = of('overdue');
  if (spells.length > 0)
    layers.push({
      data: { values: spells },
      mark: {
        ...toldMark,
        type: 'bar',
        height: 10,
        color: palette.overdue,
        stroke: '#a9741a',
        strokeWidth: 0.75,
      },
      encoding: { ...toldChannel, x, x2: { field: 'to_day' }, y },
    });
  layers.push(
    ...points('cleaning', { shape: 'triangle-up', size: 70, color: palette.cleaning }, 'counted'),
    ...points('failure', { shape: 'diamond', size: 90, color: palette.failure }),
    ...points('missing', { shape: 'cross', size: 60, color: palette.ink }),
    ...points('abort', { shape: 'circle', size: 26, color: palette.series, opacity: 0.75 }),
    ...points('strainer', {
      shape: 'stroke',
      size: 60,
      angle: 90,
      color: palette.failure,
      filled: false,
      strokeWidth: 1.5,
    }),
    ...points('early_stop', { shape: 'circle', size: 36, color: palette.muted }),
  );
  const contradicted = of('cleaning', 'contradicted').map((row) => ({
    ...row,
    letter: options.contradictedLetter,
  }));
  if (contradicted.length > 0)
    layers.push({
      data: { values: contradicted },
      mark: {
        ...toldMark,
        type: 'text',
        fontWeight: 'bold',
        color: palette.contradicted,
        baseline: 'middle',
      },
      encoding: { ...toldChannel, x, y, text: { field: 'letter', type: 'nominal' } },
    });
  const service = labelLevels(
    of('service'),
    (day) => ((day - dayOf(options.from)) / (end - dayOf(options.from))) * PLOT_WIDTH,
  );
  if (service.length > 0)
    layers.push({
      data: { values: service },
      mark: { ...toldMark, type: 'rule', color: palette.service, strokeWidth: 1.25 },
      encoding: { ...toldChannel, x },
    });
  for (let level = 0; level < LEVELS; level++) {
    const values = service.filter((row) => row.level === level);
    if (values.length > 0)
      layers.push({
        data: { values },
        mark: {
          type: 'text',
          baseline: 'bottom',
          fontSize: 11,
          align: 'left',
          dx: -2,
          color: palette.service,
        },
        encoding: { x, y: { value: -4 - level * 13 }, text: { field: 'detail_label', type: 'nominal' } },
      });
  }
  return {
    ...timeMeta({ from: dayOf(options.from), to: end }),
    width: PLOT_WIDTH,
    height: { step: 24 },
    layer: layers,
  };
}

/** Gives each label the first line on which it does not run into the label before it; where none is free, the last. */
function labelLevels<Row extends { from_day: number; detail_label: string }>(
  rows: readonly Row[],
  pixel: (day: number) => number,
): (Row & { level: number })[] {
  const ends = Array<number>(LEVELS).fill(Number.NEGATIVE_INFINITY);
  return rows.map((row) => {
    const from = pixel(row.from_day);
    const free = ends.findIndex((end) => end < from);
    const level = free < 0 ? LEVELS - 1 : free;
    ends[level] = from + textWidth(row.detail_label, 11) + 6;
    return { ...row, level };
  });
}
