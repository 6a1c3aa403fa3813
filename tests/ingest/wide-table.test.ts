import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, readMonth } from '../../pipeline/ingest/wide-table.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, brief, readFiles } from './read-folder.ts';
import { workbook } from './workbook.ts';

const text = (...lines: string[]): string => `${lines.join('\n')}\n`;
type SourceInput = NonNullable<SiteFileInput['sources']>[number];
const wideFrom = (source: Partial<SourceInput>): SiteFileInput => ({
  ...BERLIN,
  sources: [
    {
      kind: 'cleanings',
      files: '*.csv',
      columns: { unit: 'Unit', task: { always: 'drain_strainer' } },
      values: { state: { done: ['x', '✓'], missed: '-', not_due: 'off' } },
      wide: { days: 'day of month', month: { file_name: 'strainer-*.csv' } },
      ...source,
    },
  ],
});
const marks = (reading: Awaited<ReturnType<typeof readFiles>>): string[] =>
  reading.records.cleanings.map(({ unit, time, state, origin }) =>
    [unit, new Date(time).toISOString().slice(0, 10), state, origin.row].join(' '),
  );

describe('a sheet with a column a day', () => {
  it('gives a record a mark; blank cells are none; days that the month does not have are no days', async () => {
    const file = text(
      'Strainers;;;;;',
      'Unit;28;29;30;31;Seen by',
      'S1;x;✓;;;KM',
      'S2;;-;off;;KM',
      'S3;;;;;',
    );
    const reading = await readFiles(
      { 'strainer-2025-02.csv': file },
      wideFrom({ wide: { days: 'day of month', month: { file_name: 'strainer-*.csv' } } }),
    );
    expect(reading.problems.map(brief)).toEqual(['header_not_found file  ']);
    const march = await readFiles({ 'strainer-2025-03.csv': file }, wideFrom({}));
    expect(march.problems).toEqual([]);
    expect(marks(march)).toEqual([
      'S1 2025-03-28 done 3',
      'S1 2025-03-29 done 3',
      'S2 2025-03-29 missed 4',
      'S2 2025-03-30 not_due 4',
    ]);
    expect(march.files[0]).toMatchObject({ rows: 4, records: 4, preamble: 1 });
  });

  it('takes initials as done only where the site says so, and never keeps them', async () => {
    const files = { 'strainer-2025-03.csv': text('Unit;1;2;3', 'S1;K.M.;x;???') };
    const strict = await readFiles(files, wideFrom({}));
    expect(strict.problems.map(brief)).toEqual(['unknown_word row 2 1', 'unknown_word row 2 3']);
    const open = await readFiles(
      files,
      wideFrom({ wide: { days: 'day of month', month: { always: 'March 2025' }, initials_mean: 'done' } }),
    );
    expect(marks(open)).toEqual(['S1 2025-03-01 done 2', 'S1 2025-03-02 done 2']);
    expect(JSON.stringify(open.records)).not.toContain('K.M.');
  });

  it('may have a row a task, dates as headers, a sheet a month or a unit', async () => {
    const file = await workbook([
      {
        name: 'S7',
        rows: [
          ['Task', new Date('2025-03-01'), new Date('2025-03-02')],
          ['chamber', null, 'x'],
          ['drain flush', 'x', null],
        ],
      },
      { name: 'Sheet2', rows: [] },
      {
        name: 'S8',
        rows: [
          ['Task', new Date('2025-04-01'), new Date('2025-04-02')],
          ['chamber', 'x', 'x'],
        ],
      },
    ]);
    const reading = await readFiles(
      { 'log.xlsx': file },
      wideFrom({
        files: 'log.xlsx',
        sheets: 'all',
        columns: { unit: { sheet_name: '*' }, task: 'Task' },
        wide: { days: 'yyyy-MM-dd' },
      }),
    );
    expect(reading.problems).toEqual([]);
    expect(marks(reading).sort()).toEqual([
      'S7 2025-03-01 done 3',
      'S7 2025-03-02 done 2',
      'S8 2025-04-01 done 2',
      'S8 2025-04-02 done 2',
    ]);
    expect(reading.files.map(({ sheet, rows }) => [sheet, rows])).toEqual([
      ['S7', 2],
      ['S8', 2],
    ]);
  });

  it('problems name sheet, row and the column of the day', async () => {
    const file = await workbook([
      {
        name: 'March',
        rows: [
          ['Unit', 'Mo 3', 'Tu 4', 'We 5'],
          ['S1', 'x', 'what?', null],
          [null, null, 'x', null],
        ],
      },
    ]);
    const { problems } = await readFiles(
      { 'log-2025-03.xlsx': file },
      wideFrom({ files: 'log-*.xlsx', wide: { days: 'day of month', month: { file_name: 'log-*.xlsx' } } }),
    );
    expect(problems.map(({ sheet, row, column, value }) => [sheet, row, column, value])).toEqual([
      ['March', 2, 'Tu 4', 'what?'],
      ['March', 3, 'Unit', null],
    ]);
    const early = await readFiles(
      { 'log-1999-03.csv': text('Unit,1,2', 'S1,x,x') },
      wideFrom({ files: 'log-*.csv', wide: { days: 'day of month', month: { always: '1999-03' } } }),
    );
    expect(
      early.problems.map(({ column }) => column).filter((column) => column !== null && /\(/.test(column)),
    ).toEqual([]);
  });

  it('finds the month in a title above the header', async () => {
    const reading = await readFiles(
      { 'a.csv': text('Reinigung März 2025;;', 'Unit;Sa 1;So 2', 'S1;x;x') },
      wideFrom({ wide: { days: 'day of month', month: { title: true } } }),
    );
    expect(marks(reading)).toEqual(['S1 2025-03-01 done 3', 'S1 2025-03-02 done 3']);
  });

  it('gives back any grid of marks', async () => {
    const cell = fc.constantFrom('', 'x', '-', 'off');
    const grid = fc.array(fc.array(cell, { minLength: 5, maxLength: 5 }), { minLength: 1, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(grid, async (rows) => {
        const lines = rows.map((cells, at) => [`S${at}`, ...cells].join(','));
        const reading = await readFiles(
          { 'strainer-2025-03.csv': text('Unit,1,2,3,4,5', ...lines) },
          wideFrom({}),
        );
        const word: Record<string, string> = { x: 'done', '-': 'missed', off: 'not_due' };
        const expected = rows.flatMap((cells, at) =>
          cells.flatMap((mark, day) =>
            mark === '' ? [] : [`S${at} 2025-03-0${day + 1} ${word[mark]} ${at + 2}`],
          ),
        );
        expect(marks(reading).sort()).toEqual(expected.sort());
      }),
      { numRuns: 30, seed: 1 },
    );
  });
});

describe('months and days in texts', () => {
  it.each([
    ['2025-03', '2025-03'],
    ['log_202503', '2025-03'],
    ['3/2025', '2025-03'],
    ['03.2025', '2025-03'],
    ['marzo de 2025', '2025-03'],
    ['Févr. 2025', '2025-02'],
    ['2025', undefined],
    ['13/2025', undefined],
  ])('%s', (input, month) => expect(readMonth(input)).toBe(month));

  it.each([
    ['3', 3],
    ['03.', 3],
    ['Mo 3', 3],
    ['31/Mon', 31],
    ['32', undefined],
    ['Unit 3b', undefined],
    ['134.2', undefined],
  ])('%s', (input, day) => expect(dayNumber(input)).toBe(day));
});
