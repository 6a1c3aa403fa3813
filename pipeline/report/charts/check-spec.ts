import type { TopLevelSpec } from 'vega-lite';

/** A chart that would be drawn blank or wrong: always a fault of ours, never of the data. */
export class ChartError extends Error {
  override name = 'ChartError';
}

type Rows = readonly Record<string, unknown>[];

/**
 * Fails where an encoding, a sort, a facet or an expression names a field that the rows don't hold: Vega-Lite would draw a blank chart.
 *
 * @throws ChartError
 */
export function checkFields(spec: TopLevelSpec): void {
  walk(spec, undefined, '');
}

function walk(node: unknown, rows: Rows | undefined, path: string): void {
  if (Array.isArray(node)) {
    for (const [index, item] of node.entries()) walk(item, rows, `${path}[${index}]`);
    return;
  }
  if (typeof node === 'string') {
    for (const match of node.matchAll(/datum\.([A-Za-z_]\w*)/g)) {
      const field = match[1]!;
      if (!AXIS_FIELDS.has(field)) check(field, rows, path);
    }
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  const inner = valuesOf(node) ?? rows;
  for (const [key, value] of Object.entries(node)) {
    if (key === 'data') continue;
    if (key === 'field' && typeof value === 'string') check(value, inner, path);
    else walk(value, inner, `${path}.${key}`);
  }
}

/** What the expressions of axis and header labels speak of. */
const AXIS_FIELDS = new Set(['value', 'label', 'index']);

function valuesOf(node: object): Rows | undefined {
  const data = (node as { data?: { values?: unknown } }).data;
  return Array.isArray(data?.values) ? (data.values as Rows) : undefined;
}

function check(field: string, rows: Rows | undefined, path: string): void {
  if (rows === undefined) throw new ChartError(`${path}: field "${field}" must stand below data with rows`);
  if (rows.length === 0) throw new ChartError(`${path}: there must be at least one row to draw`);
  const without = rows.findIndex((row) => !(field in row));
  if (without >= 0)
    throw new ChartError(
      `${path}: field "${field}" must be in each row, row ${without} holds ${Object.keys(rows[without]!).join(', ')}`,
    );
}
