import { describe, expect, it } from 'vitest';
import { brief, cyclesFrom, HEADER, readFiles, utc } from './read-folder.ts';
import { workbook } from './workbook.ts';

const text = (...lines: string[]): string => `${lines.join('\n')}\n`;

describe('a header in two rows', () => {
  const lines = [
    'Sterile department;;;;;',
    'Unit;Cycle;;Programme;Result;Heat-up',
    ';Begin;End;;;s',
    'S1;2025-03-03 06:30;2025-03-03 07:00;production;completed;95',
    'Unit;Cycle;;Programme;Result;Heat-up',
    ';Begin;End;;;s',
    'S1;2025-03-03 08:30;2025-03-03 09:00;production;completed;96',
  ];
  const source = cyclesFrom({
    header_rows: 2,
    columns: {
      unit: 'Unit',
      start: 'Cycle Begin',
      end: 'Cycle End',
      kind: 'Programme',
      outcome: 'Result',
      heat_up_s: 'Heat-up s',
    },
  });

  it('is joined from above and below, and may be repeated', async () => {
    const { records, problems, files } = await readFiles({ 'cycles.csv': text(...lines) }, source);
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ heat_up_s, end }) => [heat_up_s, end])).toEqual([
      [95, utc('2025-03-03T06:00:00Z')],
      [96, utc('2025-03-03T08:00:00Z')],
    ]);
    expect(files[0]).toMatchObject({ rows: 4, records: 2, skipped: 2, preamble: 1 });
  });

  it('is not found where the lower row is missing', async () => {
    const { problems } = await readFiles({ 'cycles.csv': text(...lines.slice(0, 2)) }, source);
    expect(problems.map(({ code }) => code)).toEqual(['header_not_found']);
  });
});

describe('comment lines', () => {
  it('are skipped where the site says how they begin, even with an open quote', async () => {
    const { files, problems } = await readFiles(
      {
        'cycles.csv': text(
          '# log',
          HEADER,
          '# by hand, see book',
          'S1,2025-03-03 06:30,,production,completed,1,,',
        ),
      },
      cyclesFrom({ comment: '#' }),
    );
    expect(problems).toEqual([]);
    expect(files[0]).toMatchObject({ rows: 2, records: 1, skipped: 1, preamble: 1 });
  });
});

describe('days as a spreadsheet counts them', () => {
  // ECMA-376 Part 1, 18.17.4.1: 1 January 2000 is 36526 counted from 1900; 1462 days less counted from 1904.
  it.each([
    ['serial 1900', '36526.25', '36527'],
    ['serial 1904', '35064.25', '35065'],
  ])('%s', async (dates, withTime, dayOnly) => {
    const row = (start: string) => `S1,${start},,production,completed,,,`;
    const { records } = await readFiles(
      { 'cycles.csv': text(HEADER, row(withTime), row(dayOnly)) },
      cyclesFrom({ dates }),
    );
    expect(records.cycles.map(({ start, time_mark }) => [start, time_mark])).toEqual([
      [utc('2000-01-01T05:00:00Z'), 'time'],
      [utc('2000-01-02T03:00:00Z'), 'day'],
    ]);
  });

  it('may be numbers of a workbook, to the second', async () => {
    const at = 45719 + (6 * 3600 + 30 * 60 + 7) / 86_400;
    const file = await workbook([
      { name: 'Log', rows: [HEADER.split(','), ['S1', at, null, 'production', 'completed', 1, null, null]] },
    ]);
    const source = { files: 'cycles.xlsx', dates: 'serial 1900' };
    const { records } = await readFiles({ 'cycles.xlsx': file }, cyclesFrom(source));
    expect(records.cycles[0]!.start).toBe(utc('2025-03-03T05:30:07Z'));
  });

  it('are refused where they are none', async () => {
    const { problems } = await readFiles(
      {
        'cycles.csv': text(HEADER, 'S1,2025-03-03,,production,completed,,,', 'S1,4,,production,completed,,,'),
      },
      cyclesFrom({ dates: 'serial 1900' }),
    );
    expect(problems.map(brief)).toEqual(['bad_time row 2 start', 'clock_reset row 3 start']);
  });
});

describe('a clock that the site says is wrong', () => {
  it('is corrected in times and not in dates alone', async () => {
    const rows = [
      'S1,2025-03-03 06:30,2025-03-03T06:00:00Z,production,completed,,,',
      'S1,2025-03-04,,production,completed,,,',
    ];
    const { records } = await readFiles(
      { 'cycles.csv': text(HEADER, ...rows) },
      cyclesFrom({ clock_offset_minutes: 12 }),
    );
    expect(records.cycles.map(({ start }) => start)).toEqual([
      utc('2025-03-03T05:18:00Z'),
      utc('2025-03-04T03:00:00Z'),
    ]);
    expect(records.cycles[0]!.end).toBe(utc('2025-03-03T05:48:00Z'));
  });
});

describe('columns that share a header', () => {
  const file = {
    'cycles.csv': text(
      'Unit,Date,Time,Date,Time,kind,outcome',
      'S1,2025-03-03,06:30,2025-03-03,07:10,production,completed',
    ),
  };
  const read = (start: string[], end: string[]) =>
    readFiles(file, cyclesFrom({ columns: { unit: 'Unit', start, end } }));

  it('are told apart by their number', async () => {
    const { records, problems } = await read(['Date (1)', 'Time (1)'], ['date (2)', 'TIME (2)']);
    expect(problems).toEqual([]);
    expect([records.cycles[0]!.start, records.cycles[0]!.end]).toEqual([
      utc('2025-03-03T05:30:00Z'),
      utc('2025-03-03T06:10:00Z'),
    ]);
  });

  it('are a problem where the site does not say which it means', async () => {
    const { records, problems } = await read(['Date', 'Time'], ['Date (2)', 'Time (2)']);
    expect(records.cycles).toEqual([]);
    expect(problems.map(brief)).toEqual(['repeated_header file 1 Date']);
    expect(problems[0]!.expected).toContain('as "Date (2)"');
  });

  it('do not take the name of a column that is called so', async () => {
    const { records } = await readFiles(
      {
        'cycles.csv': text(
          'Unit,Unit,Unit (2),start,kind,outcome',
          'a,b,c,2025-03-03 06:30,production,completed',
        ),
      },
      cyclesFrom({ columns: { unit: 'Unit (2)' } }),
    );
    expect(records.cycles[0]!.unit).toBe('c');
  });
});
