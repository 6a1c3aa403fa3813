import type { RecordKind } from '../../../pipeline/site/vocabulary.ts';
import type { BlindSource, BlindStyle } from '../blind/make-blind.ts';
import { later, lines, wall, wave, write } from '../blind-third/paper.ts';

/** A text or number of a row, by the row's place. */
type Cell = (at: number, time: Date) => string | number;

/** A column of a probe: header, the field that it is (none: it is not to be read), what stands in it, and its unit of measure or words. */
export interface ProbeColumn {
  header: string;
  field: string | undefined;
  cell: Cell;
  measure?: string | undefined;
  words?: Readonly<Record<string, string | null>> | undefined;
  isTimeOfDay?: boolean;
}

const column = (header: string, field: string | undefined, cell: Cell, measure?: string): ProbeColumn => ({
  header,
  field,
  cell,
  measure,
});

/** A time by pattern, some minutes after that of the row. */
export const time = (header: string, field: string | undefined, pattern: string, plus = 0): ProbeColumn => ({
  ...column(header, field, (_, time) => write(later(time, plus), pattern)),
  isTimeOfDay: !/[yd]/.test(pattern),
});

/** A number that moves about its middle. */
export const number = (
  header: string,
  field: string | undefined,
  middle: number,
  spread: number,
  digits = 0,
  measure?: string,
): ProbeColumn => column(header, field, (at) => wave(at, middle, spread, digits), measure);

export const counter = (header: string, field: string | undefined, from: number): ProbeColumn =>
  column(header, field, (at) => from + at);

/** Minutes and seconds about a middle in seconds. */
export const clock = (header: string, field: string, middle: number): ProbeColumn =>
  column(
    header,
    field,
    (at) => {
      const seconds = middle + ((at * 7) % 20);
      return `${String(Math.floor(seconds / 60)).padStart(2, '0')}:${String(seconds % 60).padStart(2, '0')}`;
    },
    'mm:ss',
  );

export const names = (header: string, field: string | undefined, list: readonly string[]): ProbeColumn =>
  column(header, field, (at) => list[at % list.length]!);

/** Words with what they mean; null: nobody can tell. The first stands in most rows. */
export const words = (
  header: string,
  field: string,
  meant: Readonly<Record<string, string | null>>,
): ProbeColumn => {
  const list = Object.keys(meant);
  return {
    ...column(header, field, (at) =>
      at % 3 === 1 ? list[Math.floor(at / 3) % list.length]! : list[at % Math.min(2, list.length)]!,
    ),
    words: meant,
  };
};

/** Words of which the first stands in nearly all rows, as results do. */
export const rare = (
  header: string,
  field: string,
  meant: Readonly<Record<string, string | null>>,
): ProbeColumn => {
  const list = Object.keys(meant);
  return {
    ...column(header, field, (at) => (at % 7 === 4 ? list[Math.floor(at / 7) % list.length]! : list[0]!)),
    words: meant,
  };
};

/** A text in few rows. */
export const text = (header: string, field: string | undefined, list: readonly string[]): ProbeColumn =>
  column(header, field, (at) => (at % 7 === 4 ? list[Math.floor(at / 7) % list.length]! : ''));

export interface ProbeTable {
  file: string;
  kind: RecordKind;
  columns: readonly ProbeColumn[];
  delimiter?: string;
  decimal?: '.' | ',';
  /** Minutes from row to row. */
  step?: number;
  rows?: number;
}

const isClock = (columns: readonly ProbeColumn[], headers: readonly string[]): boolean =>
  headers.length === 1 && columns.some(({ header, isTimeOfDay }) => header === headers[0] && isTimeOfDay);

/** A site that is made up, with its tables and their truth. Columns of one field are joined in their order. */
export function probe(name: string, zone: string, tables: readonly ProbeTable[]): BlindStyle {
  const files: Record<string, string> = {};
  const sources = tables.map((table): BlindSource => {
    const { file, kind, columns, delimiter = ',', decimal = '.', step = 431, rows = 42 } = table;
    const body = Array.from({ length: rows }, (_, at) =>
      columns.map(({ cell }) => {
        const value = cell(at, wall('2025-03-03', 0, 385 + at * step));
        return decimal === ',' && typeof value === 'string' && /^-?\d+\.\d+$/.test(value)
          ? value.replace('.', ',')
          : value;
      }),
    );
    files[file] = lines([columns.map(({ header }) => header), ...body], delimiter);
    const truth: BlindSource['columns'] = {};
    for (const { header, field, measure } of columns)
      if (field !== undefined) {
        const known = truth[field];
        const headers = known && 'headers' in known ? [...known.headers, header] : [header];
        truth[field] = measure === undefined ? { headers } : { headers, measure };
      }
    // A begin or end that is a time of day alone is on the date of the record's own time.
    const own = truth[kind === 'cycles' ? 'start' : kind === 'service' ? 'from' : 'time'];
    for (const field of ['start', 'end', 'to']) {
      const known = truth[field];
      if (
        known &&
        known !== own &&
        'headers' in known &&
        own &&
        'headers' in own &&
        isClock(columns, known.headers)
      )
        truth[field] = { headers: [own.headers[0]!, ...known.headers] };
    }
    return {
      file,
      kind,
      decimal,
      columns: truth,
      words: Object.fromEntries(
        columns.flatMap(({ field, words }) => (field && words ? [[field, words]] : [])),
      ),
      counts: { records: rows, duplicates: 0, rejected: 0, skipped: 0 },
    };
  });
  return { name, zone, sources, files };
}
