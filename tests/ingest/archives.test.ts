import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
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

  it('that are damaged lose what is damaged and never stop the run', async () => {
    const whole = { 'cycles-1.csv': bytes(table(...Array.from({ length: 40 }, (_, at) => at + 10))) };
    const packed = { gz: gzipSync(whole['cycles-1.csv']), zip: zip(whole) };
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('gz' as const, 'zip' as const),
        fc.nat(10_000),
        fc.array(fc.tuple(fc.nat(10_000), fc.nat(255)), { maxLength: 3 }),
        async (kind, cut, changes) => {
          const damaged = Uint8Array.from(packed[kind]);
          for (const [at, value] of changes) damaged[at % damaged.length] = value;
          const end = damaged.length - (cut % damaged.length);
          const { records } = await readFiles({
            [kind === 'gz' ? 'cycles-1.csv.gz' : 'c.zip']: damaged.slice(0, end),
          });
          expect(records.cycles.length).toBeLessThanOrEqual(40);
        },
      ),
      { numRuns: 60, seed: 2 },
    );
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
