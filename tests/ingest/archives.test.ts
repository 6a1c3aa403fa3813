import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { declaredChecks, isWhole } from '../../pipeline/ingest/zip-checks.ts';
import { BERLIN, brief, cyclesFrom, HEADER, ROW, readFiles } from './read-folder.ts';
import { workbook } from './workbook.ts';

const table = (...numbers: number[]): string =>
  [HEADER, ...numbers.map((number) => `S1,2025-03-03 06:${number},,production,completed,${number},,`)].join(
    '\n',
  );
const bytes = (content: string): Uint8Array => new TextEncoder().encode(content);
const zip = (files: Record<string, Uint8Array>): Uint8Array =>
  zipSync(files, { mtime: Date.UTC(2000, 0, 2) });
const numbers = ({ records }: Awaited<ReturnType<typeof readFiles>>): (number | undefined)[] =>
  records.cycles.map(({ cycle_number }) => cycle_number);

describe('archives', () => {
  it('are read as folders; packed files as what they hold', async () => {
    const sheet = await workbook([
      {
        name: 'A',
        rows: table(13)
          .split('\n')
          .map((line) => line.split(',')),
      },
    ]);
    const reading = await readFiles({
      'cycles-1.csv.gz': gzipSync(table(10)),
      'year.zip': zip({
        'q1/cycles-2.csv': bytes(table(11)),
        'q1/cycles-3.csv.gz': gzipSync(table(12)),
        'cycles-4.xlsx': sheet,
        'more.ZIP': zip({ 'cycles-5.csv': bytes(table(14)) }),
        '__MACOSX/cycles-2.csv': bytes('x'),
        'q1/.cycles-9.csv': bytes('x'),
        'empty/': new Uint8Array(),
      }),
    });
    expect(reading.problems).toEqual([]);
    expect(numbers(reading)).toEqual([10, 11, 12, 13, 14]);
    expect(reading.files.map(({ file }) => file)).toEqual([
      'cycles-1.csv.gz',
      'year.zip/cycles-4.xlsx',
      'year.zip/more.ZIP/cycles-5.csv',
      'year.zip/q1/cycles-2.csv',
      'year.zip/q1/cycles-3.csv.gz',
    ]);
  });

  it('give the unit from the name of a packed file', async () => {
    const { records } = await readFiles(
      { 'log-S9.csv.gz': gzipSync(table(10)) },
      cyclesFrom({ files: 'log-*.csv', columns: { unit: { file_name: 'log-*.csv' } } }),
    );
    expect(records.cycles[0]!.unit).toBe('S9');
  });

  it('hold names that lead out of them: refused, whatever way they are written', async () => {
    const hostile = [
      '../cycles-1.csv',
      '/etc/cycles-1.csv',
      'a/../../cycles-1.csv',
      'C:\\cycles-1.csv',
      '..\\cycles-1.csv',
      'a//cycles-1.csv',
    ];
    for (const name of hostile) {
      const { records, problems } = await readFiles({ 'a.zip': zip({ [name]: bytes(table(10)) }) });
      expect(records.cycles, name).toEqual([]);
      expect(problems.map(brief), name).toEqual(['unreadable_file file  ']);
      expect(problems[0]!.value).toBe(name);
    }
  });

  it('that would fill memory are refused: ratio, size, count, depth', async () => {
    const zeros = new Uint8Array(3_000_000);
    const bomb = await readFiles({
      'b.zip': zip({ 'cycles-1.csv': zeros, 'cycles-2.csv': bytes(table(10)) }),
    });
    expect(bomb.problems.map(({ file, expected }) => [file, expected])).toEqual([
      ['b.zip/cycles-1.csv', 'a file at most 300 times as large as it is packed'],
    ]);
    expect(numbers(bomb)).toEqual([10]);

    const packed = await readFiles({ 'cycles-1.csv.gz': gzipSync(zeros) });
    expect(packed.problems[0]!.expected).toContain('at most 300 times');

    const many = Object.fromEntries(
      Array.from({ length: 30 }, (_, at) => [`cycles-${at}.csv`, bytes(table(10))]),
    );
    const limited = (archives: object) => ({ ...BERLIN, archives });
    for (const [archives, message] of [
      [{ entries: 29 }, 'at most 29 files'],
      [{ unpacked_bytes: 1000 }, 'at most 1000 bytes unpacked'],
      [{ file_bytes: 100 }, 'an archive of at most 100 bytes'],
      [{ depth: 0 }, 'at most 0 deep'],
    ] as const) {
      const reading = await readFiles({ 'm.zip': zip(many) }, limited(archives));
      expect(reading.problems[0]!.expected, message).toContain(message);
      expect(reading.records.cycles).toEqual([]);
    }
    expect((await readFiles({ 'm.zip': zip(many) }, limited({ entries: 30 }))).problems).toEqual([]);

    const deep = [1, 2, 3].reduce(
      (inner) => zip({ 'in.zip': inner }),
      zip({ 'cycles-1.csv': bytes(table(10)) }),
    );
    expect((await readFiles({ 'd.zip': deep })).problems[0]!.expected).toContain('at most 2 deep');
  });

  it('cut off anywhere are refused whole, with one problem', async () => {
    const rows = bytes(table(...Array.from({ length: 40 }, (_, at) => at + 10)));
    const sheet = await workbook([
      {
        name: 'A',
        rows: table(13)
          .split('\n')
          .map((line) => line.split(',')),
      },
    ]);
    for (const [name, whole] of [
      ['cycles-1.csv.gz', gzipSync(rows)],
      ['c.zip', zip({ 'cycles-1.csv': rows })],
      ['cycles-1.xlsx', sheet],
    ] as const) {
      expect((await readFiles({ [name]: whole })).records.cycles.length).toBeGreaterThan(0);
      const step = Math.max(1, Math.floor(whole.length / 40));
      for (let end = 1; end < whole.length; end += step) {
        const { records, problems } = await readFiles({ [name]: whole.subarray(0, end) });
        expect(records.cycles, `${name} cut at ${end}`).toEqual([]);
        const told = problems.filter(({ code }) => code !== 'no_file');
        expect(told.map(brief), `${name} cut at ${end}`).toEqual(['unreadable_file file  ']);
      }
    }
  });

  it('that are damaged anywhere give all their records or none, never others', async () => {
    const rows = bytes(table(...Array.from({ length: 40 }, (_, at) => at + 10)));
    const sheet = await workbook([
      {
        name: 'A',
        rows: table(...Array.from({ length: 40 }, (_, at) => at + 10))
          .split('\n')
          .map((line) => line.split(',')),
      },
    ]);
    const packed = {
      'cycles-1.csv.gz': gzipSync(rows),
      'c.zip': zip({ 'cycles-1.csv': rows }),
      's.zip': zipSync({ 'cycles-1.csv': rows }, { level: 0, mtime: Date.UTC(2000, 0, 2) }),
      'cycles-1.xlsx': sheet,
    };
    for (const [name, whole] of Object.entries(packed)) {
      const all = (await readFiles({ [name]: whole })).records.cycles;
      expect(all, name).toHaveLength(40);
      await fc.assert(
        fc.asyncProperty(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), async (at, change) => {
          const damaged = Uint8Array.from(whole);
          damaged[at] = damaged[at]! ^ change;
          const { records } = await readFiles({ [name]: damaged });
          if (records.cycles.length > 0) expect(records.cycles).toEqual(all);
        }),
        { numRuns: 60, seed: 2 },
      );
    }
  });

  it('declare check sums as an unpacking library of its own computes them', () => {
    // The check value of CRC-32 (ISO 3309): "123456789" has cbf43926.
    const archive = zip({ a: bytes('123456789'), b: bytes('') });
    expect(declaredChecks(archive)).toEqual([0xcbf43926, 0]);
    expect(declaredChecks(archive.subarray(0, archive.length - 30))).toBeUndefined();
    expect([isWhole(bytes('123456789'), 0xcbf43926), isWhole(bytes('123456788'), 0xcbf43926)]).toEqual([
      true,
      false,
    ]);
  });

  it('two files of one name in an archive: the second is refused', async () => {
    const two = zip({ 'cycles-1.csv': bytes(table(10)), 'cycles-2.csv': bytes(table(11)) });
    const same = Buffer.from(
      Buffer.from(two).toString('latin1').replaceAll('cycles-2', 'cycles-1'),
      'latin1',
    );
    const reading = await readFiles({ 'a.zip': same });
    expect(numbers(reading)).toEqual([10]);
    expect(reading.problems.map(({ expected }) => expected)).toEqual([
      'one file of this name in the archive',
    ]);
  });

  it('are seen where a pattern names what is in them, with or without .gz', async () => {
    const files = { 'a.zip': zip({ 'x.csv.gz': gzipSync(`${HEADER}\n${ROW}`) }) };
    for (const pattern of ['a.zip/x.csv', 'a.zip/x.csv.gz', '**/x.*'])
      expect((await readFiles(files, cyclesFrom({ files: pattern }))).problems).toEqual([]);
  });
});
