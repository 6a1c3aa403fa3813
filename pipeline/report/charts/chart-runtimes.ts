import * as vega from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { type ChartLocale, theme } from './theme.ts';

type Rows = readonly Record<string, unknown>[];

/** A chart without its rows, compiled and parsed; rows go in by the names of their places. */
interface Shape {
  runtime: vega.Runtime;
}

/**
 * Compiled charts by their specification without rows. Charts of the same shape, such as those of the units, are compiled once a report. What is drawn
 * does not depend on it.
 */
export type ChartRuntimes = Map<string, Shape>;

/** A view of the chart, made from a compiled chart of the same shape where there is one. */
export function viewOf(
  spec: TopLevelSpec,
  runtimes: ChartRuntimes,
  // biome-ignore lint/suspicious/noExplicitAny: the two libraries type their loggers differently
  logger: any,
  locale: ChartLocale,
): vega.View {
  const places: Rows[] = [];
  const { usermeta: _, ...drawn } = spec;
  const bare = withoutRows(drawn, places) as TopLevelSpec;
  const key = JSON.stringify([locale, bare]);
  let shape = runtimes.get(key);
  if (!shape) {
    shape = {
      runtime: vega.parse(compile(bare, { config: { ...theme, locale: { number: locale } }, logger }).spec),
    };
    runtimes.set(key, shape);
  }
  const view = new vega.View(shape.runtime, { renderer: 'none', logger });
  // Vega marks the rows that it is given, so each view gets rows of its own.
  for (const [index, rows] of places.entries())
    view.data(
      `rows_${index}`,
      rows.map((row) => ({ ...row })),
    );
  return view;
}

/** The specification with a name in place of each list of rows, in the order in which they stand. */
function withoutRows(node: unknown, places: Rows[]): unknown {
  if (Array.isArray(node)) return node.map((item) => withoutRows(item, places));
  if (typeof node !== 'object' || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const values = key === 'data' ? (value as { values?: Rows }).values : undefined;
      if (values === undefined) return [key, withoutRows(value, places)];
      places.push(values);
      return [key, { name: `rows_${places.length - 1}` }];
    }),
  );
}
