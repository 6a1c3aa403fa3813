// Over 300 lines: every kind of bad input, one case each.
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { ReadProgress } from '../../pipeline/ingest/read-files.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, brief, cyclesFrom, HEADER, ROW, readFiles, utc } from './read-folder.ts';

const text = (...lines: string[]): string => `${lines.join('\n')}\n`;

describe('a source by default', () => {
  it('reads files named by kind, with columns named as the fields', async () => {
    const content = text(HEADER, ROW);
    const { records, problems, files } = await readFiles({
      'a/cycles-2025.csv': content,
      'air-removal-tests.tsv': text(
        'time\tunit\tresult\tnote',
        '2025-03-03 06:00\tS1\tPass\t=1+1 <b>"x"</b>',
      ),
    });
    expect(problems).toEqual([]);
    expect(records.cycles).toEqual([
      {
        unit: 'S1',
        start: utc('2025-03-03T05:30:00Z'),
        kind: 'production',
        outcome: 'completed',
        end: utc('2025-03-03T06:00:00Z'),
        cycle_number: 17,
        heat_up_s: 95,
        time_mark: 'time',
        origin: { source: 'cycles', file: 'a/cycles-2025.csv', sheet: null, row: 2 },
      },
    ]);
    expect(records.air_removal_tests).toMatchObject([{ result: 'pass', note: '=1+1 <b>"x"</b>' }]);
    expect(files[0]).toEqual({
      source: 'cycles',
      kind: 'cycles',
      file: 'a/cycles-2025.csv',
      sheet: null,
      bytes: Buffer.byteLength(content),
      sha256: createHash('sha256').update(content).digest('hex'),
      rows: 1,
      records: 1,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      preamble: 0,
      cells_lost: 0,
    });
  });

  it('says nothing of kinds without a file', async () => {
    expect(await readFiles({ 'readme.txt': 'x' })).toMatchObject({ problems: [], files: [] });
  });
});

describe('a declared source', () => {
  const LOG = text(
    'Steam log of unit 7;;;;;;;',
    '',
    'Printed;03.03.2025;;;;;;',
    'Datum;Zeit;Ende;Programm;Ergebnis;Druck [bar];Temp. min;Luft',
    '03.03.2025;06:30;03.03.2025 07:00;Leerfahrt;o.k.;2,15;134,2;x',
    'Datum;Zeit;Ende;Programm;Ergebnis;Druck [bar];Temp. min;Luft',
    '03.03.2025;08:30;03.03.2025 09:00;Instrumente;Abbruch;2,1;273,2;x',
    'Summe;2;;;;;;',
  );
  const SITE: SiteFileInput = {
    sites: [{ zone: 'Europe/Berlin', barometric_pressure_kpa: 98 }],
    sources: [
      {
        kind: 'cycles',
        files: 'log-*.txt',
        decimal_mark: ',',
        dates: 'dd.MM.yyyy HH:mm',
        columns: {
          unit: { file_name: 'log-*.txt' },
          start: ['Datum', 'Zeit'],
          end: 'Ende',
          kind: 'Programm',
          outcome: 'ergebnis',
          abort_text: { always: 'none' },
          exposure_pressure_kpa: { column: 'Druck  [bar]', measure: 'bar gauge' },
          exposure_temperature_min_c: 'Temp. min',
        },
        values: {
          kind: { warm_up: 'Leerfahrt', production: ['Instrumente', 'Wäsche'] },
          outcome: { completed: 'O.K.', aborted: 'Abbruch' },
        },
        skip: { Datum: ['Summe'] },
      },
    ],
  };

  it('joins columns, takes values from the file name and constants, maps words, converts measures', async () => {
    const { records, problems, files } = await readFiles({ 'log-Unit 7.txt': LOG }, SITE);
    expect(records.cycles).toEqual([
      {
        unit: 'Unit 7',
        start: utc('2025-03-03T05:30:00Z'),
        kind: 'warm_up',
        outcome: 'completed',
        end: utc('2025-03-03T06:00:00Z'),
        abort_text: 'none',
        exposure_pressure_kpa: 313,
        exposure_temperature_min_c: 134.2,
        time_mark: 'time',
        origin: { source: 'cycles 1', file: 'log-Unit 7.txt', sheet: null, row: 5 },
      },
      expect.objectContaining({ outcome: 'aborted', exposure_pressure_kpa: 308 }),
    ]);
    expect(problems.map(brief)).toEqual(['out_of_range cell 7 Temp. min']);
    expect(problems[0]).toMatchObject({ value: '273,2' });
    expect(files).toMatchObject([{ rows: 4, records: 2, skipped: 2, preamble: 2, cells_lost: 1 }]);
  });

  it('is found to be in another encoding by its declaration', async () => {
    const site = structuredClone(SITE);
    site.sources![0]!.encoding = 'windows-1252';
    const bytes = Buffer.from(LOG.replace('Instrumente', 'W\u00e4sche'), 'latin1');
    const { records } = await readFiles({ 'log-A.txt': bytes }, site);
    expect(records.cycles.map(({ kind }) => kind)).toEqual(['warm_up', 'production']);
  });

  it('never keeps a column that is not mapped', async () => {
    const reading = await readFiles(
      { 'cycles.csv': text(`${HEADER},operator,__proto__`, `${ROW},Jane Roe,x`) },
      BERLIN,
    );
    expect(JSON.stringify(reading)).not.toContain('Jane');
    expect(Object.keys(reading.records.cycles[0]!)).not.toContain('__proto__');
  });

  it('may read one file as two sources', async () => {
    const content = text(
      'unit,start,kind,outcome,leak',
      'S1,2025-03-03 05:30,leak_test,completed,1.1',
      'S1,2025-03-03 06:30,production,completed,',
    );
    const { records, files, problems } = await readFiles(
      { 'log.csv': content },
      {
        ...BERLIN,
        sources: [
          { kind: 'cycles', files: '*.csv' },
          {
            kind: 'leak_tests',
            files: ['log.csv', '*.csv'],
            columns: { time: 'start', leak_rate_kpa_min: { column: 'leak', measure: 'mbar per min' } },
            skip: { kind: ['Production'] },
          },
        ],
      },
    );
    expect(problems).toEqual([]);
    expect(records.cycles).toHaveLength(2);
    expect(records.leak_tests).toMatchObject([{ leak_rate_kpa_min: 0.11 }]);
    expect(files.map(({ source, rows, skipped }) => [source, rows, skipped])).toEqual([
      ['cycles 1', 2, 0],
      ['leak_tests 2', 2, 1],
    ]);
  });

  it('stops with a message for the site where a pattern, measure or mapping is at fault', async () => {
    const files = { 'cycles.csv': text(HEADER, ROW) };
    await expect(readFiles(files, cyclesFrom({ dates: 'DD.MM.YYYY' }))).rejects.toMatchObject({
      code: 'date_pattern',
    });
    await expect(
      readFiles(files, cyclesFrom({ columns: { heat_up_s: { column: 'heat_up_s', measure: 'F' } } })),
    ).rejects.toMatchObject({ code: 'site_file' });
    await expect(
      readFiles(files, cyclesFrom({ values: { outcome: { completed: 'x', failed: 'X' } } })),
    ).rejects.toMatchObject({ code: 'mapped_word' });
  });
});

describe('the delimiter', () => {
  it.each([[','], [';'], ['\t'], ['|']])('%j is found from the header', async (delimiter) => {
    const content = text('Report, made | by; the;log;;;;;;;;;;', HEADER, ROW).replaceAll(',', delimiter);
    const { records } = await readFiles({ 'cycles.csv': content });
    expect(records.cycles).toMatchObject([{ unit: 'S1', heat_up_s: 95 }]);
  });

  it('is taken as declared', async () => {
    const content = text(
      'unit;start;kind;outcome,x',
      'S1;2025-03-03 06:30;production;completed,y',
    ).replaceAll(';', '|');
    const { problems } = await readFiles({ 'cycles.csv': content }, cyclesFrom({ delimiter: ',' }));
    expect(problems.map(brief)).toEqual(['header_not_found file 1 ']);
    const { records } = await readFiles(
      { 'cycles.csv': content },
      cyclesFrom({
        delimiter: '|',
        columns: { outcome: 'outcome,x' },
        values: { outcome: { completed: 'completed,y' } },
      }),
    );
    expect(records.cycles).toHaveLength(1);
  });
});

describe('a date without a time', () => {
  it('is the opening of that operating day, marked as a day', async () => {
    const { records } = await readFiles({
      'cleanings.csv': text(
        'unit,task,time,state',
        'S1,chamber,2025-03-03,done',
        'S1,drain_strainer,2025-07-03,',
      ),
    });
    // 04:00 is 03:00 UTC in March and 02:00 UTC in July.
    expect(records.cleanings.map(({ time, time_mark, state }) => [time, time_mark, state])).toEqual([
      [utc('2025-03-03T03:00:00Z'), 'day', 'done'],
      [utc('2025-07-03T02:00:00Z'), 'day', undefined],
    ]);
  });
});

describe('units', () => {
  const site: SiteFileInput = {
    sites: [
      { id: 'north', zone: 'Europe/Berlin' },
      { id: 'south', zone: 'America/New_York' },
    ],
    units: [
      { id: 'N1', site: 'north', aliases: [{ name: 'Unit 1' }] },
      {
        id: 'S1',
        site: 'south',
        aliases: [
          { name: 'Unit 1', to: '2025-03-02' },
          { name: 'Unit 9', from: '2025-03-03' },
        ],
      },
    ],
    sources: [
      { kind: 'cycles', files: 'north.csv', site: 'north' },
      { kind: 'cycles', files: 'south.csv', site: 'south' },
    ],
  };

  it('are named within their site, on its clock, and by the name of the operating day', async () => {
    const row = (unit: string, start: string): string => `${unit},${start},,production,completed,1,,`;
    const { records, problems } = await readFiles(
      {
        'north.csv': text(HEADER, row('unit  1', '2025-03-03 06:30')),
        'south.csv': text(
          HEADER,
          row('Unit 1', '2025-03-02 06:30'),
          row('Unit 1', '2025-03-03 01:30'),
          row('Unit 1', '2025-03-03 06:30'),
          row('Unit 9', '2025-03-03 07:30'),
        ),
      },
      site,
    );
    expect(records.cycles.map(({ unit, start }) => [unit, new Date(start).toISOString()])).toEqual([
      ['N1', '2025-03-03T05:30:00.000Z'],
      ['S1', '2025-03-02T11:30:00.000Z'],
      ['S1', '2025-03-03T06:30:00.000Z'],
      ['S1', '2025-03-03T12:30:00.000Z'],
    ]);
    expect(problems.map(brief)).toEqual(['unknown_unit row 4 unit']);
  });
});

describe('the answer', () => {
  it('is the same whatever else is on the machine, and in order of unit, time and origin', async () => {
    const files = {
      'cycles-b.csv': text(HEADER, ROW, ROW.replace('S1', 'A').replace('17', '3')),
      'cycles-a.csv': text(HEADER, ROW.replace('06:30', '05:30'), ROW.replace('S1', 'Z').replace('17', '3')),
    };
    const first = await readFiles(files);
    expect(first.records.cycles.map(({ unit, origin }) => `${unit} ${origin.file} ${origin.row}`)).toEqual([
      'A cycles-b.csv 3',
      'S1 cycles-a.csv 2',
      'S1 cycles-b.csv 2',
      'Z cycles-a.csv 3',
    ]);
    expect(await readFiles(files)).toEqual(first);
  });

  it('tells how far reading has come', async () => {
    const steps: ReadProgress[] = [];
    const files = { 'cycles-a.csv': text(HEADER, ROW), 'cycles-b.csv': text(HEADER, ROW, ROW) };
    const [a, b] = [files['cycles-a.csv'].length, files['cycles-b.csv'].length];
    await readFiles(files, BERLIN, { onProgress: (step) => steps.push(step) });
    expect(steps.map(({ file, bytes }) => `${file} ${bytes}`)).toEqual([
      `cycles-a.csv ${a}`,
      `cycles-a.csv ${a}`,
      `cycles-b.csv ${a + b}`,
      `cycles-b.csv ${a + b}`,
    ]);
    expect(new Set(steps.map(({ source, all }) => `${source} ${all}`))).toEqual(new Set([`cycles ${a + b}`]));
  });

  it('has problems that say where, what was found and what was expected', async () => {
    const { problems } = await readFiles({ 'cycles.csv': text(HEADER, ROW.replace('06:30:00', '24:10')) });
    expect(problems).toMatchInlineSnapshot(`
      [
        {
          "code": "bad_time",
          "column": "start",
          "costs": "row",
          "expected": "a time of the calendar like 2024-03-01 06:30:00 (yyyy-MM-dd HH:mm:ss)",
          "file": "cycles.csv",
          "row": 2,
          "sheet": null,
          "source": "cycles",
          "value": "2025-03-03 24:10",
        },
      ]
    `);
  });
});
