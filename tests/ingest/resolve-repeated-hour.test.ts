import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import type { Cycle } from '../../pipeline/site/records.ts';
import { brief, readFiles } from './read-folder.ts';

const HEADER = 'unit,start,end,kind,outcome,cycle_number';
type Row = [number: number | '', start: string, end?: string, outcome?: string];

async function read(
  zone: string,
  rows: Row[],
  more: Row[] = [],
): Promise<{ cycles: Cycle[]; problems: string[] }> {
  const csv = (list: Row[]): string =>
    [
      HEADER,
      ...list.map(
        ([number, start, end = '', outcome = 'completed']) =>
          `S1,${start},${end},production,${outcome},${number}`,
      ),
    ].join('\n');
  const { records, problems } = await readFiles(
    { 'cycles-1.csv': csv(rows), ...(more.length > 0 ? { 'cycles-2.csv': csv(more) } : {}) },
    { sites: [{ zone }] },
  );
  return { cycles: records.cycles, problems: problems.map(brief) };
}

/** What a test says of a cycle: number, UTC start and end without the date, mark. */
const told = ({ cycle_number, start, end, time_mark }: Cycle): string =>
  [cycle_number ?? '-', clock(start), end === undefined ? '-' : clock(end), time_mark].join(' ');
const clock = (instant: number): string => new Date(instant).toISOString().slice(11, 16);

/** The reading of a wall time by Temporal itself. */
const temporal = (zone: string, text: string, disambiguation: 'earlier' | 'later'): number =>
  Temporal.PlainDateTime.from(text).toZonedDateTime(zone, { disambiguation }).epochMilliseconds;

// Clocks go back at 03:00 to 02:00 on 2025-10-26 in Berlin (CEST +2 to CET +1): 02:30 is 00:30Z, then 01:30Z.
describe('clocks back in Berlin', () => {
  const day = '2025-10-26';
  const at = (time: string): string => `${day} ${time}`;

  it('decides by the numbers of the cycles before and after', async () => {
    const { cycles } = await read('Europe/Berlin', [
      [1, at('01:20'), at('01:50')],
      [2, at('02:10'), at('02:40')],
      [3, at('02:50'), at('02:20')],
      [4, at('02:30'), at('02:55')],
      [5, at('03:10'), at('03:40')],
    ]);
    expect(cycles.map(told)).toEqual([
      '1 23:20 23:50 time',
      '2 00:10 00:40 time',
      '3 00:50 01:20 time',
      '4 01:30 01:55 time',
      '5 02:10 02:40 time',
    ]);
    expect(cycles[3]!.start).toBe(temporal('Europe/Berlin', `${day}T02:30`, 'later'));
  });

  it('decides in whatever order the rows stand', async () => {
    const rows: Row[] = [
      [4, at('02:30'), at('02:55')],
      [2, at('02:10'), at('02:40')],
      [3, at('02:50'), at('02:20')],
    ];
    expect((await read('Europe/Berlin', rows)).cycles.map(told)).toEqual([
      '2 00:10 00:40 time',
      '3 00:50 01:20 time',
      '4 01:30 01:55 time',
    ]);
  });

  it('decides by the own end alone', async () => {
    const { cycles } = await read('Europe/Berlin', [['', at('02:50'), at('02:10')]]);
    expect(cycles.map(told)).toEqual(['- 00:50 01:10 time']);
  });

  it('decides without numbers where the unit was busy at the other reading', async () => {
    const { cycles } = await read('Europe/Berlin', [
      ['', at('01:30'), at('02:50')],
      ['', at('02:20'), at('02:40')],
      ['', at('03:00'), at('03:30')],
    ]);
    // The first may have ended at 00:50Z or 01:50Z; the second fits behind the first only in the second hour.
    expect(cycles.map(told)).toEqual(['- 23:30 00:50 time', '- 01:20 01:40 time', '- 02:00 02:30 time']);
  });

  it('keeps the earlier reading and the mark where nothing decides', async () => {
    const { cycles } = await read('Europe/Berlin', [
      [1, at('01:00'), at('01:30')],
      [2, at('02:10'), at('02:30')],
      [3, at('03:10'), at('03:40')],
    ]);
    expect(cycles.map(told)).toEqual(['1 23:00 23:30 time', '2 00:10 00:30 ambiguous', '3 02:10 02:40 time']);
  });

  it('gives a cycle across the change its real length', async () => {
    const { cycles } = await read('Europe/Berlin', [[1, at('01:30'), at('03:15')]]);
    // 01:30 CEST to 03:15 CET are two hours and 45 minutes.
    expect((cycles[0]!.end! - cycles[0]!.start) / 60_000).toBe(165);
  });

  it('puts the end in the second hour where the next cycle leaves no choice', async () => {
    const { cycles } = await read('Europe/Berlin', [
      [1, at('01:50'), at('02:15')],
      [2, at('02:05'), at('02:50')],
    ]);
    // Number 2 starts after number 1 has ended: 01:05Z.
    expect(cycles.map(told)).toEqual(['1 23:50 00:15 time', '2 01:05 01:50 time']);
  });

  it('is not misled by a counter that rolls over', async () => {
    const { cycles } = await read('Europe/Berlin', [
      [9998, at('01:20'), at('01:50')],
      [9999, at('02:10'), at('02:40')],
      [0, at('02:50'), at('02:15')],
      [1, at('02:20'), at('02:45')],
    ]);
    expect(cycles.map(told)).toEqual([
      '9998 23:20 23:50 time',
      '9999 00:10 00:40 time',
      '0 00:50 01:15 time',
      '1 01:20 01:45 time',
    ]);
  });

  it('is not misled by a counter that is set back', async () => {
    const { cycles } = await read('Europe/Berlin', [
      [3, '2025-10-25 20:00', '2025-10-25 20:40'],
      [4, '2025-10-25 22:00', '2025-10-25 22:40'],
      [1, at('00:10'), at('00:40')],
      [2, at('02:20'), at('02:45')],
      [3, at('06:00'), at('06:30')],
    ]);
    // Read by number, 2 would lie before 3 and 4 of the evening; the numbers of the night contradict the times, so they are left.
    expect(cycles.map(told)[3]).toBe('2 00:20 00:45 ambiguous');
    expect(cycles).toHaveLength(5);
  });

  it('decides alike for all rows of a cycle, so that they stay duplicates', async () => {
    const rows: Row[] = [
      [2, at('02:10'), at('02:40')],
      [3, at('02:50'), at('02:20')],
      [4, at('02:30'), at('02:55')],
    ];
    const { cycles, problems } = await read('Europe/Berlin', rows, [
      [4, at('02:30'), '', 'running'],
      ...rows,
    ]);
    expect(problems).toEqual([]);
    expect(cycles.map(told)).toEqual(['2 00:10 00:40 time', '3 00:50 01:20 time', '4 01:30 01:55 time']);
  });

  it('keeps two cycles of the same written start apart', async () => {
    const numbered = await read('Europe/Berlin', [
      [7, at('02:10'), at('02:40')],
      [8, at('02:10'), at('02:40')],
    ]);
    expect(numbered.cycles.map(told)).toEqual(['7 00:10 00:40 time', '8 01:10 01:40 time']);
    const unnumbered = await read('Europe/Berlin', [
      ['', at('02:10'), at('02:40')],
      ['', at('02:10'), at('02:45')],
    ]);
    expect(unnumbered.cycles).toHaveLength(2);
  });

  it('leaves a time with an offset as it is', async () => {
    const { cycles } = await read('Europe/Berlin', [[1, `${day}T02:30:00+01:00`, `${day}T02:55:00+01:00`]]);
    expect(cycles.map(told)).toEqual(['1 01:30 01:55 time']);
  });

  it('marks other records of the hour as ambiguous', async () => {
    const { records } = await readFiles({
      'air-removal-tests.csv': `unit,time,result\nS1,${at('02:30')},pass\n`,
    });
    expect(records.air_removal_tests).toMatchObject([
      { time: temporal('Europe/Berlin', `${day}T02:30`, 'earlier'), time_mark: 'ambiguous' },
    ]);
  });
});

describe.each([
  // 2025-11-02 02:00 EDT to 01:00 EST; 2025-04-06 02:00 +11 to 01:30 +10:30; 2025-10-26 02:00 BST to 01:00 GMT.
  ['America/New_York', '2025-11-02', '01:30', 60],
  ['Australia/Lord_Howe', '2025-04-06', '01:45', 30],
  ['Europe/London', '2025-10-26', '01:30', 60],
])('clocks back in %s', (zone, day, time, minutes) => {
  it('has two readings, which the neighbour decides', async () => {
    const at = `${day} ${time}`;
    const alone = await read(zone, [[1, at]]);
    expect(alone.cycles).toMatchObject([
      { start: temporal(zone, `${day}T${time}`, 'earlier'), time_mark: 'ambiguous' },
    ]);
    const { cycles } = await read(zone, [
      [1, at],
      [2, at],
    ]);
    expect(cycles.map(({ start }) => start)).toEqual([
      temporal(zone, `${day}T${time}`, 'earlier'),
      temporal(zone, `${day}T${time}`, 'later'),
    ]);
    expect(cycles[1]!.start - cycles[0]!.start).toBe(minutes * 60_000);
  });
});

describe('clocks forward', () => {
  // 2025-03-30 02:00 CET to 03:00 CEST.
  it('moves a time that never occurred on, and marks it', async () => {
    const { cycles, problems } = await read('Europe/Berlin', [[1, '2025-03-30 02:30', '2025-03-30 04:00']]);
    expect(cycles.map(told)).toEqual(['1 01:30 02:00 shifted']);
    expect(cycles[0]!.start).toBe(temporal('Europe/Berlin', '2025-03-30T02:30', 'later'));
    expect(problems).toEqual([]);
  });

  it('reads the end on the old clock where the clock had not been put forward yet', async () => {
    const { cycles, problems } = await read('Europe/Berlin', [[1, '2025-03-30 02:30', '2025-03-30 03:10']]);
    // 02:30 to 03:10 on a clock still on CET: 01:30Z to 02:10Z.
    expect(cycles.map(told)).toEqual(['1 01:30 02:10 shifted']);
    expect(problems).toEqual([]);
  });

  it('gives a cycle across the change its real length', async () => {
    const { cycles } = await read('Europe/Berlin', [[1, '2025-03-30 01:30', '2025-03-30 03:15']]);
    expect((cycles[0]!.end! - cycles[0]!.start) / 60_000).toBe(45);
    expect(cycles[0]!.time_mark).toBe('time');
  });
});
