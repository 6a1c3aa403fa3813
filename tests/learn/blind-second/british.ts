// Over 300 lines: the tables of one style and their truth side by side.
import { workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { at, madeUpLog, table, withRows } from './made-up-log.ts';

const day = (time: number): string => {
  const { y, m, d } = at(time);
  return `${d}/${m}/${y}`;
};

/** United Kingdom: day before month, mbar, every cell quoted; leak tests with a limit; a workbook of visits and chamber checks. */
export async function wardens(): Promise<BlindStyle> {
  const NAMES = ['Machine 1', 'Machine 2', 'Machine 3'];
  const runs = madeUpLog(21, 3, '2024-06-17', 5, 2);
  const cycles = runs.filter(({ what }) => what !== 'leak');
  const PROGRAMS = {
    warm: 'Warm-up',
    test: 'B&D',
    leak: '',
    load: '134 Porous',
    fluid: '121 Bottled fluids',
  };
  const ENDS = { ok: 'Satisfactory', stopped: 'Aborted by user', bad: 'Unsatisfactory' };
  const quoted = (row: readonly (string | number)[]): string[] => row.map((cell) => `"${cell}"`);
  const lines = cycles.map((run) => [
    NAMES[run.unit]!,
    run.number,
    day(run.start),
    at(run.start).clock,
    at(run.end).clock,
    PROGRAMS[run.what],
    ENDS[run.ended],
    run.ended === 'bad' ? 'Stage 4 timed out' : '',
    run.heatUp,
    run.exposure,
    run.exhaust,
    run.low.toFixed(1),
    run.high.toFixed(1),
    Math.round(run.pressure * 10),
    Math.round(run.vacuum * 10),
    run.what === 'load' ? 'Theatres' : '',
  ]);
  const header =
    'Machine|Cycle No|Date|Start|Finish|Programme|Result|Fault|Come-up (s)|Plateau (s)|Vent (s)|Plateau min degC|Plateau max degC|Plateau mbara|Dry vac mbara|Customer'.split(
      '|',
    );
  const rows = withRows(lines, [
    [5, lines[4]!],
    [18, [...header]],
    [
      30,
      [
        'Machine 2',
        'xx',
        '31/06/2024',
        '10:10:00',
        '10:55:00',
        '134 Porous',
        'Satisfactory',
        '',
        95,
        240,
        80,
        '134.5',
        '135.0',
        3080,
        55,
        '',
      ],
    ],
  ]);
  const leaks = madeUpLog(22, 3, '2024-04-01', 56, 0).filter(({ what }) => what === 'leak');
  const leakLines = leaks.map((run, place) => [
    place + 1,
    `${day(run.start)} ${at(run.start).clock.slice(0, 5)}`,
    `Machine ${run.unit + 1}`,
    run.number,
    (run.leak * 10).toFixed(2),
    '1.3',
    run.leak > 0.13 ? 'F' : 'P',
    'AP(D)',
  ]);
  const DATE = { format: 'dd/mm/yyyy' };
  const days = (text: string) => ({ value: new Date(`${text}T00:00:00Z`), ...DATE });
  const VISITS = [
    'Quarterly',
    'Breakdown',
    'Annual strip and descale',
    'Quarterly',
    'Controller swap',
    'Taken out of use',
  ];
  const visits = Array.from({ length: 24 }, (_, place) => {
    const from = Date.parse('2023-01-09') + place * 31 * 86_400_000;
    return [
      `J${2200 + place}`,
      `Machine ${(place % 3) + 1}`,
      VISITS[place % 6]!,
      days(at(from).date),
      days(at(from + (place % 4) * 86_400_000).date),
      place % 6 === 4 ? 'Yes' : 'No',
      place % 6 === 1 ? 'door gasket replaced' : null,
      450 + place * 10,
    ];
  });
  const checks = Array.from({ length: 30 }, (_, place) => [
    days(at(Date.parse('2024-01-05') + place * 6 * 86_400_000).date),
    `Machine ${(place % 3) + 1}`,
    (place * 7) % 5,
    place % 5 === 2 ? 'Y' : 'N',
    place % 8 === 3 ? 'brown marks near drain' : null,
  ]);
  return {
    name: 'wardens',
    zone: 'Europe/London',
    files: {
      'Batch log June.csv': table(',', [header, ...rows].map(quoted)),
      'ALT register.csv': table(',', [
        ['Seq', 'Tested on', 'Mach', 'Cyc', 'Rise mbar/min', 'Max allowed', 'P/F', 'Authorised'],
        ...leakLines,
      ]),
      'Plant file.xlsx': await workbook([
        {
          name: 'Visits',
          rows: [
            [
              'Job',
              'Plant',
              'Visit type',
              'Out of use from',
              'Back in use',
              'Reval needed',
              'Comments',
              'Cost GBP',
            ],
            ...visits,
          ],
        },
        {
          name: 'Chamber checks',
          rows: [['Checked', 'Plant', 'Score (0-4)', 'Residue?', 'Comments'], ...checks],
        },
      ]),
    },
    sources: [
      {
        file: 'Batch log June.csv',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Machine'] },
          start: { headers: ['Date', 'Start'], dates: ['dd/MM/yyyy HH:mm:ss'] },
          end: { headers: ['Date', 'Finish'], dates: ['dd/MM/yyyy HH:mm:ss'] },
          kind: { headers: ['Programme'] },
          outcome: { headers: ['Result'] },
          cycle_number: { headers: ['Cycle No'] },
          abort_text: { headers: ['Fault'] },
          heat_up_s: { headers: ['Come-up (s)'], measure: 's' },
          exposure_s: { headers: ['Plateau (s)'], measure: 's' },
          exhaust_s: { headers: ['Vent (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['Plateau min degC'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Plateau max degC'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Plateau mbara'], measure: 'mbar absolute' },
          dry_vacuum_kpa: { headers: ['Dry vac mbara'], measure: 'mbar absolute' },
        },
        words: {
          kind: {
            'Warm-up': 'warm_up',
            'B&D': 'air_removal_test',
            '134 Porous': 'production',
            '121 Bottled fluids': 'liquids',
          },
          outcome: { Satisfactory: 'completed', 'Aborted by user': 'aborted', Unsatisfactory: 'failed' },
        },
        counts: { records: cycles.length, duplicates: 1, rejected: 1, skipped: 1 },
      },
      {
        file: 'ALT register.csv',
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['Mach'] },
          time: { headers: ['Tested on'], dates: ['dd/MM/yyyy HH:mm'] },
          leak_rate_kpa_min: { headers: ['Rise mbar/min'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['Max allowed'], measure: 'mbar per min' },
          cycle_number: { headers: ['Cyc'] },
        },
        counts: { records: leaks.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Plant file.xlsx',
        sheet: 'Visits',
        kind: 'service',
        columns: {
          unit: { headers: ['Plant'] },
          from: { headers: ['Out of use from'] },
          to: { headers: ['Back in use'] },
          kind: { headers: ['Visit type'] },
          major: { headers: ['Reval needed'] },
          note: { headers: ['Comments'] },
        },
        words: {
          kind: {
            Quarterly: 'maintenance',
            Breakdown: 'repair',
            'Annual strip and descale': 'professional_cleaning',
            'Controller swap': 'controller_replaced',
            'Taken out of use': 'out_of_service',
          },
        },
        counts: { records: 24, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Plant file.xlsx',
        sheet: 'Chamber checks',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Plant'] },
          time: { headers: ['Checked'] },
          appearance: { headers: ['Score (0-4)'] },
          residue_after_rinsing: { headers: ['Residue?'] },
          note: { headers: ['Comments'] },
        },
        counts: { records: 30, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** A laboratory: a log for each autoclave named in the file name, lines of remarks, bar gauge, lengths in minutes; vacuum holds over ten minutes; a cleaning log. */
export function bench(): BlindStyle {
  const runs = madeUpLog(31, 2, '2024-03-11', 9, 2).filter(({ what }) => what !== 'leak');
  const PROGRAMS = {
    warm: 'preheat_empty',
    test: 'air_test',
    leak: '',
    load: 'solids_134',
    fluid: 'media_121',
  };
  const ENDS = { ok: 'OK', stopped: 'ABORT', bad: 'FAULT' };
  const minutes = (seconds: number): string => (seconds / 60).toFixed(1);
  const log = (unit: number): string => {
    const own = runs.filter((run) => run.unit === unit);
    const lines = own.map((run) => [
      `${at(run.start).date}T${at(run.start).clock}`,
      `${at(run.end).date}T${at(run.end).clock}`,
      run.number,
      PROGRAMS[run.what],
      ENDS[run.ended],
      run.ended === 'bad' ? 'E07 heat-up timeout' : '',
      minutes(run.heatUp),
      minutes(run.exposure),
      run.low.toFixed(1),
      run.high.toFixed(1),
      (run.pressure / 100 - 1.013).toFixed(2),
      run.what === 'fluid' ? 'agar, 12 bottles' : '',
      `u${run.number % 4}`,
    ]);
    const text = table(
      '\t',
      withRows<(string | number)[]>(
        [
          [
            't_start',
            't_end',
            'run',
            'prog',
            'status',
            'msg',
            'heat_min',
            'hold_min',
            'Tmin',
            'Tmax',
            'P_barg',
            'content',
            'user',
          ],
          ...lines,
        ],
        [[9, lines[7]!]],
      ),
      '\n',
    );
    return `# autoclave log, clock UTC+0\n# exported by bench terminal\n${text}`;
  };
  const counted = (unit: number) => ({
    records: runs.filter((run) => run.unit === unit).length,
    duplicates: 1,
    rejected: 0,
    skipped: 0,
  });
  const columns = {
    unit: { from: 'file_name' as const },
    start: {
      headers: ['t_start'],
      dates: ["yyyy-MM-dd'T'HH:mm:ss", 'yyyy-MM-ddTHH:mm:ss', 'yyyy-MM-dd HH:mm:ss'],
    },
    end: {
      headers: ['t_end'],
      dates: ["yyyy-MM-dd'T'HH:mm:ss", 'yyyy-MM-ddTHH:mm:ss', 'yyyy-MM-dd HH:mm:ss'],
    },
    kind: { headers: ['prog'] },
    outcome: { headers: ['status'] },
    cycle_number: { headers: ['run'] },
    abort_text: { headers: ['msg'] },
    heat_up_s: { headers: ['heat_min'], measure: 'min' },
    exposure_s: { headers: ['hold_min'], measure: 'min' },
    exposure_temperature_min_c: { headers: ['Tmin'], measure: 'C' },
    exposure_temperature_max_c: { headers: ['Tmax'], measure: 'C' },
    exposure_pressure_kpa: { headers: ['P_barg'], measure: 'bar gauge' },
  };
  const words = {
    kind: {
      preheat_empty: 'warm_up',
      air_test: 'air_removal_test',
      solids_134: 'production',
      media_121: 'liquids',
    },
    outcome: { OK: 'completed', ABORT: 'aborted', FAULT: 'failed' },
  };
  const holds = Array.from({ length: 22 }, (_, place) => [
    at(Date.parse('2024-01-02T08:10:00Z') + place * 5 * 86_400_000).date,
    at(Date.parse('2024-01-02T08:10:00Z') + place * 37 * 60_000).clock.slice(0, 5),
    place % 2 ? 'AC-12' : 'AC-07',
    (2 + ((place * 5) % 11) + 0.4).toFixed(1),
    '13',
    place % 7 === 2 ? 'door seal wiped' : '',
  ]);
  const cleaned = Array.from({ length: 26 }, (_, place) => [
    at(Date.parse('2024-03-11') + place * 86_400_000).date,
    place % 2 ? 'AC-12' : 'AC-07',
    place % 10 === 4 ? 'chamber scrub' : place % 5 === 1 ? 'drain flush w/ hot water' : 'strainer basket',
    place % 8 === 5 ? 'agar boil-over' : 'weekly round',
    8 + ((place * 3) % 20),
    place % 9 === 0 ? 'label fragments found' : '',
  ]);
  return {
    name: 'bench',
    zone: 'Europe/London',
    files: {
      'runs_AC-07.log.txt': log(0),
      'runs_AC-12.log.txt': log(1),
      'vacuum hold.csv': table(
        ',',
        [['date', 'time', 'autoclave', 'rise mbar (10 min)', 'limit mbar (10 min)', 'remark'], ...holds],
        '\n',
      ),
      'cleaning diary.csv': table(
        ',',
        [['date', 'autoclave', 'what', 'why', 'min', 'remark'], ...cleaned],
        '\n',
      ),
    },
    sources: [
      { file: 'runs_AC-07.log.txt', kind: 'cycles', columns, words, counts: counted(0) },
      { file: 'runs_AC-12.log.txt', kind: 'cycles', columns, words: {}, counts: counted(1) },
      {
        file: 'vacuum hold.csv',
        kind: 'leak_tests',
        columns: {
          unit: { headers: ['autoclave'] },
          time: { headers: ['date', 'time'], dates: ['yyyy-MM-dd HH:mm'] },
          leak_rate_kpa_min: { headers: ['rise mbar (10 min)'], measure: 'mbar per 10 min' },
          limit_kpa_min: { headers: ['limit mbar (10 min)'], measure: 'mbar per 10 min' },
        },
        counts: { records: 22, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'cleaning diary.csv',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['autoclave'] },
          task: { headers: ['what'] },
          time: { headers: ['date'], dates: ['yyyy-MM-dd'] },
          minutes: { headers: ['min'] },
          reason: { headers: ['why'] },
          note: { headers: ['remark'] },
        },
        words: {
          task: {
            'chamber scrub': 'chamber',
            'drain flush w/ hot water': 'drain_flush',
            'strainer basket': 'drain_strainer',
          },
          reason: { 'agar boil-over': 'reactive', 'weekly round': 'routine' },
        },
        counts: { records: 26, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
