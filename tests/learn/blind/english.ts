// Over 300 lines: the tables of one style and their truth side by side.
import { workbook } from '../../ingest/workbook.ts';
import { fahrenheit, madeUpDays, minutesSeconds, parts, rows } from './made-up-days.ts';

type Files = Record<string, string | Uint8Array>;

/** A theatre department: preamble, comma, day first, gauge pressure in bar, mm:ss; a typed paper log of cleaning, ticks and initials. */
export async function theatre(): Promise<Files> {
  const cycles = madeUpDays(11, 3, '2025-03-01', 31);
  const names = ['Autoclave 1', 'Autoclave 2', 'Autoclave 3'];
  const programs = {
    warm_up: 'Warm-up',
    air_removal_test: 'B&D 134',
    leak_test: 'Auto leak',
    production: 'Porous 134',
    liquids: 'Fluids 121',
  };
  const ends = { completed: 'Cycle OK', aborted: 'Aborted', failed: 'Cycle fail' };
  const faults = ['', 'Vac not reached', 'Operator abort', 'Door seal press low'];
  const date = (time: number) => `${parts(time).dd}/${parts(time).MM}/${parts(time).yyyy}`;
  const clock = (time: number) => `${parts(time).HH}:${parts(time).mm}:${parts(time).ss}`;
  const log = cycles.map((one) => [
    names[one.unit]!,
    String(one.number),
    date(one.start),
    clock(one.start),
    clock(one.end),
    programs[one.kind],
    ends[one.outcome],
    one.outcome === 'completed' ? '' : faults[one.abort]!,
    minutesSeconds(one.evacuation),
    minutesSeconds(one.heatUp),
    minutesSeconds(one.exposure),
    minutesSeconds(one.drying),
    one.low.toFixed(1),
    one.high.toFixed(1),
    ((one.pressure - 101.3) / 100).toFixed(2),
    (one.low - 3.4).toFixed(1),
  ]);
  const tests = cycles
    .filter(({ kind }) => kind === 'air_removal_test')
    .map((one) => [
      date(one.end),
      `${parts(one.end).HH}:${parts(one.end).mm}`,
      names[one.unit]!,
      String(one.number),
      one.passed ? 'Satisfactory' : 'Unsatisfactory',
      one.passed ? '' : 'Pale centre, engineer informed',
    ]);
  const marks = (unit: number, task: number) =>
    Array.from({ length: 31 }, (_, day) =>
      (day * 7 + unit * 3 + task) % 9 === 0 ? null : (day + unit) % 8 === 0 ? 'X' : '✓',
    );
  const paper = names.flatMap((name, unit) => [
    [name, 'Strainer', ...marks(unit, 0)],
    [name, 'Chamber clean', ...marks(unit, 4).map((mark, day) => (day % 7 === 5 ? mark : null))],
  ]);
  return {
    'cycle-log-mar.csv': `Cycle report\r\nDepartment: Theatre Sterile Services\r\nPeriod: 01/03/2025 - 31/03/2025\r\n\r\n${rows(
      ',',
      [
        [
          'Machine',
          'Cyc No',
          'Date',
          'Time On',
          'Time Off',
          'Prog',
          'Status',
          'Fault Msg',
          'Evac',
          'Ht Up',
          'Plateau',
          'Dry',
          'Tmin degC',
          'Tmax degC',
          'Plateau Press barg',
          'Jkt degC',
        ],
        ...log,
      ],
    )}`,
    'bd-tests.csv': rows(',', [['Date', 'Time', 'Machine', 'Cyc No', 'B&D Test', 'Remarks'], ...tests]),
    'cleaning-sheet.xlsx': await workbook([
      {
        name: 'March',
        rows: [
          ['Daily cleaning - March 2025'],
          ['Machine', 'Task', ...Array.from({ length: 31 }, (_, day) => day + 1)],
          ...paper,
        ],
      },
    ]),
  };
}

/** A hospital that writes months first, twelve hours, Fahrenheit, psig and inches of mercury; names differ in each file but can be seen to be the same. */
export async function prevac(): Promise<Files> {
  const cycles = madeUpDays(12, 2, '2025-05-01', 28);
  const us = (time: number) => `${parts(time).M}/${parts(time).d}/${parts(time).yyyy}`;
  const twelve = (time: number) =>
    `${us(time)} ${parts(time).h}:${parts(time).mm}:${parts(time).ss} ${parts(time).half}`;
  const types = {
    warm_up: 'Pre-heat',
    air_removal_test: 'Bowie Dick',
    leak_test: 'Vac Leak',
    production: 'Prevac 270',
    liquids: 'Liquid 250',
  };
  const ends = { completed: 'Complete', aborted: 'Abort', failed: 'Fail' };
  const alarms = ['Evac too long', 'Exhaust too long', 'Steam supply low', 'Cycle cancelled by user'];
  return {
    'Load Records 2025-05.csv': rows(',', [
      [
        'Ster ID',
        'Load #',
        'Cycle Type',
        'Cycle Start',
        'Cycle End',
        'Cond Time',
        'Come-Up Time',
        'Exp Time',
        'Exh Time',
        'Dry Time',
        'Min Exp Temp (F)',
        'Max Exp Temp (F)',
        'Exp Press (psig)',
        'Dry Vac (inHg)',
        'Cycle Result',
        'Alarm Text',
        'Load Contents',
      ],
      ...cycles.map((one) => [
        `STER-0${one.unit + 1}`,
        String(one.number),
        types[one.kind],
        twelve(one.start),
        twelve(one.end),
        String(one.evacuation),
        String(one.heatUp),
        String(one.exposure),
        String(one.exhaust),
        String(one.drying),
        fahrenheit(one.low).toFixed(1),
        fahrenheit(one.high).toFixed(1),
        ((one.pressure - 101.3) / 6.895).toFixed(1),
        ((101.3 - one.vacuum) / 3.3864).toFixed(1),
        ends[one.outcome],
        one.outcome === 'completed' ? '' : alarms[one.abort]!,
        one.kind === 'production' ? '"Ortho set, basins"' : '',
      ]),
      ['Total', String(cycles.length), '', '', '', '', '', '', '', '', '', '', '', '', '', '', ''],
    ]),
    'BD log.csv': rows(',', [
      ['Test Dt/Tm', 'Ster ID', 'Load #', 'P/F', 'Read By', 'Comments'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [
          twelve(one.end),
          `STER-0${one.unit + 1}`,
          String(one.number),
          one.passed ? 'P' : 'F',
          'JQ',
          '',
        ]),
    ]),
    'Leak log.csv': rows(',', [
      ['Test Dt/Tm', 'Ster ID', 'Leak Rate (mmHg/min)', 'Max Allowed (mmHg/min)', 'P/F'],
      ...cycles
        .filter(({ kind }) => kind === 'leak_test')
        .map((one) => [
          twelve(one.end),
          `STER-0${one.unit + 1}`,
          (one.leak * 7.5).toFixed(2),
          '1.00',
          one.leak * 7.5 <= 1 ? 'P' : 'F',
        ]),
    ]),
    'Cleaning log.csv': rows(',', [
      ['Svc Date', 'Ster ID', 'Cleaning Performed', 'Done?', 'Reason', 'Logged On', 'Initials'],
      ...cycles
        .filter(({ kind }) => kind === 'warm_up')
        .map((one, at) => [
          twelve(one.start - 900_000),
          `STER-0${one.unit + 1}`,
          at % 14 === 6 ? 'Chamber wash' : 'Drain screen',
          at % 9 === 8 ? 'N' : 'Y',
          at % 28 === 6 ? 'After failure' : 'Scheduled',
          twelve(one.start),
          'JQ',
        ]),
    ]),
  };
}

/** A bare data logger: pipe, times without any marks or as ISO with an offset, short lower-case names; service and water kept by the works department. */
export async function logger(): Promise<Files> {
  const cycles = madeUpDays(13, 2, '2026-02-02', 21);
  const bare = (time: number) => {
    const p = parts(time);
    return `${p.yyyy}${p.MM}${p.dd}${p.HH}${p.mm}${p.ss}`;
  };
  const offset = (time: number) => {
    const p = parts(time);
    return `${p.yyyy}-${p.MM}-${p.dd}T${p.HH}:${p.mm}:${p.ss}+11:00`;
  };
  const codes = {
    warm_up: 'WARMUP',
    air_removal_test: 'BDT',
    leak_test: 'VLT',
    production: 'WRAP134',
    liquids: 'FLUID121',
  };
  const ends = { completed: 'COMPLETE', aborted: 'ABORTED', failed: 'FAILED' };
  const alarms = ['VACUUM TIMEOUT', 'AIR DETECTOR', 'WATER SUPPLY', 'DOOR OPEN'];
  return {
    'events.txt': `# logger dump\n# clock: local\n${rows(
      '|',
      [
        [
          'ster',
          'cycle_no',
          'ts_start',
          'ts_end',
          'prog',
          'result',
          'alarm_txt',
          't_evac_s',
          't_heat_s',
          't_ster_s',
          't_exh_s',
          't_dry_s',
          'temp_min_c',
          'temp_max_c',
          'p_ster_kpa_a',
          'p_dry_kpa_a',
          'temp_drain_c',
          'f0',
        ],
        ...cycles.map((one) => [
          `S${one.unit + 1}`,
          String(one.number),
          bare(one.start),
          bare(one.end),
          codes[one.kind],
          ends[one.outcome],
          one.outcome === 'completed' ? '' : alarms[one.abort]!,
          String(one.evacuation),
          String(one.heatUp),
          String(one.exposure),
          String(one.exhaust),
          String(one.drying),
          one.low.toFixed(1),
          one.high.toFixed(1),
          one.pressure.toFixed(0),
          one.vacuum.toFixed(1),
          one.drain.toFixed(1),
          (20 + one.low / 10).toFixed(1),
        ]),
      ],
      '\n',
    )}`,
    'tests.tsv': rows(
      '\t',
      [
        ['logged', 'ster', 'test', 'outcome', 'cycle_no'],
        ...cycles
          .filter(({ kind }) => kind === 'air_removal_test')
          .map((one) => [
            offset(one.end),
            `S${one.unit + 1}`,
            'BDT',
            one.passed ? 'passed' : 'failed',
            String(one.number),
          ]),
      ],
      '\n',
    ),
    'works orders.csv': rows(
      ',',
      [
        ['Asset', 'Work Started', 'Work Completed', 'WO Type', 'Major', 'Work Done'],
        ['S1', '2026-02-05 08:10', '2026-02-05 15:40', 'Breakdown', 'No', 'Vacuum pump seal'],
        ['S2', '2026-02-09 07:30', '2026-02-09 12:00', 'PPM', 'No', 'Quarterly'],
        ['S1', '2026-02-17 07:00', '2026-02-19 16:20', 'Controller upgrade', 'Yes', 'New control fitted'],
        ['S2', '2026-02-20 06:30', '2026-02-20 10:00', 'Descale', 'No', 'Chamber, contractor'],
      ],
      '\n',
    ),
    'steam quality.csv': rows(
      ',',
      [
        ['Sample Pt', 'Sampled', 'Parameter', 'Reading', 'UoM'],
        ['Feedwater RO', '2026-02-03', 'Conductivity', '4.1', 'uS/cm'],
        ['Feedwater RO', '2026-02-03', 'Silica', '0.2', 'mg/L'],
        ['Steam condensate S1', '2026-02-17', 'Conductivity', '3.0', 'uS/cm'],
        ['Steam condensate S2', '2026-02-17', 'pH', '6.4', ''],
      ],
      '\n',
    ),
  };
}
