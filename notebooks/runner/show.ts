import type { TopLevelSpec } from 'vega-lite';

/** A cell of a table: null stands for what is not known. */
export type TableCell = string | number | boolean | null;

/** What a notebook puts on its page. */
export type Shown =
  | { kind: 'text'; markdown: string }
  | {
      kind: 'table';
      caption: string;
      heads: readonly string[];
      rows: readonly (readonly TableCell[])[];
      numeric: readonly boolean[];
    }
  | { kind: 'chart'; title: string; description: string; spec: TopLevelSpec }
  | { kind: 'same'; values: readonly { what: string; value: string }[] };

let recorded: Shown[] = [];

/**
 * Puts something on the page, below the code that shows it. A text is Markdown. It must stand at the start of a line, outside loops and functions, so that the page
 * can tell which code it belongs to.
 */
export function show(shown: string | Shown): void {
  recorded.push(typeof shown === 'string' ? { kind: 'text', markdown: shown } : shown);
}

/** What was shown since it was asked last; for the runner. */
export function takeShown(): Shown[] {
  const taken = recorded;
  recorded = [];
  return taken;
}

/**
 * A table of rows. What is null stands as a dash.
 *
 * @param columns a name for the reader and how its cell is made, for each column
 */
export function table<Row>(
  caption: string,
  rows: readonly Row[],
  columns: Readonly<Record<string, (row: Row) => TableCell | undefined>>,
): Shown {
  const cells = rows.map((row) => Object.values(columns).map((cell) => cell(row) ?? null));
  return {
    kind: 'table',
    caption,
    heads: Object.keys(columns),
    rows: cells,
    numeric: Object.keys(columns).map((_, at) =>
      cells.every((row) => row[at] === null || typeof row[at] === 'number'),
    ),
  };
}

/** A chart from a Vega-Lite specification whose data stand in it. `description` is for those who can't see it. */
export function chart(title: string, description: string, spec: TopLevelSpec): Shown {
  return { kind: 'chart', title, description, spec };
}

type Value = number | string | null;

/**
 * States that numbers made here are the numbers that the report gives.
 *
 * @param pairs what they are, with the number made here and the report's
 * @throws Error where they are not, to a relative 1e-9: then the notebook fails
 */
export function same(pairs: Readonly<Record<string, readonly [here: Value, report: Value]>>): Shown {
  const values = Object.entries(pairs).map(([what, [here, report]]) => {
    if (!isSame(here, report)) throw new Error(`${what}: must be the report's ${report}, found ${here}`);
    return { what, value: numberText(here) };
  });
  return { kind: 'same', values };
}

function isSame(here: Value, report: Value): boolean {
  if (typeof here !== 'number' || typeof report !== 'number') return here === report;
  return Math.abs(here - report) <= 1e-9 * Math.max(Math.abs(here), Math.abs(report));
}

/** A number with four digits, whole ones in full. */
export function numberText(value: TableCell): string {
  if (value === null) return '–';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  return Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(4)));
}
