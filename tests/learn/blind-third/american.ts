import type { BlindStyle } from '../blind/make-blind.ts';
import { clock, counts, later, lines, wall, wave, write } from './paper.ts';

/** Delimited exports of a hospital in the United States: a preamble of three lines, degrees Fahrenheit, 12-hour clock. */
export async function american(): Promise<BlindStyle> {
  const units = ['Steam 1', 'Steam 2', 'Steam 3'];
  const cycles: (string | number)[][] = [
    ['Sterile Processing - Load Report'],
    ['Printed 04/02/2025 7:15 AM'],
    [],
    [
      'Load #',
      'Sterilizer',
      'Cycle Type',
      'Start Date/Time',
      'End Date/Time',
      'Exposure (mm:ss)',
      'Min Exposure Temp (°F)',
      'Max Exposure Temp (°F)',
      'Dry Time (min)',
      'Biological Lot',
      'Status',
      'Alarm',
    ],
  ];
  const programs = ['Warm-up', 'Air Removal Test', 'Prevac 270', 'Prevac 270', 'Gravity 270', 'Leak Test'];
  for (let at = 0; at < 36; at++) {
    const start = wall('2025-03-03', Math.floor(at / 3), 345 + 95 * (at % 3) + (at % 7));
    const aborted = at === 11 || at === 26;
    cycles.push([
      4100 + at,
      units[at % 3]!,
      programs[(at * 5 + Math.floor(at / 6)) % 6]!,
      write(start, 'MM/dd/yyyy h:mm a'),
      write(later(start, 38 + (at % 9)), 'MM/dd/yyyy h:mm a'),
      aborted ? '' : clock(240 + (at % 4)),
      aborted ? '' : wave(at, 270.8, 0.6, 1),
      aborted ? '' : wave(at, 273.1, 0.5, 1, 5),
      aborted ? '' : 20 + (at % 3) * 5,
      `BI-${22 + Math.floor(at / 12)}`,
      aborted ? 'Aborted' : at === 19 ? 'Failed' : 'Complete',
      aborted ? 'Vacuum not reached in time' : '',
    ]);
  }
  cycles.push(['Total loads', 36, '', '', '', '', '', '', '', '', '', '']);
  const tests: (string | number)[][] = [
    ['Test Date', 'Test Time', 'Sterilizer', 'Cycle No.', 'Test Pack Lot', 'Result', 'Read By', 'Comments'],
  ];
  for (let at = 0; at < 30; at++) {
    const time = wall('2025-03-03', Math.floor(at / 3), 372 + 11 * (at % 3));
    tests.push([
      write(time, 'MM/dd/yyyy'),
      write(time, 'h:mm a'),
      units[at % 3]!,
      510 + at,
      'TP-0447',
      at === 8 ? 'Fail' : at === 21 ? 'Invalid' : 'Pass',
      ['KM', 'RT'][at % 2]!,
      at === 8 ? 'light spot center of sheet' : '',
    ]);
  }
  const leaks: (string | number)[][] = [
    ['Sterilizer', 'Date', 'Leak Rate (mmHg/min)', 'Max Allowed (mmHg/min)', 'Pass/Fail'],
  ];
  for (let at = 0; at < 18; at++)
    leaks.push([
      units[at % 3]!,
      write(wall('2025-01-06', 7 * Math.floor(at / 3)), 'M/d/yyyy'),
      wave(at, 0.4, 0.3, 2),
      '1.0',
      'Pass',
    ]);
  return {
    name: 'american',
    zone: 'America/Chicago',
    sources: [
      {
        file: 'load-report',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Sterilizer'] },
          start: { headers: ['Start Date/Time'], dates: ['MM/dd/yyyy h:mm a'] },
          end: { headers: ['End Date/Time'], dates: ['MM/dd/yyyy h:mm a'] },
          kind: { headers: ['Cycle Type'] },
          outcome: { headers: ['Status'] },
          cycle_number: { headers: ['Load #'] },
          abort_text: { headers: ['Alarm'] },
          exposure_s: { headers: ['Exposure (mm:ss)'], measure: 'mm:ss' },
          exposure_temperature_min_c: { headers: ['Min Exposure Temp (°F)'], measure: 'F' },
          exposure_temperature_max_c: { headers: ['Max Exposure Temp (°F)'], measure: 'F' },
          drying_s: { headers: ['Dry Time (min)'], measure: 'min' },
        },
        words: {
          kind: {
            'Warm-up': 'warm_up',
            'Air Removal Test': 'air_removal_test',
            'Prevac 270': 'production',
            'Gravity 270': 'production',
            'Leak Test': 'leak_test',
          },
          outcome: { Aborted: 'aborted', Failed: 'failed', Complete: 'completed' },
        },
        counts: counts(36, 1),
      },
      {
        file: 'daily-air-removal',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Sterilizer'] },
          time: { headers: ['Test Date', 'Test Time'], dates: ['MM/dd/yyyy h:mm a'] },
          result: { headers: ['Result'] },
          cycle_number: { headers: ['Cycle No.'] },
          note: { headers: ['Comments'] },
        },
        words: { result: { Pass: 'pass', Fail: 'fail', Invalid: 'invalid' } },
        counts: counts(30),
      },
      {
        file: 'weekly-leak',
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['Sterilizer'] },
          time: { headers: ['Date'], dates: ['M/d/yyyy'] },
          leak_rate_kpa_min: { headers: ['Leak Rate (mmHg/min)'], measure: 'mmHg per min' },
          limit_kpa_min: { headers: ['Max Allowed (mmHg/min)'], measure: 'mmHg per min' },
        },
        counts: counts(18),
      },
    ],
    files: {
      'load-report_2025-03.csv': lines(cycles, ','),
      'daily-air-removal.txt': lines(tests, '\t'),
      'weekly-leak.csv': lines(leaks, ','),
    },
  };
}
