import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { wall, write } from '../blind-third/paper.ts';
import { sources } from './british-truth.ts';

const UNITS = ['Surgery 1 autoclave', 'Surgery 2 autoclave'];
const day = (from: string, add: number): TestCell => ({ value: wall(from, add), format: 'dd/mm/yyyy' });

/** Log book of a British dental practice in one workbook: ticks and crosses, titles above the tables, days when nobody worked. */
export async function british(): Promise<BlindStyle> {
  const sheets = [
    { name: 'Steam penetration', rows: tests() },
    { name: 'Weekly vacuum leak', rows: leaks() },
    { name: 'Housekeeping', rows: cleaning() },
    { name: 'Engineer', rows: service() },
    { name: 'Action log', rows: actions() },
  ];
  return {
    name: 'british',
    zone: 'Europe/London',
    sources,
    files: { 'Decontamination log book.xlsx': await workbook(sheets) },
  };
}

/** 36 tests; a bank holiday and three days typed ahead, without a result. */
function tests(): TestCell[][] {
  const rows: TestCell[][] = [
    ['Daily steam penetration (Bowie-Dick) test'],
    [],
    ['Date', 'Time', 'Autoclave', 'Cycle counter', 'Uniform colour change ✓ / ✗', 'Initials', 'Action taken'],
  ];
  for (let at = 0; at < 36; at++) {
    if (at === 20) rows.push([day('2025-05-16', 10), null, 'Practice closed - bank holiday']);
    rows.push([
      day('2025-05-16', Math.floor(at / 2) + (at < 20 ? 0 : 1)),
      write(wall('2025-05-01', 0, 478 + 9 * (at % 2) + (at % 5)), 'HH:mm'),
      UNITS[at % 2]!,
      2604 + at * 4,
      at === 11 || at === 26 ? '✗' : '✓',
      ['hp', 'aw'][Math.floor(at / 3) % 2]!,
      at === 11 ? 'pale in the middle, repeated OK' : at === 26 ? 'engineer called' : null,
    ]);
  }
  for (let at = 0; at < 3; at++) rows.push([day('2025-06-04', at), null, UNITS[0]!, null, null, null, null]);
  return rows;
}

function leaks(): TestCell[][] {
  const rows: TestCell[][] = [
    [
      'Date of test',
      'Autoclave',
      'Cycle counter',
      'Start pressure mbar',
      'End pressure mbar',
      'Leak mbar/min',
      'Limit mbar/min',
      'OK?',
    ],
  ];
  for (let at = 0; at < 16; at++) {
    const rise = 3 + ((at * 5) % 7);
    rows.push([
      day('2025-03-06', 7 * Math.floor(at / 2)),
      UNITS[at % 2]!,
      2300 + at * 17,
      52 + (at % 4),
      52 + (at % 4) + rise,
      rise / 10,
      1.3,
      '✓',
    ]);
  }
  return rows;
}

/** Wiping a door seal is none of the tasks: a question, so that nobody can say how many rows become records. */
function cleaning(): TestCell[][] {
  const jobs = ['Strainer cleaned', 'Door seal wiped', 'Chamber cleaned', 'Drain flushed through'];
  const rows: TestCell[][] = [
    ['When', 'Autoclave', 'Job', 'Completed', 'Mins', 'Planned / unplanned', 'Initials', 'Comments'],
  ];
  for (let at = 0; at < 32; at++)
    rows.push([
      day('2025-05-01', Math.floor(at / 2)),
      UNITS[at % 2]!,
      jobs[Math.floor(at / 2) % 4]!,
      at % 10 === 7 ? '✗' : at === 14 ? 'n/a' : '✓',
      at % 10 === 7 || at === 14 ? null : 5 + 5 * (at % 3),
      at === 12 ? 'Unplanned (failed test)' : 'Planned',
      at % 10 === 7 ? null : 'hp',
      at % 10 === 7 ? 'short staffed' : null,
    ]);
  return rows;
}

const service = (): TestCell[][] => [
  ['Autoclave', 'Off from', 'Back on', 'Visit type', 'Notes', 'Invoice £'],
  [UNITS[0]!, day('2025-01-14', 0), day('2025-01-14', 0), 'Quarterly service', 'all in order', 145],
  [UNITS[1]!, day('2025-01-14', 0), day('2025-01-14', 0), 'Quarterly service', 'filter changed', 145],
  [UNITS[1]!, day('2025-02-20', 0), day('2025-02-24', 0), 'Breakdown repair', 'heater element renewed', 612],
  [UNITS[0]!, day('2025-04-15', 0), day('2025-04-15', 0), 'Quarterly service', null, 145],
  [
    UNITS[0]!,
    day('2025-05-17', 0),
    day('2025-05-22', 0),
    'Breakdown repair',
    'leak at the vacuum valve',
    388.5,
  ],
  [UNITS[1]!, day('2025-05-28', 0), day('2025-06-13', 0), 'Taken out of use', 'waiting for parts', null],
];

const actions = (): TestCell[][] => [
  ['Raised', 'Autoclave', 'Action', 'Owner', 'Target date', 'Closed on', 'Status'],
  [
    day('2025-05-19', 0),
    UNITS[0]!,
    'Order spare door seals',
    'Lead nurse',
    day('2025-06-16', 0),
    day('2025-06-03', 0),
    'Closed',
  ],
  [
    day('2025-05-19', 0),
    null,
    'Add the strainer to the opening checklist',
    'Practice manager',
    day('2025-05-30', 0),
    null,
    'Open',
  ],
  [
    day('2025-06-18', 0),
    UNITS[1]!,
    'Ask for a loan machine',
    'Practice manager',
    day('2025-06-25', 0),
    null,
    'Withdrawn',
  ],
  [
    day('2025-06-18', 0),
    UNITS[1]!,
    'Check the leak rate twice a week',
    'Lead nurse',
    day('2025-07-31', 0),
    null,
    'Open',
  ],
];
