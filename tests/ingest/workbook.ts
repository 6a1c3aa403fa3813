import writeWorkbook from 'write-excel-file/node';

/** A cell of a test's workbook; dates are written as the wall time that they show in UTC. */
export type TestCell =
  | string
  | number
  | boolean
  | Date
  | null
  | { value: Date; format: string }
  | { formula: string };

/** Writes a workbook through a library that has nothing to do with the one that reads it. */
export async function workbook(sheets: { name: string; rows: TestCell[][] }[]): Promise<Buffer> {
  const file = await writeWorkbook(
    sheets.map(({ name, rows }) => ({ sheet: name, data: rows.map((row) => row.map(toCell)) })) as never,
  );
  return (file as unknown as { toBuffer(): Promise<Buffer> }).toBuffer();
}

function toCell(cell: TestCell): unknown {
  if (cell === null) return null;
  if (cell instanceof Date) return { type: Date, value: cell, format: 'yyyy-mm-dd hh:mm:ss' };
  if (typeof cell === 'object' && 'formula' in cell) return { type: 'Formula', value: cell.formula };
  if (typeof cell === 'object') return { type: Date, value: cell.value, format: cell.format };
  return {
    type: typeof cell === 'number' ? Number : typeof cell === 'boolean' ? Boolean : String,
    value: cell,
  };
}
