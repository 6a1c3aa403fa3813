import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { counts, later, wall, wave, write } from './paper.ts';

/** One workbook of a British department, typed by hand: millibar, dates as cells. */
export async function british(): Promise<BlindStyle> {
  const units = ['Porous Load 1', 'Porous Load 2'];
  const log: TestCell[][] = [
    [
      'Date',
      'Machine',
      'Cycle No',
      'Cycle',
      'Time on',
      'Time off',
      'Hold time (s)',
      'Hold min °C',
      'Hold max °C',
      'Chamber pressure mbar abs',
      'Outcome',
      'Fault message',
      'Trolley',
    ],
  ];
  const tests: TestCell[][] = [
    ['Date', 'Time', 'Machine', 'Cycle No', 'Bowie-Dick result', 'Remarks', 'Signed'],
  ];
  const leaks: TestCell[][] = [
    ['Date', 'Machine', 'Cycle No', 'P1 (mbar)', 'P2 (mbar)', 'Leak rate (mbar/min)', 'Satisfactory?'],
  ];
  const cleaning: TestCell[][] = [['Date', 'Machine', 'Job', 'Done?', 'Minutes taken', 'Why', 'Comment']];
  const kinds = ['Warm up', 'Bowie-Dick', 'Porous 134', 'Porous 134', 'Porous 134 long'];
  for (let at = 0; at < 40; at++) {
    const start = wall('2025-05-06', Math.floor(at / 5), 400 + 62 * (at % 5));
    const bad = at === 13 || at === 32;
    log.push([
      { value: wall('2025-05-06', Math.floor(at / 5)), format: 'dd/mm/yyyy' },
      units[Math.floor(at / 5) % 2]!,
      7300 + at,
      kinds[at % 5]!,
      write(start, 'HH:mm'),
      write(later(start, 41 + (at % 6)), 'HH:mm'),
      bad ? null : 180 + (at % 5),
      bad ? null : Number(wave(at, 134.4, 0.2, 1)),
      bad ? null : Number(wave(at, 135.6, 0.3, 1, 3)),
      bad ? null : Number(wave(at, 3140, 25, 0)),
      bad ? 'Fault' : at === 22 ? 'Abandoned' : 'OK',
      bad ? 'Air detector fault' : at === 22 ? 'Operator abort' : null,
      `T${(at * 3) % 14}`,
    ]);
  }
  for (let at = 0; at < 24; at++)
    tests.push([
      { value: wall('2025-05-06', Math.floor(at / 2)), format: 'dd/mm/yyyy' },
      write(wall('2025-05-06', 0, 462 + 4 * (at % 5)), 'HH:mm'),
      units[at % 2]!,
      7301 + at * 5,
      at === 9 ? 'Unsatisfactory' : 'Satisfactory',
      at === 9 ? 'uneven colour, repeated' : null,
      ['jw', 'ps', 'dk'][at % 3]!,
    ]);
  for (let at = 0; at < 16; at++) {
    const first = 45 + ((at * 3) % 5);
    const rise = 2 + ((at * 7) % 6);
    leaks.push([
      { value: wall('2025-04-01', 7 * Math.floor(at / 2)), format: 'dd/mm/yyyy' },
      units[at % 2]!,
      7280 + at,
      first,
      first + rise,
      rise / 10,
      'Yes',
    ]);
  }
  const jobs = ['Strainer', 'Chamber', 'Strainer', 'Drain flush'];
  for (let at = 0; at < 28; at++)
    cleaning.push([
      { value: wall('2025-05-06', at), format: 'dd/mm/yyyy' },
      units[at % 2]!,
      jobs[Math.floor(at / 2) % 4]!,
      at % 9 === 5 ? 'No' : at === 20 ? 'Not required' : 'Yes',
      at % 9 === 5 || at === 20 ? null : 10 + (at % 4) * 5,
      at === 11 ? 'After failed test' : 'Planned',
      at === 11 ? 'scale on the door seal' : null,
    ]);
  const sheets = [
    { name: 'Cycles', rows: log },
    { name: 'BD tests', rows: tests },
    { name: 'Leak rate', rows: leaks },
    { name: 'Cleaning', rows: cleaning },
  ];
  return {
    name: 'british',
    zone: 'Europe/London',
    sources: [
      {
        file: 'SSD log',
        sheet: 'Cycles',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Machine'] },
          start: { headers: ['Date', 'Time on'] },
          end: { headers: ['Date', 'Time off'] },
          kind: { headers: ['Cycle'] },
          outcome: { headers: ['Outcome'] },
          cycle_number: { headers: ['Cycle No'] },
          abort_text: { headers: ['Fault message'] },
          exposure_s: { headers: ['Hold time (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['Hold min °C'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Hold max °C'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Chamber pressure mbar abs'], measure: 'mbar absolute' },
        },
        words: {
          kind: {
            'Warm up': 'warm_up',
            'Bowie-Dick': 'air_removal_test',
            'Porous 134': 'production',
            'Porous 134 long': 'production',
          },
          outcome: { OK: 'completed', Fault: 'failed', Abandoned: 'aborted' },
        },
        counts: counts(40),
      },
      {
        file: 'SSD log',
        sheet: 'BD tests',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Machine'] },
          time: { headers: ['Date', 'Time'] },
          result: { headers: ['Bowie-Dick result'] },
          cycle_number: { headers: ['Cycle No'] },
          note: { headers: ['Remarks'] },
        },
        words: { result: { Satisfactory: 'pass', Unsatisfactory: 'fail' } },
        counts: counts(24),
      },
      {
        file: 'SSD log',
        sheet: 'Leak rate',
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['Machine'] },
          time: { headers: ['Date'] },
          leak_rate_kpa_min: { headers: ['Leak rate (mbar/min)'], measure: 'mbar per min' },
          cycle_number: { headers: ['Cycle No'] },
        },
        counts: counts(16),
      },
      {
        file: 'SSD log',
        sheet: 'Cleaning',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Machine'] },
          task: { headers: ['Job'] },
          time: { headers: ['Date'] },
          state: { headers: ['Done?'] },
          minutes: { headers: ['Minutes taken'] },
          reason: { headers: ['Why'] },
          note: { headers: ['Comment'] },
        },
        words: {
          task: { Strainer: 'drain_strainer', Chamber: 'chamber', 'Drain flush': 'drain_flush' },
          state: { Yes: 'done', No: 'missed', 'Not required': 'not_due' },
          reason: { Planned: 'routine', 'After failed test': 'reactive' },
        },
        counts: counts(28),
      },
    ],
    files: { 'SSD log 2025.xlsx': await workbook(sheets) },
  };
}
