import { describe, expect, it } from 'vitest';
import type { ReadEffects } from '../../pipeline/ingest/read-exports.ts';
import { PROBLEM_CODES, type ProblemCode } from '../../pipeline/ingest/reading.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, brief, cyclesFrom, type Files, HEADER, ROW, readFiles } from './read-folder.ts';
import { workbook } from './workbook.ts';

interface Case {
  files: Files;
  site?: SiteFileInput;
  effects?: ReadEffects;
  /** Code, cost, row and column of each problem. */
  problems: string[];
  records: number;
}

const one = (content: string): Files => ({ 'cycles.csv': content });
const row = (start: string, rest = 'production,completed,18,95,'): string => `S1,${start},,${rest}`;
const UNITS: SiteFileInput['units'] = [
  { id: 'S1', in_service_since: '2025-02-01', aliases: [{ name: 'Old 1', to: '2025-03-01' }] },
];
const NUL = '\0';
/** Twenty rows, a day apart. */
const DAILY = Array.from({ length: 20 }, (_, at) => `${row(`2025-03-${at + 10} 07:00`)}\n`).join('');

/** For each code the smallest input that shows it. The type demands a case for each code. */
const CASES: Record<ProblemCode, Case[]> = {
  no_file: [
    {
      files: {},
      site: cyclesFrom({ files: ['a.csv', 'b*.csv'] }),
      problems: ['no_file file  ', 'no_file file  '],
      records: 0,
    },
  ],
  unreadable_file: [
    {
      files: one(''),
      effects: {
        open: async function* () {
          yield Buffer.from(`${HEADER}\n${ROW}\n`);
          throw Object.assign(new Error('EIO: i/o error, read'), { code: 'EIO', syscall: 'read' });
        },
      },
      problems: ['unreadable_file file  '],
      records: 1,
    },
    { files: { 'cycles.xlsx': 'no workbook' }, problems: ['unreadable_file file  '], records: 0 },
    {
      files: one('PK\u0003\u0004 a workbook by another name'),
      problems: ['unreadable_file file  '],
      records: 0,
    },
  ],
  empty_file: [
    { files: one(''), problems: ['empty_file file  '], records: 0 },
    { files: one('\ufeff\r\n  \r\n'), problems: ['empty_file file  '], records: 0 },
    { files: { 'cycles.xlsx': '' }, problems: ['empty_file file  '], records: 0 },
  ],
  no_rows: [{ files: one(`${HEADER}\n\n,,,,,,,\n`), problems: ['no_rows file  '], records: 0 }],
  header_not_found: [
    { files: one('unit,start\nS1,2025-03-03\n'), problems: ['header_not_found file 1 '], records: 0 },
    {
      files: one(`${'x\n'.repeat(100)}${HEADER}\n${ROW}\n`),
      problems: ['header_not_found file 1 '],
      records: 0,
    },
    {
      files: one(Buffer.from(`${HEADER}\n${ROW}\n`, 'utf16le').toString('latin1')),
      problems: ['header_not_found file  '],
      records: 0,
    },
  ],
  repeated_header: [
    { files: one(`${HEADER},Unit\n${ROW},S1\n`), problems: ['repeated_header file 1 unit'], records: 0 },
    {
      files: one(`${HEADER},HEAT_UP_S \n${ROW},9\n`),
      problems: ['repeated_header cell 1 heat_up_s'],
      records: 1,
    },
  ],
  column_not_found: [
    {
      files: one(`${HEADER}\n${ROW}\n`),
      site: cyclesFrom({ columns: { exhaust_s: 'Exhaust' }, skip: { Total: ['x'] } }),
      problems: ['column_not_found cell 1 Exhaust', 'column_not_found cell 1 Total'],
      records: 1,
    },
  ],
  sheet_not_found: [
    {
      files: { 'cycles.xlsx': await workbook([{ name: 'Log', rows: [['x']] }]) },
      site: cyclesFrom({ files: 'cycles.xlsx', sheet: 'Cycles' }),
      problems: ['sheet_not_found file  '],
      records: 0,
    },
  ],
  encoding: [
    {
      files: { 'cycles.csv': Buffer.from(`${HEADER},note\n${ROW}T\u00fcr,\n${ROW},T\u00fcr\n`, 'latin1') },
      problems: ['encoding cell 2 abort_text'],
      records: 1,
    },
    {
      files: { 'cycles.csv': Buffer.from(`${HEADER}\n${ROW.replace('S1', 'Ger\u00e4t')}\n`, 'latin1') },
      problems: ['encoding row 2 unit'],
      records: 0,
    },
    {
      files: { 'cycles.csv': Buffer.from(`${HEADER}\n${ROW}\u0081\n`, 'latin1') },
      site: cyclesFrom({ encoding: 'windows-1252' }),
      problems: ['encoding cell 2 abort_text'],
      records: 1,
    },
  ],
  nul_byte: [
    {
      files: one(`${HEADER}\n${ROW}\n${NUL.repeat(40)}\n${ROW.replace('17', '18')}`),
      problems: ['nul_byte row 3 '],
      records: 2,
    },
  ],
  too_long: [
    {
      files: one(`${HEADER}\n${ROW}${'x'.repeat(1_000_001)}\n${ROW}\n`),
      problems: ['too_long row 2 '],
      records: 1,
    },
    {
      files: one(`${HEADER}\n${ROW}${'x'.repeat(2001)}\n`),
      problems: ['too_long cell 2 abort_text'],
      records: 1,
    },
  ],
  quote: [
    {
      files: one(`${HEADER}\n${ROW}"door" open\n${ROW}"door\n${ROW}\n`),
      problems: ['quote row 2 ', 'quote row 3 '],
      records: 1,
    },
  ],
  short_row: [
    {
      files: one(`${HEADER}\nS1,2025-03-03 06:30:00\n${ROW}\n`),
      problems: ['short_row row 2 kind'],
      records: 1,
    },
    {
      files: one(`${HEADER}\n${ROW}\n${ROW.replace('17,95,', '18,9')}\n`),
      problems: ['short_row cell 3 abort_text'],
      records: 2,
    },
    {
      files: one(`${HEADER}\n${ROW}\n${ROW.replace('17,95,', '18,9')}`),
      problems: ['short_row row 3 '],
      records: 1,
    },
  ],
  long_row: [
    { files: one(`${HEADER}\n${ROW}door, open\n${ROW},,\n`), problems: ['long_row row 2 '], records: 1 },
  ],
  missing_value: [
    {
      files: one(`${HEADER}\n ${ROW.replace('completed', ' ')}\n`),
      problems: ['missing_value row 2 outcome'],
      records: 0,
    },
    {
      files: one(`${HEADER}\n${ROW.replace('2025-03-03 06:30:00', '--')}\n`),
      problems: ['missing_value row 2 start'],
      records: 0,
    },
    {
      files: one(`${HEADER}\n${ROW}\n`),
      site: cyclesFrom({ columns: { unit: { file_name: 'log-*.csv' } } }),
      problems: ['missing_value file  unit'],
      records: 0,
    },
    {
      files: one(`${HEADER}\n${ROW}\n`),
      site: cyclesFrom({ columns: { cycle_number: { file_name: 'log-*.csv' } } }),
      problems: ['missing_value cell  cycle_number'],
      records: 1,
    },
  ],
  unknown_unit: [
    {
      files: one(`${HEADER}\n${ROW}\n${ROW.replace('S1', 'S9')}\n${ROW.replace('S1', 'old 1')}\n`),
      site: { ...BERLIN, units: UNITS },
      problems: ['unknown_unit row 3 unit', 'unknown_unit row 4 unit'],
      records: 1,
    },
  ],
  unknown_word: [
    {
      files: one(`${HEADER}\n${ROW.replace('completed', 'OK')}\n`),
      problems: ['unknown_word row 2 outcome'],
      records: 0,
    },
  ],
  bad_time: [
    { files: one(`${HEADER}\n${row('2025-02-30 06:30')}\n`), problems: ['bad_time row 2 start'], records: 0 },
    {
      files: one(`${HEADER}\n${ROW.replace('2025-03-03 07:00:00', '7:00')}\n`),
      problems: ['bad_time cell 2 end'],
      records: 1,
    },
  ],
  bad_number: [
    {
      files: one(`${HEADER}\n${ROW.replace('17,95', 'x17,"1,234"')}\n`),
      problems: ['bad_number cell 2 cycle_number', 'bad_number cell 2 heat_up_s'],
      records: 1,
    },
    {
      files: one(`${HEADER}\n${ROW.replace('17,95', '17.5,95')}\n`),
      problems: ['bad_number cell 2 cycle_number'],
      records: 1,
    },
  ],
  out_of_range: [
    {
      files: one(`${HEADER}\n${ROW.replace('17,95', '-1,90000')}\n`),
      problems: ['out_of_range cell 2 cycle_number', 'out_of_range cell 2 heat_up_s'],
      records: 1,
    },
    {
      files: one(`${HEADER}\n${ROW.replace('03-03 07', '03-04 07')}\n`),
      problems: ['out_of_range cell 2 end'],
      records: 1,
    },
    {
      files: { 'leak-tests.csv': 'unit,time,leak_rate_kpa_min\nS1,2025-03-03 05:00,60\n' },
      problems: ['out_of_range row 2 leak_rate_kpa_min'],
      records: 0,
    },
    {
      files: one(`${HEADER},vacuum\n${ROW},-90\n`),
      site: cyclesFrom({ columns: { dry_vacuum_kpa: { column: 'vacuum', measure: 'kPa vacuum' } } }),
      problems: ['out_of_range cell 2 vacuum'],
      records: 1,
    },
  ],
  end_before_start: [
    {
      files: one(`${HEADER}\n${ROW.replace('07:00', '06:00')}\n`),
      problems: ['end_before_start cell 2 end'],
      records: 1,
    },
    {
      files: { 'cleanings.csv': 'unit,task,time,start\nS1,chamber,2025-03-03 12:00,2025-03-03 13:00\n' },
      problems: ['end_before_start cell 2 start'],
      records: 0,
    },
  ],
  clock_reset: [
    {
      files: one(`${HEADER}\n${row('1999-12-31 23:59')}\n${row('1970-01-01 00:00')}\n`),
      problems: ['clock_reset row 2 start', 'clock_reset row 3 start'],
      records: 0,
    },
    {
      files: one(`${HEADER}\n${row('2025-01-31 12:00')}\n${ROW}\n`),
      site: { ...BERLIN, units: UNITS },
      problems: ['clock_reset row 2 start'],
      records: 1,
    },
  ],
  conflicting_duplicate: [
    {
      files: one(`${HEADER}\n${ROW}\n${ROW.replace('completed', 'aborted')}\n`),
      problems: ['conflicting_duplicate row 3 outcome'],
      records: 1,
    },
  ],
  lone_record: [
    {
      files: one(`${HEADER}\n${DAILY}${row('2035-03-09 07:00')}\n${row('2015-03-09 07:00')}\n`),
      problems: ['lone_record review 23 start', 'lone_record review 22 start'],
      records: 22,
    },
    {
      files: {
        ...one(`${HEADER}\n${DAILY}`),
        'tests.csv': 'apparatus,day,at,result\nS1,2035-03-09,05:00,pass\n',
      },
      site: {
        ...BERLIN,
        sources: [
          { kind: 'cycles', files: 'cycles.csv' },
          {
            kind: 'air_removal_tests',
            files: 'tests.csv',
            dates: 'yyyy-MM-dd HH:mm',
            columns: { unit: 'apparatus', time: ['day', 'at'] },
          },
        ],
      },
      problems: ['lone_record review 2 day + at'],
      records: 20,
    },
  ],
};

describe.each(Object.keys(PROBLEM_CODES) as ProblemCode[])('%s', (code) => {
  it.each(CASES[code].map((value, index) => [index + 1, value] as const))('case %i', async (_, given) => {
    const reading = await readFiles(given.files, given.site, given.effects);
    expect(reading.problems.map(brief)).toEqual(given.problems);
    expect(reading.records.cycles).toHaveLength(given.records);
  });
});
