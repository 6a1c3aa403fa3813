import type { CellValue, Table } from '../table.ts';
import { NOTES } from './source-notes.ts';

/** One note for each source: its files with their rows, its columns, its first rows, its oddities. */
export function fileNotes(tables: readonly Table[]): string {
  const sources = [...new Set(tables.map((table) => table.source))];
  return sources
    .map((source) =>
      noteOf(
        source,
        tables.filter((table) => table.source === source),
      ),
    )
    .join('\n\n');
}

function noteOf(source: string, tables: readonly Table[]): string {
  const note = NOTES[source];
  if (!note) throw new Error(`no note for ${source}`);
  const first = tables[0]!;
  const shown = first.rows.filter(({ fate }) => fate === 'record').slice(0, 2);
  return `### ${source}

${note.what}

Files: ${shape(tables)}. Written as ${note.form}.

Columns: ${first.header.map((name) => `\`${name}\``).join(', ')}.

\`\`\`
${[first.header, ...shown.map(({ cells }) => cells)].map((cells) => cells.map(text).join(note.delimiter)).join('\n')}
\`\`\`

Oddities: ${note.oddities}`;
}

/** Files with their rows below the header; a run of many files is told by its first and last. */
function shape(tables: readonly Table[]): string {
  const counted = tables.map(({ file, rows }) => `\`${file}\` (${rows.length} rows)`);
  if (tables.length <= 6) return counted.join(', ');
  const total = tables.reduce((sum, { rows }) => sum + rows.length, 0);
  return `${counted[0]} to ${counted.at(-1)}, ${tables.length} files of together ${total} rows`;
}

function text(cell: CellValue): string {
  if (cell === null) return '';
  return cell instanceof Date ? cell.toISOString().slice(0, 16).replace('T', ' ') : String(cell);
}
