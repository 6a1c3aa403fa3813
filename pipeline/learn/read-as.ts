import type { ProposedSource } from './proposal.ts';

/**
 * A source whose kind was a question, read as the kind that was said: with the columns that this kind would have. Its name, site, sheets and skipped rows stay, and so do the
 * date patterns of columns that both readings have.
 */
export function readAs(source: ProposedSource, kind: string): ProposedSource {
  const other = [...(source.asKind ?? [])].find(([name]) => name === kind)?.[1];
  if (!other) return { ...source, asKind: undefined };
  const { name, site, sheet, sheets, skip, found, files } = source;
  const key = ({ from }: ProposedSource['columns'][number]): string =>
    'headers' in from ? JSON.stringify(from.headers) : '';
  const dates = new Map(source.columns.filter((column) => column.dates).map((one) => [key(one), one.dates]));
  return {
    ...other,
    ...{ name, site, sheet, sheets, skip, found, files },
    asKind: undefined,
    columns: other.columns.map((column) => ({
      ...column,
      dates: column.dates && (dates.get(key(column)) ?? column.dates),
    })),
  };
}
