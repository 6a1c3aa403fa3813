import { type Html, type HtmlValue, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';

export interface Column<Row> {
  head: string;
  cell: (row: Row) => HtmlValue;
  /** `head`: the cell names the row. `number`: set to the right. `long`: may be broken anywhere. `prose`: sentences, which need some width. `code`: a hash. */
  kind?: 'head' | 'number' | 'text' | 'long' | 'prose' | 'code';
}

export interface TableParts<Row> {
  caption: string;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  total?: Row;
  /** Holds all rows, however many there are. */
  whole?: boolean;
  /** Attributes of a row for the page's script, such as its unit; never of the total. */
  rowData?: (row: Row) => Readonly<Record<string, string>>;
}

/** Rows of a table of a page: more are not read there, and weigh the page down. */
const MOST_ROWS = 500;

/** A table with caption, number and scopes; it scrolls sideways by itself where the page is narrow. With no rows there is none; of very many the first, with a word on the others. */
export function dataTable<Row>(
  { words }: Pick<ReportContext, 'words'>,
  numbers: Numbering,
  { caption, columns, rows: all, total, whole = false, rowData }: TableParts<Row>,
): Html {
  if (all.length === 0) return html``;
  const rows = whole ? all : all.slice(0, MOST_ROWS);
  const name = words.pages.table(numbers.table());
  const line = (row: Row, className: string) =>
    html`<tr${className === '' ? dataAttributes(rowData?.(row)) : html` class="${className}"`}>${columns.map((column) => cellOf(column, row))}</tr>
`;
  return html`<div class="table" tabindex="0" role="group" aria-label="${words.pages.scrolls(name)}">
<table>
<caption><span class="number">${name}</span><span class="title">${caption}</span></caption>
<thead><tr>${columns.map(
    ({ head, kind }) => html`<th scope="col"${kind === 'number' && html` class="number"`}>${head}</th>`,
  )}</tr></thead>
<tbody>
${rows.map((row) => line(row, ''))}${total !== undefined && line(total, 'total')}</tbody>
</table>
</div>${all.length > rows.length && html`<p class="note">${words.pages.rowsCut(rows.length, all.length)}</p>`}`;
}

/** Attributes `data-…` of an element. */
export function dataAttributes(values: Readonly<Record<string, string>> = {}): Html[] {
  return Object.entries(values).map(([name, value]) => html` data-${name}="${value}"`);
}

function cellOf<Row>({ cell, kind = 'text' }: Column<Row>, row: Row): Html {
  const content = cell(row);
  if (kind === 'head') return html`<th scope="row">${content}</th>`;
  return kind === 'text' ? html`<td>${content}</td>` : html`<td class="${kind}">${content}</td>`;
}
