import { cellText, isBlankRow, type RawRow } from '../ingest/cell.ts';
import { looksPersonal, type Personal } from '../ingest/personal-columns.ts';
import type { WatchRow } from '../ingest/read-file.ts';
import type { FileRead, Problem } from '../ingest/reading.ts';
import { fieldSources, foldHeader, positionsOf } from '../ingest/source-columns.ts';
import { WIDE_DAY } from '../ingest/wide-table.ts';
import { formatDay } from '../site/day.ts';
import { type Origin, type Records, TIME_FIELD } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { formatWall, type WallClock } from '../site/wall-clock.ts';

/** A row as it stands and as it was understood, field by field. Columns that no field comes from are not in it. */
export interface ShownRow {
  source: string;
  file: string;
  sheet: string | null;
  row: number;
  /** Header of the day's column, of a sheet with a column a day. */
  column?: string;
  /** What the row became: a record, or why not. */
  became: string;
  fields: { field: string; raw: string; understood: string | null }[];
}

/** A column that looks as if it told of people. Its content is never shown. */
export interface PersonalColumn {
  source: string;
  column: string;
  looks_like: Personal;
  kept: boolean;
}

interface Watched {
  read: Readonly<FileRead>;
  header: RawRow;
  rows: RawRow[];
}

/** Values of a column that are looked at to tell whether it speaks of people. */
const LOOKED_AT = 200;

/** Watches the first rows of each table go by, and tells afterwards what became of those of the first table of each source. */
export class FirstRows {
  readonly #site: Site;
  readonly #count: number;
  /** The first table of each source. */
  readonly #tables = new Map<string, Watched>();
  readonly #personal: PersonalColumn[] = [];
  /** The table that goes by. */
  #now: (Watched & { key: string }) | undefined;
  /** Records of rows that are shown, by their place. */
  readonly #records = new Map<string, Record<string, unknown>>();

  /** @param count rows of each source that are shown */
  constructor(site: Site, count: number) {
    this.#site = site;
    this.#count = count;
  }

  readonly watch: WatchRow = (read, header, row) => {
    const key = [read.source, read.file, read.sheet].join('\u0000');
    if (this.#now?.key !== key) {
      this.#lookForPeople();
      this.#now = { key, read, header, rows: [] };
      if (!this.#tables.has(read.source)) this.#tables.set(read.source, this.#now);
    }
    const { rows } = this.#now;
    if (row.fault === undefined && !isBlankRow(row.cells) && rows.length < LOOKED_AT) rows.push(row);
  };

  /** Is shown the records, once all tables have gone by: all at once, or one part after the other. */
  see(records: Records): void {
    const wanted = new Set(
      [...this.#tables.values()].flatMap(({ read, header, rows }) =>
        rows.slice(0, this.#count).map((row) => this.#placeOfRow(read, header, row)),
      ),
    );
    const sources = new Map(this.#site.sources.map((source) => [source.name, source]));
    for (const list of Object.values(records) as { origin: Origin }[][])
      for (const one of list) {
        const record = one as unknown as Record<string, unknown>;
        const source = sources.get(one.origin.source)!;
        // Of a sheet with a column a day, one row is many records.
        const day =
          source.wide && formatDay(clockOf(this.#site, source.site).operatingDay(record.time as number));
        const place = placeOf(one.origin, day);
        if (wanted.has(place)) this.#records.set(place, record);
      }
  }

  #placeOfRow(read: Readonly<FileRead>, header: RawRow, row: RawRow): string {
    const { wide } = this.#site.sources.find(({ name }) => name === read.source)!;
    const day = wide && cellText(row.cells[positionsOf(header.cells).get(foldHeader(WIDE_DAY))![0]!]);
    return placeOf({ ...read, row: row.row }, day);
  }

  /** The first rows of the first table of each source. */
  shown(problems: readonly Problem[]): ShownRow[] {
    const site = this.#site;
    const rows: ShownRow[] = [];
    for (const { read, header, rows: first } of this.#tables.values()) {
      const source = site.sources.find(({ name }) => name === read.source)!;
      const clock = clockOf(site, source.site);
      const positions = positionsOf(header.cells);
      for (const row of first.slice(0, this.#count)) {
        const record = this.#records.get(this.#placeOfRow(read, header, row));
        const problem = problems.find(
          (one) =>
            one.source === read.source &&
            one.file === read.file &&
            one.sheet === read.sheet &&
            one.row === row.row &&
            (row.column === undefined || one.column === row.column) &&
            one.costs === 'row',
        );
        rows.push({
          source: read.source,
          file: read.file,
          sheet: read.sheet,
          row: row.row,
          ...(row.column === undefined ? {} : { column: row.column }),
          became: record
            ? 'record'
            : problem
              ? `problem: ${problem.expected}`
              : 'skipped, or a duplicate of another row',
          fields: fieldSources(source).flatMap(({ field, headers }) => {
            const cells = headers.flatMap((name) => positions.get(foldHeader(name))?.slice(0, 1) ?? []);
            const raw =
              row.column === undefined || cells.length > 0 || !(field.name in WIDE_RAW)
                ? cells
                    .map((at) => cellText(row.cells[at]))
                    .filter((text) => text !== '')
                    .join(' + ')
                : (row[WIDE_RAW[field.name as keyof typeof WIDE_RAW]] ?? '');
            const value = record?.[field.name];
            if (raw === '' && value === undefined) return [];
            const understood =
              value === undefined
                ? null
                : field.name === TIME_FIELD[source.kind] && record?.time_mark === 'day'
                  ? `${formatDay(clock.operatingDay(value as number))} (a date alone)`
                  : textOf(value, field.meta, clock);
            return [{ field: field.name, raw, understood }];
          }),
        });
      }
    }
    return rows;
  }

  /** Columns that look as if they held names, initials, dates of birth or record numbers, kept or not. */
  personal(): PersonalColumn[] {
    this.#lookForPeople();
    this.#now = undefined;
    return this.#personal;
  }

  /** Looks at the table that has gone by. */
  #lookForPeople(): void {
    if (!this.#now) return;
    const { read, header, rows } = this.#now;
    const source = this.#site.sources.find(({ name }) => name === read.source)!;
    const used = new Set(fieldSources(source).flatMap(({ headers }) => headers.map(foldHeader)));
    for (const [at, cell] of header.cells.entries()) {
      const column = cellText(cell);
      const values = rows.map((row) => cellText(row.cells[at])).filter((text) => text !== '');
      const looks = looksPersonal(column, values);
      const known = this.#personal.some((one) => one.source === read.source && one.column === column);
      if (looks === undefined || known) continue;
      // The unit's own column may be headed "name"; what the site says it is rules.
      const kept = used.has(foldHeader(column));
      if (kept && foldHeader(column) === 'name') continue;
      this.#personal.push({ source: read.source, column, looks_like: looks, kept });
    }
  }
}

const placeOf = ({ source, file, sheet, row }: Origin, day: string | undefined): string =>
  [source, file, sheet, row, day].join('\u0000');

const clockOf = (site: Site, id: string | undefined): WallClock =>
  [...site.sites.values()].find((one) => id === undefined || one.id === id)!.clock;

/** What a row of a sheet with a column a day has in place of a cell. */
const WIDE_RAW = { time: 'column', state: 'mark' } as const;

function textOf(
  value: unknown,
  { holds, measure }: { holds: string; measure?: string },
  clock: WallClock,
): string {
  if (holds === 'instant') return `${formatWall(clock.wallOf(value as number))} (${clock.zone})`;
  return measure === undefined ? String(value) : `${String(value)} ${measure}`;
}

/** The rows side by side, as text. */
export function describeRows(rows: readonly ShownRow[]): string[] {
  return rows.flatMap(({ source, file, sheet, row, column, became, fields }) => {
    const width = Math.min(36, Math.max(0, ...fields.map(({ raw }) => raw.length)));
    return [
      `${source}: ${file}${sheet === null ? '' : `, sheet ${sheet}`}, row ${row}${column === undefined ? '' : `, column ${column}`}: ${became}`,
      ...fields.map(({ field, raw, understood }) => {
        const shown = raw.replace(/\p{Cc}+/gu, ' ');
        const cut = shown.length > 36 ? `${shown.slice(0, 35)}…` : shown;
        return `    ${cut.padEnd(width)}  ${understood === null ? 'not taken as' : '->'} ${field}${understood === null ? '' : `: ${understood.replace(/\p{Cc}+/gu, ' ')}`}`;
      }),
    ];
  });
}
