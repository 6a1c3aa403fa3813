import { describe, expect, it } from 'vitest';
import { BERLIN, brief, HEADER, ROW, readFiles } from './read-folder.ts';

const text = (...lines: string[]): string => `${lines.join('\n')}\n`;
const cycles = (...rows: string[]): string => text(HEADER, ...rows);
const counts = (files: { records: number; duplicates: number; rejected: number }[]) =>
  files.map(({ records, duplicates, rejected }) => [records, duplicates, rejected]);

describe('duplicates of cycles', () => {
  const running = ROW.replace('2025-03-03 07:00:00', '').replace('completed', 'running').replace('95', '');

  it('counts a row that stands twice', async () => {
    const { records, files } = await readFiles({ 'cycles.csv': cycles(ROW, ROW, ROW) });
    expect(records.cycles).toHaveLength(1);
    expect(counts(files)).toEqual([[1, 2, 0]]);
  });

  it.each([
    ['cycles-1.csv', 'cycles-2.csv'],
    ['cycles-2.csv', 'cycles-1.csv'],
  ])(
    'prefers the complete row over one that was running when exported (complete in %s)',
    async (complete, cut) => {
      const { records, files, problems } = await readFiles({
        [complete]: cycles(ROW),
        [cut]: cycles(running),
      });
      expect(records.cycles).toMatchObject([
        { outcome: 'completed', heat_up_s: 95, origin: { file: complete } },
      ]);
      expect(problems).toEqual([]);
      expect(files.find(({ file }) => file === cut)).toMatchObject({ records: 0, duplicates: 1 });
    },
  );

  it('prefers the row with more fields, else the first in order of file and row', async () => {
    const poor = ROW.replace('95', '');
    const { records } = await readFiles({ 'cycles-1.csv': cycles(poor, poor), 'cycles-2.csv': cycles(ROW) });
    expect(records.cycles).toMatchObject([{ origin: { file: 'cycles-2.csv' } }]);
    const same = await readFiles({ 'cycles-1.csv': cycles(ROW, ROW), 'cycles-2.csv': cycles(ROW) });
    expect(same.records.cycles).toMatchObject([{ origin: { file: 'cycles-1.csv', row: 2 } }]);
  });

  it('tells cycles of one start apart by their numbers where both have one', async () => {
    const other = ROW.replace('17', '18');
    const unnumbered = ROW.replace('17', '');
    const { records, files } = await readFiles({ 'cycles.csv': cycles(unnumbered, other, ROW) });
    expect(records.cycles.map(({ cycle_number }) => cycle_number)).toEqual([18, 17]);
    expect(counts(files)).toEqual([[2, 1, 0]]);
  });

  it('finds a cycle under the old and the new name of its unit', async () => {
    const { records, files } = await readFiles(
      { 'cycles-1.csv': cycles(ROW.replace('S1', 'Old 1')), 'cycles-2.csv': cycles(ROW) },
      { ...BERLIN, units: [{ id: 'S1', aliases: [{ name: 'old 1' }] }] },
    );
    expect(records.cycles).toHaveLength(1);
    expect(counts(files)).toEqual([
      [1, 0, 0],
      [0, 1, 0],
    ]);
  });

  it('rejects a complete row that contradicts the first, and says which', async () => {
    const aborted = ROW.replace('completed', 'aborted');
    const { records, problems, files } = await readFiles({
      'cycles-1.csv': cycles(running, ROW),
      'cycles-2.csv': cycles(aborted, ROW.replace('95', '96')),
    });
    expect(records.cycles).toMatchObject([
      { outcome: 'completed', origin: { file: 'cycles-1.csv', row: 3 } },
    ]);
    expect(problems.map(brief)).toEqual(['conflicting_duplicate row 2 outcome']);
    expect(problems[0]).toMatchObject({
      file: 'cycles-2.csv',
      value: 'aborted',
      expected: 'outcome completed as in cycles-1.csv row 3',
    });
    expect(counts(files)).toEqual([
      [1, 1, 0],
      [0, 1, 1],
    ]);
  });
});

describe('duplicates of other records', () => {
  it('keeps a fail and a pass of one date in one file: a retest', async () => {
    const tests = text('unit,time,result', 'S1,2025-03-03,fail', 'S1,2025-03-03,pass', 'S1,2025-03-03,pass');
    const { records, problems, files } = await readFiles({
      'air-removal-tests-1.csv': tests,
      'air-removal-tests-2.csv': tests,
    });
    expect(problems).toEqual([]);
    expect(records.air_removal_tests.map(({ result, origin }) => [result, origin.file, origin.row])).toEqual([
      ['fail', 'air-removal-tests-1.csv', 2],
      ['pass', 'air-removal-tests-1.csv', 3],
    ]);
    expect(counts(files)).toEqual([
      [2, 1, 0],
      [0, 3, 0],
    ]);
  });

  it('rejects a test of one minute with two results, and of one date in two files', async () => {
    const timed = text('unit,time,result', 'S1,2025-03-03 06:00,fail', 'S1,2025-03-03 06:00,pass');
    expect((await readFiles({ 'air-removal-tests.csv': timed })).problems.map(brief)).toEqual([
      'conflicting_duplicate row 3 result',
    ]);
    const { problems } = await readFiles({
      'air-removal-tests-1.csv': text('unit,time,result', 'S1,2025-03-03,fail'),
      'air-removal-tests-2.csv': text('unit,time,result', 'S1,2025-03-03,pass'),
    });
    expect(problems.map(({ file, code }) => [file, code])).toEqual([
      ['air-removal-tests-2.csv', 'conflicting_duplicate'],
    ]);
  });

  it('compares leak rates across measures', async () => {
    const { records, problems } = await readFiles(
      {
        'a.csv': text('unit,time,rate', 'S1,2025-03-03 06:00,0.11'),
        'b.csv': text('unit,time,rate', 'S1,2025-03-03 06:00,11'),
        'c.csv': text('unit,time,rate', 'S1,2025-03-03 06:00,1.3'),
      },
      {
        ...BERLIN,
        sources: (
          [
            ['a.csv', 'kPa per min'],
            ['b.csv', 'mbar per 10 min'],
            ['c.csv', 'mbar per min'],
          ] as const
        ).map(([files, measure]) => ({
          kind: 'leak_tests',
          files,
          columns: { leak_rate_kpa_min: { column: 'rate', measure } },
        })),
      },
    );
    expect(records.leak_tests).toMatchObject([{ leak_rate_kpa_min: 0.11, origin: { file: 'a.csv' } }]);
    expect(problems.map(({ file, code }) => [file, code])).toEqual([['c.csv', 'conflicting_duplicate']]);
  });

  it('tells cleanings apart by task, services by kind, water by point and determinand', async () => {
    const { records, problems, files } = await readFiles({
      'cleanings.csv': text(
        'unit,task,time,state',
        'S1,chamber,2025-03-03 12:00,done',
        'S1,drain_flush,2025-03-03 12:00,done',
        'S1,chamber,2025-03-03 12:00,',
        'S1,chamber,2025-03-03 12:00,missed',
      ),
      'service.csv': text(
        'unit,from,kind,to',
        'S1,2025-03-03 12:00,repair,2025-03-03 14:00',
        'S1,2025-03-03 12:00,maintenance,',
        'S1,2025-03-03 12:00,repair,',
      ),
      'water.csv': text(
        'point,time,determinand,value,measure',
        'P1,2025-03-03,conductivity,5,uS/cm',
        'P1,2025-03-03,hardness,0.1,mmol/l',
        'P2,2025-03-03,conductivity,5,uS/cm',
        'P1,2025-03-03,conductivity,6,uS/cm',
      ),
      'inspections.csv': text(
        'unit,time,appearance',
        'S1,2025-03-03,2',
        'S1,2025-03-03,2',
        'S1,2025-03-03,3',
      ),
    });
    expect(records.cleanings.map(({ task, state }) => [task, state])).toEqual([
      ['chamber', 'done'],
      ['drain_flush', 'done'],
    ]);
    expect(records.service.map(({ kind }) => kind)).toEqual(['repair', 'maintenance']);
    expect(records.service[0]!.to).toBeDefined();
    expect(records.water.map(({ point, determinand }) => [point, determinand])).toEqual([
      ['P1', 'conductivity'],
      ['P1', 'hardness'],
      ['P2', 'conductivity'],
    ]);
    expect(problems.map(({ file, row, column }) => [file, row, column])).toEqual([
      ['cleanings.csv', 5, 'state'],
      ['inspections.csv', 4, 'appearance'],
      ['water.csv', 5, 'value'],
    ]);
    expect(
      files.map(({ rows, records, duplicates, rejected }) => rows - records - duplicates - rejected),
    ).toEqual([0, 0, 0, 0]);
  });
});
