// Over 300 lines: one writer for every supported style stands beside the properties that use it.
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, HEADER, ROW, withFolder } from './read-folder.ts';

/** Reads bytes as the one file of a folder, in pieces of the given size. */
let readBytes: (bytes: Uint8Array, site?: SiteFileInput, piece?: number, name?: string) => Promise<Reading>;
let close: () => void;

beforeAll(async () => {
  await new Promise<void>((ready) => {
    const until = new Promise<void>((done) => {
      close = done;
    });
    withFolder({ 'cycles.csv': '', 'cycles.xlsx': '' }, (folder) => {
      readBytes = (bytes, site = BERLIN, piece = 1 << 16, name = 'cycles.csv') =>
        readExports(readSiteFile(JSON.stringify(site), 'site.yaml'), folder, {
          ignore: [`${folder}/${name === 'cycles.csv' ? 'cycles.xlsx' : 'cycles.csv'}`],
          open: async function* () {
            for (let at = 0; at < bytes.length; at += piece) yield bytes.subarray(at, at + piece);
          },
        });
      ready();
      return until;
    });
  });
});
afterAll(() => close());

interface Written {
  start: number;
  minutes: number;
  unit: string;
  kind: string;
  number: number;
  heatUp: number;
  celsius: number;
  kilopascal: number;
  text: string;
}

/** Wall times of Berlin away from its clock changes, by the whole minute. */
const start = fc
  .tuple(fc.constantFrom(0, 1, 5, 6, 11), fc.integer({ min: 1, max: 28 }), fc.integer({ min: 0, max: 1439 }))
  .map(([month, day, minute]) => Date.UTC(2025, month, day, 0, minute));
const offsetHours = (wall: number): number => ([5, 6].includes(new Date(wall).getUTCMonth()) ? 2 : 1);

const cycle: fc.Arbitrary<Written> = fc.record({
  start,
  minutes: fc.integer({ min: 0, max: 300 }),
  unit: fc.constantFrom('S1', 'Gerät 2', 'Unit "3"', 'a;b,c|d'),
  kind: fc.constantFrom('production', 'liquids', 'warm_up', 'air_removal_test'),
  number: fc.integer({ min: 0, max: 99_999 }),
  heatUp: fc.integer({ min: 0, max: 3599 }),
  celsius: fc.integer({ min: 1000, max: 1400 }).map((tenths) => tenths / 10),
  kilopascal: fc.integer({ min: 10, max: 3300 }).map((tenths) => tenths / 10),
  text: fc.stringMatching(/^[A-Za-z0-9äöß€ ,;|"'<>=\n.-]{0,20}$/),
});

const DATES: Record<string, (date: Date) => string> = {
  'yyyy-MM-dd HH:mm:ss': (date) => date.toISOString().slice(0, 19).replace('T', ' '),
  'dd.MM.yyyy HH:mm': (date) => {
    const [year, month, day] = date.toISOString().slice(0, 10).split('-');
    return `${day}.${month}.${year} ${date.toISOString().slice(11, 16)}`;
  },
  'M/d/yyyy h:mm a': (date) => {
    const hour = date.getUTCHours();
    const minute = String(date.getUTCMinutes()).padStart(2, '0');
    return `${date.getUTCMonth() + 1}/${date.getUTCDate()}/${date.getUTCFullYear()} ${hour % 12 || 12}:${minute} ${hour < 12 ? 'AM' : 'PM'}`;
  },
  'd MMM yyyy HH:mm': (date) => {
    const name = new Intl.DateTimeFormat('de', { month: 'short', timeZone: 'UTC' }).format(date);
    return `${date.getUTCDate()} ${name} ${date.getUTCFullYear()} ${date.toISOString().slice(11, 16)}`;
  },
};
const TEMPERATURES = { C: (celsius: number) => celsius, F: (celsius: number) => celsius * 1.8 + 32 };
const PRESSURES = {
  'kPa absolute': (kilopascal: number) => kilopascal,
  'mbar gauge': (kilopascal: number) => (kilopascal - 101.325) * 10,
  'psi absolute': (kilopascal: number) => kilopascal / 6.894757293168,
  'inHg gauge': (kilopascal: number) => (kilopascal - 101.325) / 3.386388640341,
};
const DURATIONS = {
  s: (seconds: number) => String(seconds),
  'mm:ss': (seconds: number) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`,
  'hh:mm:ss': (seconds: number) => new Date(seconds * 1000).toISOString().slice(11, 19),
};

const style = fc.record({
  delimiter: fc.constantFrom(',' as const, ';' as const, '\t' as const, '|' as const),
  declared: fc.boolean(),
  quoteAll: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  lastLineEnd: fc.boolean(),
  mark: fc.boolean(),
  encoding: fc.constantFrom(
    'utf-8' as const,
    'utf-16le' as const,
    'utf-16be' as const,
    'windows-1252' as const,
  ),
  decimalMark: fc.constantFrom('.' as const, ',' as const),
  dates: fc.constantFrom(...Object.keys(DATES)),
  temperature: fc.constantFrom(...(Object.keys(TEMPERATURES) as (keyof typeof TEMPERATURES)[])),
  pressure: fc.constantFrom(...(Object.keys(PRESSURES) as (keyof typeof PRESSURES)[])),
  duration: fc.constantFrom(...(Object.keys(DURATIONS) as (keyof typeof DURATIONS)[])),
  preamble: fc.constantFrom('', 'Report of unit\n\nprinted today\n'),
  piece: fc.integer({ min: 1, max: 300 }),
});
type Style = typeof style extends fc.Arbitrary<infer T> ? T : never;

const COLUMNS = [
  'Unit',
  'Start',
  'End',
  'Kind',
  'Outcome',
  'No',
  'Heat',
  'Temp',
  'Press',
  'Text',
  'Operator',
];

function write(cycles: readonly Written[], given: Style): Buffer {
  const quote = (text: string): string => {
    const needed =
      given.quoteAll ||
      text !== text.trim() ||
      text.includes('"') ||
      text.includes('\n') ||
      text.includes(given.delimiter);
    return needed ? `"${text.replaceAll('"', '""')}"` : text;
  };
  const number = (value: number): string => String(Number(value.toFixed(9))).replace('.', given.decimalMark);
  const rows = cycles.map((of) => [
    of.unit,
    DATES[given.dates]!(new Date(of.start)),
    DATES[given.dates]!(new Date(of.start + of.minutes * 60_000)),
    of.kind,
    'completed',
    String(of.number),
    DURATIONS[given.duration](of.heatUp),
    number(TEMPERATURES[given.temperature](of.celsius)),
    number(PRESSURES[given.pressure](of.kilopascal)),
    of.text,
    'nobody',
  ]);
  const table = [COLUMNS, ...rows].map((row) => row.map(quote).join(given.delimiter)).join('\n');
  const text = (given.preamble + table + (given.lastLineEnd ? '\n' : '')).replaceAll('\n', given.lineEnd);
  return encode(text, given);
}

/** Bytes of windows-1252 where they differ from ISO 8859-1: of the characters used here the euro sign alone. */
function encode(text: string, { encoding, mark }: Pick<Style, 'encoding' | 'mark'>): Buffer {
  if (encoding === 'windows-1252') return Buffer.from(text.replaceAll('€', '\u0080'), 'latin1');
  const marked = mark ? `\ufeff${text}` : text;
  if (encoding === 'utf-8') return Buffer.from(marked);
  const little = Buffer.from(marked, 'utf16le');
  return encoding === 'utf-16le' ? little : little.swap16();
}

function siteOf(given: Style): SiteFileInput {
  const hasMark = given.mark && given.encoding !== 'windows-1252';
  return {
    ...BERLIN,
    sources: [
      {
        kind: 'cycles',
        files: 'cycles.csv',
        ...(given.declared ? { delimiter: given.delimiter } : {}),
        ...(hasMark || given.encoding === 'utf-8' ? {} : { encoding: given.encoding }),
        decimal_mark: given.decimalMark,
        dates: given.dates,
        columns: {
          unit: 'Unit',
          start: 'Start',
          end: 'End',
          kind: 'Kind',
          outcome: 'Outcome',
          cycle_number: 'No',
          heat_up_s: { column: 'Heat', measure: given.duration },
          exposure_temperature_min_c: { column: 'Temp', measure: given.temperature },
          exposure_pressure_kpa: { column: 'Press', measure: given.pressure },
          abort_text: 'Text',
        },
      },
    ],
  };
}

describe('a table written in any style', () => {
  it('is read back as the same records', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(cycle, {
          minLength: 1,
          maxLength: 12,
          selector: ({ unit, start: at, number }) => `${unit} ${at} ${number}`,
        }),
        style,
        async (cycles, given) => {
          const { records, problems, files } = await readBytes(
            write(cycles, given),
            siteOf(given),
            given.piece,
          );
          expect(problems).toEqual([]);
          expect(files).toMatchObject([{ rows: cycles.length, records: cycles.length }]);
          const found = new Map(
            records.cycles.map((record) => [`${record.unit} ${record.start} ${record.cycle_number}`, record]),
          );
          for (const of of cycles) {
            const at = of.start - offsetHours(of.start) * 3_600_000;
            const { origin: _, ...record } = found.get(`${of.unit} ${at} ${of.number}`)!;
            // Conversions there and back, with nine decimals written, agree to a few parts in 1e9.
            expect(record.exposure_temperature_min_c).toBeCloseTo(of.celsius, 7);
            expect(record.exposure_pressure_kpa).toBeCloseTo(of.kilopascal, 6);
            const text = of.text.trim();
            expect({ ...record, exposure_temperature_min_c: 0, exposure_pressure_kpa: 0 }).toEqual({
              unit: of.unit,
              start: at,
              end: at + of.minutes * 60_000,
              kind: of.kind,
              outcome: 'completed',
              cycle_number: of.number,
              heat_up_s: of.heatUp,
              exposure_temperature_min_c: 0,
              exposure_pressure_kpa: 0,
              ...(text === '' ? {} : { abort_text: text }),
              time_mark: 'time',
            });
          }
        },
      ),
      { seed: 7, numRuns: 150 },
    );
  });

  it('loses at most its last row when it is cut anywhere', async () => {
    const rows = Array.from(
      { length: 6 },
      (_, at) =>
        ROW.replace('17', String(at)).replace('06:30', `06:3${at}`) +
        (at % 2 ? '"door, ""A""\nopen"' : 'steam'),
    );
    const whole = Buffer.from([HEADER, ...rows].join('\n'));
    const complete = (await readBytes(whole)).records.cycles;
    expect(complete).toHaveLength(6);
    const ends = rows.map((_, at) => Buffer.byteLength([HEADER, ...rows.slice(0, at + 1)].join('\n')));
    for (let length = 0; length <= whole.length; length++) {
      const { records, files } = await readBytes(whole.subarray(0, length));
      const wholeRows = ends.filter((end) => end <= length).length;
      expect(records.cycles.slice(0, wholeRows), `cut at ${length}`).toEqual(complete.slice(0, wholeRows));
      expect(records.cycles.length - wholeRows, `cut at ${length}`).toBeLessThanOrEqual(1);
      expect(files[0]!.records).toBe(records.cycles.length);
    }
  });
});

describe('bytes that are no table', () => {
  const cells = fc.constantFrom(
    ...HEADER.split(','),
    ...ROW.split(','),
    '"',
    '""',
    '\n',
    '\r',
    ',',
    ';',
    '\t',
    '\0',
    '\ufeff',
    '=1+1',
    '__proto__',
    '9'.repeat(400),
    '-',
    '2025-10-26 02:30',
    '2025-03-30 02:30',
    'S1,2025-10-26 02:30:00,2025-10-26 02:10:00,production,completed,',
  );
  const soup = fc.array(cells, { maxLength: 60 }).map((parts) => Buffer.from(parts.join('')));
  const broken = fc
    .tuple(soup, soup)
    .map(([a, b]) => Buffer.concat([Buffer.from(`${HEADER}\n${ROW}\n`), a, Buffer.from('\n'), b]));

  it.each(['cycles.csv', 'cycles.xlsx'])(
    'never stop the reading of %s, and the counts add up',
    async (name) => {
      await fc.assert(
        fc.asyncProperty(
          fc.oneof(fc.uint8Array({ maxLength: 400 }).map(Buffer.from), soup, broken),
          fc.integer({ min: 1, max: 50 }),
          fc.constantFrom(undefined, 'utf-16le' as const, 'windows-1252' as const),
          async (bytes, piece, encoding) => {
            const site: SiteFileInput = {
              ...BERLIN,
              sources: [{ kind: 'cycles', files: ['*.csv', '*.xlsx'], ...(encoding ? { encoding } : {}) }],
            };
            const { files, problems, records } = await readBytes(bytes, site, piece, name);
            const [read] = files;
            expect(read!.rows).toBe(read!.records + read!.duplicates + read!.rejected + read!.skipped);
            expect(records.cycles).toHaveLength(read!.records);
            expect(problems.filter(({ costs }) => costs === 'row')).toHaveLength(read!.rejected);
            expect(problems.filter(({ costs, row }) => costs === 'cell' && row !== null)).toHaveLength(
              read!.cells_lost,
            );
            if (read!.rows === 0) expect(problems.some(({ costs }) => costs === 'file')).toBe(true);
          },
        ),
        { seed: 11, numRuns: 300 },
      );
    },
  );
});
