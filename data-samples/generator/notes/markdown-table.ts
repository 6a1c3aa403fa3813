/** A table in Markdown with its columns padded to one width. Numbers stand to the right. */
export function markdownTable(
  header: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): string {
  const right = header.map((_, at) => rows.every((row) => typeof row[at] === 'number'));
  const widths = header.map((name, at) =>
    Math.max(3, name.length, ...rows.map((row) => String(row[at]).length)),
  );
  const line = (cells: readonly (string | number)[]): string =>
    `| ${cells.map((cell, at) => (right[at] ? String(cell).padStart(widths[at]!) : String(cell).padEnd(widths[at]!))).join(' | ')} |`;
  const rule = widths.map((width, at) => (right[at] ? `${'-'.repeat(width - 1)}:` : '-'.repeat(width)));
  return [line(header), `| ${rule.join(' | ')} |`, ...rows.map(line)].join('\n');
}
