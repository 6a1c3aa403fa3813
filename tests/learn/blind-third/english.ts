import type { BlindStyle } from '../blind/make-blind.ts';
import { clock, counts, isSunday, later, lines, wall, wave, write } from './paper.ts';

/** An Irish veterinary laboratory: one large autoclave and a small one; logs typed by hand, day first, and an inspection book. */
export async function laboratory(): Promise<BlindStyle> {
  const runs: (string | number)[][] = [
    [
      'Run',
      'Autoclave',
      'Date',
      'Start',
      'Finish',
      'Load type',
      'Peak temp °C',
      'Sterilising time (min)',
      'Drain temp °C',
      'Run OK?',
      'Problem',
      'Initials',
    ],
  ];
  const loads = ['Culture media', 'Waste', 'Instruments', 'Culture media', 'Instruments', 'Vacuum test'];
  for (let at = 0; at < 33; at++) {
    const start = wall('2024-09-02', at, at % 2 ? 555 : 840);
    const stopped = at === 7 || at === 25;
    runs.push([
      900 + at,
      ['Large', 'Small'][Math.floor(at / 3) % 2]!,
      write(start, 'dd/MM/yy'),
      write(start, 'HH:mm'),
      write(later(start, 70 + (at % 8)), 'HH:mm'),
      loads[at % 6]!,
      stopped ? '' : wave(at, 121.9, 0.6, 1),
      stopped ? '' : 15 + (at % 2) * 5,
      stopped ? '' : wave(at, 118, 2, 0, 4),
      stopped ? 'Stopped' : 'OK',
      stopped ? 'Low steam pressure' : '',
      ['ab', 'cd'][at % 2]!,
    ]);
  }
  const cleans: string[][] = [['Week of', 'Autoclave', 'What was cleaned', 'Date done', 'By', 'Notes']];
  for (let at = 0; at < 24; at++) {
    const week = wall('2024-06-03', 7 * Math.floor(at / 2));
    cleans.push([
      write(week, 'dd/MM/yy'),
      ['Large', 'Small'][at % 2]!,
      at % 8 < 2 ? 'Chamber and door' : 'Drain filter',
      at === 17 ? '' : write(wall('2024-06-03', 7 * Math.floor(at / 2) + (at % 5)), 'dd/MM/yy'),
      ['ab', 'cd'][at % 2]!,
      at === 10 ? 'agar in the filter' : '',
    ]);
  }
  const inspections: (string | number)[][] = [
    [
      'Inspection date',
      'Autoclave',
      'Chamber appearance (0-4)',
      'Residue after rinse (Y/N)',
      'Door seal condition',
      'Remarks',
    ],
  ];
  for (let at = 0; at < 16; at++)
    inspections.push([
      write(wall('2024-06-14', 7 * at), 'dd/MM/yy'),
      ['Large', 'Small'][at % 2]!,
      (at * 3) % 5,
      at % 4 === 3 ? 'Y' : 'N',
      at === 6 ? 'worn' : 'good',
      at === 9 ? 'brown film on the rear wall' : '',
    ]);
  return {
    name: 'laboratory',
    zone: 'Europe/Dublin',
    sources: [
      {
        file: 'autoclave runs',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Autoclave'] },
          start: { headers: ['Date', 'Start'], dates: ['dd/MM/yy HH:mm'] },
          end: { headers: ['Date', 'Finish'], dates: ['dd/MM/yy HH:mm'] },
          kind: { headers: ['Load type'] },
          outcome: { headers: ['Run OK?'] },
          cycle_number: { headers: ['Run'] },
          abort_text: { headers: ['Problem'] },
          exposure_s: { headers: ['Sterilising time (min)'], measure: 'min' },
          exposure_temperature_max_c: { headers: ['Peak temp °C'], measure: 'C' },
          drain_temperature_c: { headers: ['Drain temp °C'], measure: 'C' },
        },
        words: {
          kind: {
            'Culture media': 'liquids',
            Waste: 'production',
            Instruments: 'production',
            'Vacuum test': 'leak_test',
          },
          outcome: { OK: 'completed', Stopped: 'aborted' },
        },
        counts: counts(33),
      },
      {
        file: 'weekly cleaning',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Autoclave'] },
          task: { headers: ['What was cleaned'] },
          time: { headers: ['Date done'], dates: ['dd/MM/yy'] },
          note: { headers: ['Notes'] },
        },
        words: { task: { 'Chamber and door': 'chamber', 'Drain filter': 'drain_strainer' } },
        counts: counts(23, 0, 1),
      },
      {
        file: 'inspection book',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Autoclave'] },
          time: { headers: ['Inspection date'], dates: ['dd/MM/yy'] },
          appearance: { headers: ['Chamber appearance (0-4)'] },
          residue_after_rinsing: { headers: ['Residue after rinse (Y/N)'] },
          note: { headers: ['Remarks'] },
        },
        counts: counts(16),
      },
    ],
    files: {
      'autoclave runs autumn.csv': lines(runs, ',', '\n'),
      'weekly cleaning.csv': lines(cleans, ',', '\n'),
      'inspection book.csv': lines(inspections, ',', '\n'),
    },
  };
}

/** An Australian day clinic: one table-top unit whose name stands in the file names; the cleaning sheet is the typed paper sheet of a month. */
export async function clinic(): Promise<BlindStyle> {
  const cycles: (string | number)[][] = [
    ['# Export of cycle history'],
    [
      'Cycle ID',
      'Program',
      'Started',
      'Finished',
      'Duration',
      'Heat up (s)',
      'Holding (s)',
      'Drying (s)',
      'Min temp (°C)',
      'Max temp (°C)',
      'Pressure (kPa abs)',
      'Result',
      'Message',
    ],
  ];
  const programs = ['B134 Wrapped', 'Helix test', 'B134 Wrapped', 'Vacuum leak test', 'B134 Porous'];
  for (let at = 0; at < 35; at++) {
    const start = wall('2025-02-03', Math.floor(at / 2), 480 + 75 * (at % 2) + (at % 5));
    const bad = at === 16;
    cycles.push([
      1201 + at,
      programs[(at * 3 + Math.floor(at / 5)) % 5]!,
      write(start, 'd/MM/yyyy H:mm:ss'),
      write(later(start, 32 + (at % 7)), 'd/MM/yyyy H:mm:ss'),
      clock((32 + (at % 7)) * 60),
      wave(at, 310, 20, 0),
      bad ? '' : 210 + (at % 6),
      bad ? '' : 600,
      bad ? '' : wave(at, 134.6, 0.2, 1),
      bad ? '' : wave(at, 135.3, 0.2, 1, 3),
      bad ? '' : wave(at, 313, 3, 1),
      bad ? 'Cycle failed' : at === 28 ? 'Cancelled' : 'Passed',
      bad ? 'Heating too slow' : at === 28 ? 'Stopped by operator' : '',
    ]);
  }
  const wide: (string | number)[][] = [
    ['Steriliser cleaning - February 2025'],
    ['Tick when done, X not done, NA clinic closed'],
    ['Steriliser', 'Task', ...Array.from({ length: 28 }, (_, day) => day + 1), 'Checked'],
  ];
  let marks = 0;
  for (const [row, [unit, task, every]] of (
    [
      ['Bench 1', 'Clean drain strainer', 1],
      ['Bench 1', 'Clean chamber', 7],
      ['Bench 2', 'Clean drain strainer', 1],
      ['Bench 2', 'Clean chamber', 7],
    ] as const
  ).entries()) {
    const cells = Array.from({ length: 28 }, (_, day) => {
      if (day % every !== 0) return '';
      if (isSunday(wall('2025-02-01', day))) return every === 1 ? 'NA' : '';
      return (day + row) % 10 === 6 ? 'X' : '✓';
    });
    marks += cells.filter((cell) => cell !== '').length;
    wide.push([unit, task, ...cells, row % 2 ? 'LM' : '']);
  }
  const service: string[][] = [
    ['Job no', 'Equipment', 'Date out', 'Date back', 'Type of work', 'Details', 'Cost (AUD)'],
  ];
  for (let at = 0; at < 15; at++) {
    const from = wall('2022-03-08', 71 * at);
    service.push([
      `J${3310 + at * 4}`,
      ['Bench 1', 'Bench 2'][at % 2]!,
      write(from, 'd/MM/yyyy'),
      write(wall('2022-03-08', 71 * at + (at % 3)), 'd/MM/yyyy'),
      ['Annual service', 'Repair', 'Repair', 'Control board replaced'][at % 4]!,
      ['filters and seals changed', 'door lock', 'vacuum pump', 'new board, settings restored'][at % 4]!,
      wave(at, 420, 180, 2),
    ]);
  }
  return {
    name: 'clinic',
    zone: 'Australia/Sydney',
    sources: [
      {
        file: 'Bench 1 cycles',
        kind: 'cycles',
        columns: {
          unit: { from: 'file_name' },
          start: { headers: ['Started'], dates: ['d/MM/yyyy H:mm:ss'] },
          end: { headers: ['Finished'], dates: ['d/MM/yyyy H:mm:ss'] },
          kind: { headers: ['Program'] },
          outcome: { headers: ['Result'] },
          cycle_number: { headers: ['Cycle ID'] },
          abort_text: { headers: ['Message'] },
          heat_up_s: { headers: ['Heat up (s)'], measure: 's' },
          exposure_s: { headers: ['Holding (s)'], measure: 's' },
          drying_s: { headers: ['Drying (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['Min temp (°C)'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Max temp (°C)'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Pressure (kPa abs)'], measure: 'kPa absolute' },
        },
        words: {
          kind: {
            'B134 Wrapped': 'production',
            'Helix test': 'air_removal_test',
            'Vacuum leak test': 'leak_test',
            'B134 Porous': 'production',
          },
          outcome: { Passed: 'completed', 'Cycle failed': 'failed', Cancelled: 'aborted' },
        },
        counts: counts(35),
      },
      {
        file: 'cleaning sheet',
        kind: 'cleanings',
        wide: 'day of month',
        columns: { unit: { headers: ['Steriliser'] }, task: { headers: ['Task'] } },
        words: {
          task: { 'Clean drain strainer': 'drain_strainer', 'Clean chamber': 'chamber' },
          state: { '✓': 'done', X: 'missed', NA: 'not_due' },
        },
        counts: counts(marks),
      },
      {
        file: 'service history',
        kind: 'service',
        columns: {
          unit: { headers: ['Equipment'] },
          from: { headers: ['Date out'], dates: ['d/MM/yyyy'] },
          to: { headers: ['Date back'], dates: ['d/MM/yyyy'] },
          kind: { headers: ['Type of work'] },
          note: { headers: ['Details'] },
        },
        words: {
          kind: {
            'Annual service': 'maintenance',
            Repair: 'repair',
            'Control board replaced': 'controller_replaced',
          },
        },
        counts: counts(15),
      },
    ],
    files: {
      'Bench 1 cycles.csv': lines(cycles, ','),
      'cleaning sheet.csv': lines(wide, ','),
      'service history.csv': lines(service, ','),
    },
  };
}
