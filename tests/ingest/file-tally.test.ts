import { describe, expect, it } from 'vitest';
import { Fault } from '../../pipeline/ingest/cell.ts';
import { FileTally } from '../../pipeline/ingest/file-tally.ts';
import { countProblems, MOST_ALIKE, type Problem } from '../../pipeline/ingest/reading.ts';

describe('the counts of a file', () => {
  const tally = (): { of: FileTally; problems: Problem[] } => {
    const problems: Problem[] = [];
    return { of: new FileTally({ source: 's', kind: 'cycles', file: 'f.csv' }, problems), problems };
  };

  it('pass when they add up', () => {
    const { of } = tally();
    Object.assign(of.read, { rows: 10, records: 5, duplicates: 2, skipped: 2 });
    of.reject(3, new Fault('quote', 'x'), null, 'found');
    expect(() => of.check()).not.toThrow();
  });

  it.each([
    ['rows', 1],
    ['records', 1],
    ['duplicates', 1],
    ['rejected', 1],
    ['skipped', 1],
  ] as const)('stop the run as a bug when a row of %s is not accounted for', (name, more) => {
    const { of } = tally();
    Object.assign(of.read, { rows: 10, records: 5, duplicates: 2, rejected: 1, skipped: 2 });
    of.read[name] += more;
    expect(() => of.check()).toThrow('s, f.csv');
  });

  it('count rows and cells apart, and problems of the file in neither', () => {
    const { of, problems } = tally();
    of.reject(2, new Fault('bad_time', 'a time'), 'start', 'x');
    of.loseCell(3, new Fault('bad_number', 'a number'), 'heat_up_s', 12);
    of.fileProblem('file', new Fault('no_rows', 'a row'));
    expect(of.read).toMatchObject({ rejected: 1, cells_lost: 1 });
    expect(problems.map(({ costs, row, value }) => [costs, row, value])).toEqual([
      ['row', 2, 'x'],
      ['cell', 3, '12'],
      ['file', null, null],
    ]);
  });

  it('list a thousand problems alike and count the rest, by code, cost and column', () => {
    const { of, problems } = tally();
    for (let row = 1; row <= MOST_ALIKE + 500; row++)
      of.reject(row, new Fault('bad_time', 'a time'), 'start', 'x');
    of.reject(9000, new Fault('bad_time', 'a time'), 'end', 'x');
    expect([problems.length, countProblems(problems), of.read.rejected]).toEqual([
      MOST_ALIKE + 1,
      MOST_ALIKE + 501,
      MOST_ALIKE + 501,
    ]);
    expect(problems.filter(({ more }) => more !== undefined).map(({ row, more }) => [row, more])).toEqual([
      [MOST_ALIKE, 500],
    ]);
  });
});
