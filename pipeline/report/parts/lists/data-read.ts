import { listedFiles } from '../../../findings/lists/reading-account.ts';
import type { FileRead } from '../../../ingest/reading.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../data-table.ts';

interface SourceSum {
  source: string;
  kind: string;
  files: number;
  rows: number;
  records: number;
  duplicates: number;
  rejected: number;
  skipped: number;
  cells_lost: number;
}

/** Rows read by source, with a line of sums. */
export function sourcesTable(context: ReportContext, numbers: Numbering): Html {
  const { data } = context.words.records;
  const { terms, format } = context.words;
  const { review } = context;
  if (review.files.length === 0) return html`<p class="empty">${data.noFiles}</p>`;
  const number = (head: string, field: Exclude<keyof SourceSum, 'source' | 'kind'>): Column<SourceSum> => ({
    head,
    kind: 'number',
    cell: (row) => format.integer(row[field]),
  });
  return html`${dataTable(context, numbers, {
    caption: data.sumCaption,
    rows: sumBySource(review.files),
    total: { source: data.total, kind: '', ...review.totals },
    columns: [
      { head: data.heads.source, kind: 'head', cell: (row) => row.source },
      {
        head: data.heads.kind,
        cell: (row) => terms.recordKind[row.kind as keyof typeof terms.recordKind] ?? row.kind,
      },
      number(data.heads.files, 'files'),
      number(data.heads.rows, 'rows'),
      number(data.heads.records, 'records'),
      number(data.heads.duplicates, 'duplicates'),
      number(data.heads.rejected, 'rejected'),
      number(data.heads.skipped, 'skipped'),
      number(data.heads.cells, 'cells_lost'),
    ],
  })}
<p class="note">${data.sums(review.files.every(addsUp))}</p>`;
}

const addsUp = (file: FileRead): boolean =>
  file.rows === file.records + file.duplicates + file.rejected + file.skipped;

function sumBySource(files: readonly FileRead[]): SourceSum[] {
  const sums = new Map<string, SourceSum & { names: Set<string> }>();
  for (const file of files) {
    const sum = sums.get(file.source) ?? {
      source: file.source,
      kind: file.kind,
      files: 0,
      rows: 0,
      records: 0,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      cells_lost: 0,
      names: new Set<string>(),
    };
    sum.names.add(file.file);
    sum.files = sum.names.size;
    for (const field of ['rows', 'records', 'duplicates', 'rejected', 'skipped', 'cells_lost'] as const)
      sum[field] += file[field];
    sums.set(file.source, sum);
  }
  return [...sums.values()];
}

/** Each file with size, fingerprint and counts; of very many, those first of which rows or cells were lost. */
export function filesTable(context: ReportContext, numbers: Numbering): Html {
  const { data } = context.words.records;
  const { format } = context.words;
  const number = (
    head: string,
    field: 'rows' | 'records' | 'duplicates' | 'rejected' | 'skipped',
  ): Column<FileRead> => ({ head, kind: 'number', cell: (row) => format.integer(row[field]) });
  const { files } = context.review;
  const shown = listedFiles(files);
  return html`${dataTable(context, numbers, {
    caption: data.filesCaption,
    rows: shown,
    columns: [
      {
        head: data.heads.file,
        kind: 'head',
        cell: (row) =>
          html`${context.words.records.where(row.file, row.sheet, null)} <span class="sub">${row.source}</span>`,
      },
      { head: data.heads.bytes, kind: 'number', cell: (row) => format.bytes(row.bytes) },
      number(data.heads.rows, 'rows'),
      number(data.heads.records, 'records'),
      number(data.heads.duplicates, 'duplicates'),
      number(data.heads.rejected, 'rejected'),
      number(data.heads.skipped, 'skipped'),
      { head: data.heads.sha, kind: 'code', cell: (row) => row.sha256 },
    ],
  })}${shown.length < files.length && html`<p class="note">${data.filesMore(files.length - shown.length)}</p>`}`;
}

/** Problems by source and code, with examples. */
export function problemsTable(
  context: ReportContext,
  numbers: Numbering,
  examples: 'with_examples' | 'counts_only',
): Html {
  const { data, where } = context.words.records;
  const { format, terms } = context.words;
  const rows = context.review.problems_by_code;
  if (rows.length === 0) return html`<p>${data.noProblems}</p>`;
  const { problemHeads } = data;
  const exampleColumn: Column<(typeof rows)[number]> = {
    head: problemHeads.examples,
    kind: 'long',
    cell: (row) =>
      row.examples.map(
        (of) =>
          html`<div>${data.example(where(of.file, of.sheet, of.row), of.column, of.value, of.expected)}</div>`,
      ),
  };
  return html`${dataTable(context, numbers, {
    caption: data.problemsCaption,
    rows,
    columns: [
      { head: problemHeads.source, kind: 'head', cell: (row) => row.source },
      { head: problemHeads.what, cell: (row) => data.problem(row.code, row.meaning) },
      { head: problemHeads.costs, cell: (row) => terms.costs[row.costs] ?? row.costs },
      { head: problemHeads.count, kind: 'number', cell: (row) => format.integer(row.count) },
      ...(examples === 'counts_only' ? [] : [exampleColumn]),
    ],
  })}
<p class="note">${data.problemsFile} <a class="screen" href="problems.csv">problems.csv</a></p>`;
}

/** What the joins matched. */
export function joinsTable(context: ReportContext, numbers: Numbering): Html {
  const { data } = context.words.records;
  const { integer } = context.words.format;
  const heads = data.joinHeads;
  return dataTable(context, numbers, {
    caption: data.joinsCaption,
    rows: context.review.joins,
    columns: [
      { head: heads.name, kind: 'head', cell: (row) => data.join(row.name) },
      { head: heads.relationship, cell: (row) => data.relationship(row.relationship) },
      { head: heads.left, kind: 'number', cell: (row) => integer(row.left) },
      { head: heads.right, kind: 'number', cell: (row) => integer(row.right) },
      { head: heads.matched, kind: 'number', cell: (row) => integer(row.matched) },
      { head: heads.unmatchedLeft, kind: 'number', cell: (row) => integer(row.unmatched_left) },
      { head: heads.unmatchedRight, kind: 'number', cell: (row) => integer(row.unmatched_right) },
    ],
  });
}

/** Abort texts in no class. */
export function textsTable(context: ReportContext, numbers: Numbering): Html {
  const { stops } = context.words.records;
  const rows = context.review.unclassified_abort_texts;
  if (rows.length === 0) return html`<p>${stops.noTexts}</p>`;
  return dataTable(context, numbers, {
    caption: stops.textsCaption,
    rows,
    columns: [
      { head: stops.textHeads.text, kind: 'head', cell: (row) => (row.text === '' ? stops.blank : row.text) },
      { head: stops.textHeads.count, kind: 'number', cell: (row) => context.words.format.integer(row.count) },
    ],
  });
}
