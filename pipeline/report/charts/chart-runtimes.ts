import * as vega from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { type ChartLocale, theme } from './theme.ts';

type Rows = readonly Record<string, unknown>[];

/** A chart without its rows and the ends of its scales, compiled and parsed; both go in by the names of their places. */
interface Shape {
  runtime: vega.Runtime;
}

/** What is taken out of a chart: lists of rows, and the ends of scales, each number once. */
interface Taken {
  rows: Rows[];
  ends: number[];
}

/**
 * Compiled charts by their specification without rows and ends of scales. Charts of the same shape, such as those of the units, are compiled once a report. What is drawn
 * does not depend on it.
 */
export type ChartRuntimes = Map<string, Shape>;

/** Compiled charts that are held at once: a report of ten units has about forty. */
const MOST_SHAPES = 150;

/** A view of the chart, made from a compiled chart of the same shape where there is one. */
export function viewOf(
  spec: TopLevelSpec,
  runtimes: ChartRuntimes,
  // biome-ignore lint/suspicious/noExplicitAny: the two libraries type their loggers differently
  logger: any,
  locale: ChartLocale,
): vega.View {
  const taken: Taken = { rows: [], ends: [] };
  const { usermeta: _, ...drawn } = spec;
  const bare = takenOut(drawn, taken) as TopLevelSpec;
  if (taken.ends.length > 0) bare.params = taken.ends.map((_, index) => ({ name: `end_${index}`, value: 0 }));
  const key = JSON.stringify([locale, bare]);
  let shape = runtimes.get(key);
  if (!shape) {
    shape = {
      runtime: vega.parse(compile(bare, { config: { ...theme, locale: { number: locale } }, logger }).spec),
    };
    if (runtimes.size >= MOST_SHAPES) runtimes.clear();
    runtimes.set(key, shape);
  }
  const view = new vega.View(shape.runtime, { renderer: 'none', logger });
  // Vega marks the rows that it is given, so each view gets rows of its own.
  for (const [index, end] of taken.ends.entries()) view.signal(`end_${index}`, end);
  for (const [index, rows] of taken.rows.entries())
    view.data(
      `rows_${index}`,
      rows.map((row) => ({ ...row })),
    );
  return view;
}

/** The specification with a name in place of each list of rows, in the order in which they stand, and of each end of a scale of numbers. */
function takenOut(node: unknown, taken: Taken): unknown {
  if (Array.isArray(node)) return node.map((item) => takenOut(item, taken));
  if (typeof node !== 'object' || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      if (key === 'domain' && isRange(value))
        return [key, value.map((end) => ({ expr: nameOf(end, taken) }))];
      const values = key === 'data' ? (value as { values?: Rows }).values : undefined;
      if (values === undefined) return [key, takenOut(value, taken)];
      taken.rows.push(values);
      return [key, { name: `rows_${taken.rows.length - 1}` }];
    }),
  );
}

const isRange = (value: unknown): value is [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every((end) => typeof end === 'number');

/** Layers that share a scale must give it the same name. */
function nameOf(end: number, { ends }: Taken): string {
  if (!ends.includes(end)) ends.push(end);
  return `end_${ends.indexOf(end)}`;
}
