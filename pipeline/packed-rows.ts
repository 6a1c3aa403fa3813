/** Values of one field of many rows. What a row does not have is NaN, or the code -1, and stands for `absent`. */
type PackedColumn =
  | { type: 'numbers'; values: Float64Array; absent: null | undefined }
  | { type: 'words'; codes: Int32Array; words: string[]; absent: null | undefined };

/** Rows as columns, in a form that is small and quickly handed from thread to thread. */
export interface PackedRows<Row> {
  count: number;
  columns: [keyof Row & string, PackedColumn][];
}

/**
 * Packs rows whose fields hold numbers, or texts, or nothing.
 *
 * @param names all fields of the rows, in their order
 * @throws Error where a field holds anything else, or both null and undefined for nothing
 */
export function packRows<Row extends object>(
  rows: readonly Row[],
  names: readonly (keyof Row & string)[],
): PackedRows<Row> {
  return { count: rows.length, columns: names.map((name) => [name, packColumn(rows, name)]) };
}

/** What {@link packRows} was given; texts that are alike are one text. */
export function unpackRows<Row extends object>({ count, columns }: PackedRows<Row>): Row[] {
  return Array.from({ length: count }, (_, index) => {
    const row: Record<string, unknown> = {};
    for (const [name, column] of columns) row[name] = valueAt(column, index);
    return row as Row;
  });
}

function packColumn<Row extends object>(rows: readonly Row[], name: keyof Row & string): PackedColumn {
  const isAbsent = (value: unknown): value is null | undefined => value === null || value === undefined;
  const sample = rows.find((row) => !isAbsent(row[name]))?.[name];
  const absent = rows.find((row) => isAbsent(row[name]))?.[name] as null | undefined;
  const isText = typeof sample === 'string';
  const values = isText ? new Int32Array(rows.length) : new Float64Array(rows.length);
  const codes = new Map<string, number>();
  for (const [index, row] of rows.entries()) {
    const value: unknown = row[name];
    if (
      isAbsent(value)
        ? value !== absent
        : typeof value !== typeof sample || Number.isNaN(value) || (!isText && typeof value !== 'number')
    )
      throw new Error(`${name} must be a number, a text or nothing in all rows, found ${String(value)}`);
    values[index] = isAbsent(value)
      ? isText
        ? -1
        : Number.NaN
      : isText
        ? codeOf(codes, value as string)
        : (value as number);
  }
  return isText
    ? { type: 'words', codes: values as Int32Array, words: [...codes.keys()], absent }
    : { type: 'numbers', values: values as Float64Array, absent };
}

/** The code of a word, a new one where it has none: codes follow the order in which words come. */
export function codeOf(codes: Map<string, number>, word: string): number {
  const known = codes.get(word);
  if (known !== undefined) return known;
  codes.set(word, codes.size);
  return codes.size - 1;
}

function valueAt(column: PackedColumn, index: number): unknown {
  if (column.type === 'words') {
    const code = column.codes[index]!;
    return code < 0 ? column.absent : column.words[code];
  }
  const value = column.values[index]!;
  return Number.isNaN(value) ? column.absent : value;
}
