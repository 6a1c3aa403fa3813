// Over 300 lines: ten styles of exports side by side, each with its truth.
// Longer than other files: ten styles stand side by side, so that they can be compared and kept different.
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { type TestCell, workbook } from '../../ingest/workbook.ts';

/**
 * Ten ways in which exports may be written, made to look as different as possible, each with what is true of it: which column holds which field in which unit of
 * measure, how its dates are written, and how many records, duplicates and problems reading must find. All are inventions; none is any product's format.
 */
export interface Style {
  name: string;
  files: Record<string, string | Uint8Array>;
  /** Truth of each source, by a file that it reads (a part of the name). */
  truth: SourceTruth[];
  zone: string;
}

export interface SourceTruth {
  file: string;
  sheet?: string;
  kind: string;
  /** Field: its headers, or where else it comes from, and its measure. */
  columns: Record<
    string,
    { headers?: string[]; other?: 'file_name' | 'sheet_name' | 'always'; measure?: string }
  >;
  /** Pattern; several where nothing in the file tells them apart. */
  dates?: string | string[];
  decimal?: '.' | ',';
  counts: { records: number; duplicates: number; rejected: number; skipped: number };
}

const two = (value: number): string => String(value).padStart(2, '0');
const latin = (text: string): Uint8Array => Buffer.from(text, 'latin1');

/** A small stream of numbers that differ and repeat the same. */
function* numbers(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    yield state / 2_147_483_648;
  }
}

interface CycleFacts {
  day: number;
  month: number;
  hour: number;
  minute: number;
  number: number;
  kind: number;
  aborted: boolean;
  celsius: number;
  evacuation: number;
  heatUp: number;
  exposure: number;
  drying: number;
  vacuumKpa: number;
}

function cycles(seed: number, count: number, from: { month: number; day: number }): CycleFacts[] {
  const draw = numbers(seed);
  const next = (low: number, high: number): number => low + Math.floor(draw.next().value! * (high - low + 1));
  return Array.from({ length: count }, (_, at) => {
    const day = from.day + Math.floor(at / 3);
    return {
      day: ((day - 1) % 28) + 1,
      month: from.month + Math.floor((day - 1) / 28),
      hour: 6 + (at % 3) * 4,
      minute: next(0, 59),
      number: 400 + at,
      kind: at % 3 === 0 ? 0 : next(1, 3),
      aborted: next(0, 9) === 0,
      celsius: next(1340, 1349) / 10,
      evacuation: next(300, 460),
      heatUp: next(110, 190),
      exposure: 180 + 30 * next(0, 2),
      drying: 60 * next(10, 25),
      vacuumKpa: next(38, 60) / 10,
    };
  });
}

/** Saturation pressure, kPa absolute, near 134 C: IAPWS-IF97 table values 134 C 304.2, 135 C 313.2 (trade tables), straight between. */
const saturated = (celsius: number): number => 304.2 + (celsius - 134) * 9;
const clock = (seconds: number): string => `${two(Math.floor(seconds / 60))}:${two(seconds % 60)}`;
const end = ({ hour, minute }: CycleFacts, minutes = 50): string => {
  const total = hour * 60 + minute + minutes;
  return `${two(Math.floor(total / 60))}:${two(total % 60)}`;
};

export async function makeStyles(): Promise<Style[]> {
  return [
    plainEnglish(),
    germanSemicolon(),
    americanTabs(),
    await frenchWorkbook(),
    spanishTwoLines(),
    isoPipesPacked(),
    await wideStrainers(),
    await serialNumbers(),
    ambiguousDates(),
    leakAndService(),
  ];
}

/** 1. Comma, English, ISO times, a title, comments, totals, a repeated header, a duplicate row. */
function plainEnglish(): Style {
  const header =
    'Steriliser,Run no,Programme,Start time,End time,Status,Alarm text,Evac time (s),Heat-up time (s),Holding time (s),Drying time (s),Min temperature [°C],Max temperature [°C],Chamber pressure [kPa abs],Load ID,Operator';
  const kinds = ['Bowie-Dick', 'Wrapped instruments', 'Textiles', 'Liquids'];
  const rows = cycles(1, 60, { month: 3, day: 3 }).map((c) =>
    [
      'ST-1',
      c.number,
      kinds[c.kind],
      `2025-${two(c.month)}-${two(c.day)} ${two(c.hour)}:${two(c.minute)}:00`,
      `2025-${two(c.month)}-${two(c.day)} ${end(c)}:00`,
      c.aborted ? 'Aborted' : 'Completed',
      c.aborted ? '"Vacuum not reached, pulse 3"' : '',
      c.evacuation,
      c.heatUp,
      c.exposure,
      c.drying,
      c.celsius.toFixed(1),
      (c.celsius + 0.4).toFixed(1),
      saturated(c.celsius).toFixed(1),
      `L${c.number}`,
      'A. Sample',
    ].join(','),
  );
  rows.splice(30, 0, header, '# power cut, clock checked', rows[29]!);
  return {
    name: 'plain English',
    zone: 'Europe/London',
    files: {
      'steriliser-log.csv': [
        'Cycle log of the department,,,',
        '',
        header,
        ...rows,
        'Total,60,,,,,,,,,,,,,,',
        '',
      ].join('\r\n'),
    },
    truth: [
      {
        file: 'steriliser-log.csv',
        kind: 'cycles',
        dates: 'yyyy-MM-dd HH:mm:ss',
        decimal: '.',
        columns: {
          unit: { headers: ['Steriliser'] },
          cycle_number: { headers: ['Run no'] },
          kind: { headers: ['Programme'] },
          start: { headers: ['Start time'] },
          end: { headers: ['End time'] },
          outcome: { headers: ['Status'] },
          abort_text: { headers: ['Alarm text'] },
          evacuation_s: { headers: ['Evac time (s)'], measure: 's' },
          heat_up_s: { headers: ['Heat-up time (s)'], measure: 's' },
          exposure_s: { headers: ['Holding time (s)'], measure: 's' },
          drying_s: { headers: ['Drying time (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['Min temperature [°C]'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Max temperature [°C]'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Chamber pressure [kPa abs]'], measure: 'kPa absolute' },
        },
        counts: { records: 60, duplicates: 1, rejected: 0, skipped: 3 },
      },
    ],
  };
}

/** 2. Semicolon, German, Windows-1252, decimal comma, bar without a word for its reference, mm:ss, one file a unit, a bad cell in each. */
function germanSemicolon(): Style {
  const header =
    'Chargen-Nr.;Datum;Beginn;Ende;Programm;Ergebnis;Störung;Evakuierung;Aufheizzeit;Haltezeit;Trockenzeit;T min [°C];T max [°C];Druck [bar];Trockenvakuum [mbar];Bediener';
  const kinds = ['Bowie-Dick-Test', 'Instrumente verpackt', 'Textilien', 'Flüssigkeiten'];
  const make = (seed: number): string => {
    const rows = cycles(seed, 45, { month: 2, day: 10 }).map((c, at) =>
      [
        c.number,
        `${two(c.day)}.${two(c.month)}.2025`,
        `${two(c.hour)}:${two(c.minute)}`,
        end(c),
        kinds[c.kind],
        at === 20 ? 'vielleicht' : c.aborted ? 'abgebrochen' : 'i.O.',
        c.aborted ? 'Vakuum nicht erreicht' : '',
        clock(c.evacuation),
        clock(c.heatUp),
        clock(c.exposure),
        clock(c.drying),
        c.celsius.toFixed(1).replace('.', ','),
        (c.celsius + 0.5).toFixed(1).replace('.', ','),
        ((saturated(c.celsius) - 101.3) / 100).toFixed(2).replace('.', ','),
        (c.vacuumKpa * 10).toFixed(0),
        'mk',
      ].join(';'),
    );
    return [`Protokoll Gerät ${seed};;;`, header, ...rows, ''].join('\r\n');
  };
  return {
    name: 'German semicolons',
    zone: 'Europe/Berlin',
    files: { 'Chargenprotokoll_A12.csv': latin(make(2)), 'Chargenprotokoll_B07.csv': latin(make(3)) },
    truth: [
      {
        file: 'Chargenprotokoll',
        kind: 'cycles',
        dates: 'dd.MM.yyyy HH:mm',
        decimal: ',',
        columns: {
          unit: { other: 'file_name' },
          cycle_number: { headers: ['Chargen-Nr.'] },
          start: { headers: ['Datum', 'Beginn'] },
          end: { headers: ['Datum', 'Ende'] },
          kind: { headers: ['Programm'] },
          outcome: { headers: ['Ergebnis'] },
          abort_text: { headers: ['Störung'] },
          evacuation_s: { headers: ['Evakuierung'], measure: 'mm:ss' },
          heat_up_s: { headers: ['Aufheizzeit'], measure: 'mm:ss' },
          exposure_s: { headers: ['Haltezeit'], measure: 'mm:ss' },
          drying_s: { headers: ['Trockenzeit'], measure: 'mm:ss' },
          exposure_temperature_min_c: { headers: ['T min [°C]'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['T max [°C]'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Druck [bar]'], measure: 'bar gauge' },
          dry_vacuum_kpa: { headers: ['Trockenvakuum [mbar]'], measure: 'mbar absolute' },
        },
        counts: { records: 88, duplicates: 0, rejected: 2, skipped: 0 },
      },
    ],
  };
}

/** 3. Tabs, American: month first, AM and PM, Fahrenheit, psi gauge, inches of mercury, minutes with decimals; a test list beside it. */
function americanTabs(): Style {
  const header =
    'Autoclave\tCycle #\tCycle Type\tCycle Start\tCycle End\tFinal Status\tFault Message\tConditioning\tSterilize Time\tDry Time\tTmin F\tTmax F\tPressure PSIG\tDry Vacuum inHg';
  const kinds = ['B-D test', 'Prevac', 'Gravity', 'Liquid'];
  const half = (hour: number): string => `${((hour + 11) % 12) + 1}`;
  const time = (c: CycleFacts, hour: number, minute: number): string =>
    `${c.month}/${c.day}/2025 ${half(hour)}:${two(minute)} ${hour >= 12 ? 'PM' : 'AM'}`;
  const rows = cycles(4, 70, { month: 4, day: 1 }).map((c) => {
    const over = c.hour * 60 + c.minute + 50;
    return [
      'AC-4',
      c.number,
      kinds[c.kind],
      time(c, c.hour, c.minute),
      time(c, Math.floor(over / 60), over % 60),
      c.aborted ? 'Cycle aborted' : 'Cycle complete',
      c.aborted ? 'Chamber pressure low' : '',
      (c.evacuation / 60).toFixed(1),
      (c.exposure / 60).toFixed(1),
      (c.drying / 60).toFixed(0),
      (c.celsius * 1.8 + 32).toFixed(1),
      ((c.celsius + 0.4) * 1.8 + 32).toFixed(1),
      ((saturated(c.celsius) - 101.3) / 6.894757).toFixed(1),
      ((101.3 - c.vacuumKpa) / 3.386389).toFixed(1),
    ].join('\t');
  });
  const tests = cycles(4, 70, { month: 4, day: 1 })
    .filter(({ kind }) => kind === 0)
    .map((c, at) =>
      [
        'AC-4',
        `${c.month}/${c.day}/2025`,
        `${half(c.hour)}:${two(c.minute)} AM`,
        at === 5 ? 'Unsatisfactory' : 'Satisfactory',
        c.number,
        'J. Doe',
      ].join('\t'),
    );
  return {
    name: 'American tabs',
    zone: 'America/Chicago',
    files: {
      'cycle history.txt': [header, ...rows].join('\n'),
      'bowie dick tests.tsv': [
        'Sterilizer\tTest Date\tTest Time\tTest Result\tCycle Number\tRead by',
        ...tests,
        '',
      ].join('\n'),
    },
    truth: [
      {
        file: 'cycle history.txt',
        kind: 'cycles',
        dates: 'M/d/yyyy h:mm a',
        decimal: '.',
        columns: {
          unit: { headers: ['Autoclave'] },
          cycle_number: { headers: ['Cycle #'] },
          kind: { headers: ['Cycle Type'] },
          start: { headers: ['Cycle Start'] },
          end: { headers: ['Cycle End'] },
          outcome: { headers: ['Final Status'] },
          abort_text: { headers: ['Fault Message'] },
          evacuation_s: { headers: ['Conditioning'], measure: 'min' },
          exposure_s: { headers: ['Sterilize Time'], measure: 'min' },
          drying_s: { headers: ['Dry Time'], measure: 'min' },
          exposure_temperature_min_c: { headers: ['Tmin F'], measure: 'F' },
          exposure_temperature_max_c: { headers: ['Tmax F'], measure: 'F' },
          exposure_pressure_kpa: { headers: ['Pressure PSIG'], measure: 'psi gauge' },
          dry_vacuum_kpa: { headers: ['Dry Vacuum inHg'], measure: 'inHg vacuum' },
        },
        // The file does not end with a line end; its last row is whole all the same.
        counts: { records: 70, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'bowie dick tests.tsv',
        kind: 'air_removal_tests',
        dates: 'M/d/yyyy h:mm a',
        columns: {
          unit: { headers: ['Sterilizer'] },
          time: { headers: ['Test Date', 'Test Time'] },
          result: { headers: ['Test Result'] },
          cycle_number: { headers: ['Cycle Number'] },
        },
        counts: { records: 24, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 4. Workbook, French: merged title rows, one sheet a unit, typed dates and texts among them, a cleaning sheet beside. */
async function frenchWorkbook(): Promise<Style> {
  const header = [
    'N° de cycle',
    'Début',
    'Fin',
    'Type de cycle',
    'Résultat',
    'Durée plateau (min)',
    'Température mini (°C)',
    'Pression plateau (mbar)',
    'Visa',
  ];
  const kinds = ['Test Bowie-Dick', 'Charge emballée', 'Charge textile', 'Liquides'];
  const sheet = (name: string, seed: number) => ({
    name,
    rows: [
      ['Registre des cycles'],
      [null],
      header,
      ...cycles(seed, 30, { month: 5, day: 5 }).map((c): TestCell[] => [
        c.number,
        new Date(Date.UTC(2025, c.month - 1, c.day, c.hour, c.minute)),
        new Date(Date.UTC(2025, c.month - 1, c.day, c.hour, c.minute + 50)),
        kinds[c.kind]!,
        c.aborted ? 'Interrompu' : 'Conforme',
        c.exposure / 60,
        c.celsius,
        Math.round(saturated(c.celsius) * 10),
        'ab',
      ]),
      ['Total', null, null, null, null, null, null, null, null],
    ] as TestCell[][],
  });
  const cleaning = {
    name: 'Nettoyages',
    rows: [
      ['Appareil', 'Tâche', 'Fait le', 'Durée (min)', 'État', 'Motif'],
      ...Array.from({ length: 20 }, (_, at): TestCell[] => [
        at % 2 === 0 ? 'Salle 1' : 'Salle 2',
        at % 5 === 0 ? 'Nettoyage chambre' : 'Crépine',
        new Date(Date.UTC(2025, 4, 5 + at, 6, 10)),
        at % 5 === 0 ? 45 : 5,
        at === 7 ? 'omis' : 'fait',
        'prévu',
      ]),
    ] as TestCell[][],
  };
  return {
    name: 'French workbook',
    zone: 'Europe/Paris',
    files: { 'suivi.xlsx': await workbook([sheet('Salle 1', 5), sheet('Salle 2', 6), cleaning]) },
    truth: [
      {
        file: 'suivi.xlsx',
        sheet: 'Salle 1',
        kind: 'cycles',
        decimal: '.',
        columns: {
          unit: { other: 'sheet_name' },
          cycle_number: { headers: ['N° de cycle'] },
          start: { headers: ['Début'] },
          end: { headers: ['Fin'] },
          kind: { headers: ['Type de cycle'] },
          outcome: { headers: ['Résultat'] },
          exposure_s: { headers: ['Durée plateau (min)'], measure: 'min' },
          exposure_temperature_min_c: { headers: ['Température mini (°C)'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Pression plateau (mbar)'], measure: 'mbar absolute' },
        },
        counts: { records: 60, duplicates: 0, rejected: 0, skipped: 2 },
      },
      {
        file: 'suivi.xlsx',
        sheet: 'Nettoyages',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Appareil'] },
          task: { headers: ['Tâche'] },
          time: { headers: ['Fait le'] },
          minutes: { headers: ['Durée (min)'] },
          state: { headers: ['État'] },
          reason: { headers: ['Motif'] },
        },
        counts: { records: 20, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 5. Semicolon, Spanish, UTF-8 mark, header in two lines with a row of units, day first with slashes, hours without a leading zero. */
function spanishTwoLines(): Style {
  const upper = 'Equipo;Nº ciclo;Programa;Ciclo;;Resultado;Tiempo;;;Temperatura;;Presión;Observaciones';
  const lower = ';;;Inicio;Fin;;Evacuación (s);Exposición (s);Secado (s);mínima °C;máxima °C;bar abs;';
  const kinds = ['Prueba Bowie-Dick', 'Instrumental', 'Textil', 'Líquidos'];
  const rows = cycles(7, 66, { month: 1, day: 12 }).map((c, at) =>
    [
      'E3',
      c.number,
      kinds[c.kind],
      `${two(c.day)}/${two(c.month)}/2025 ${c.hour}:${two(c.minute)}`,
      `${two(c.day)}/${two(c.month)}/2025 ${end(c).replace(/^0/, '')}`,
      c.aborted ? 'Abortado' : 'Correcto',
      c.evacuation,
      c.exposure,
      c.drying,
      c.celsius.toFixed(1).replace('.', ','),
      (c.celsius + 0.6).toFixed(1).replace('.', ','),
      (saturated(c.celsius) / 100).toFixed(3).replace('.', ','),
      at === 9 ? '"visto por el técnico;\nrevisado"' : '',
    ].join(';'),
  );
  return {
    name: 'Spanish, header in two lines',
    zone: 'Europe/Madrid',
    files: { 'registro de ciclos 2025.csv': `\uFEFF${[upper, lower, ...rows, ''].join('\n')}` },
    truth: [
      {
        file: 'registro de ciclos 2025.csv',
        kind: 'cycles',
        dates: 'dd/MM/yyyy H:mm',
        decimal: ',',
        columns: {
          unit: { headers: ['Equipo'] },
          cycle_number: { headers: ['Nº ciclo'] },
          kind: { headers: ['Programa'] },
          start: { headers: ['Ciclo Inicio'] },
          end: { headers: ['Ciclo Fin'] },
          outcome: { headers: ['Resultado'] },
          evacuation_s: { headers: ['Tiempo Evacuación (s)'], measure: 's' },
          exposure_s: { headers: ['Tiempo Exposición (s)'], measure: 's' },
          drying_s: { headers: ['Tiempo Secado (s)'], measure: 's' },
          exposure_temperature_min_c: { headers: ['Temperatura mínima °C'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Temperatura máxima °C'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Presión bar abs'], measure: 'bar absolute' },
          abort_text: { headers: ['Observaciones'] },
        },
        counts: { records: 66, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 6. Bars, ISO with T, one .gz and one .zip with overlapping exports: a cycle that runs in one is over in the other. */
function isoPipesPacked(): Style {
  const header =
    'DeviceId|CycleCounter|CycleProgram|StartTimestamp|EndTimestamp|CycleResult|ExposureTimeSec|ChamberTempMin|ChamberTempMax|ChamberPressure_kPa_abs|DrainTemp';
  const kinds = ['BOWIE DICK', 'POROUS', 'INSTRUMENTS', 'FLUIDS'];
  const facts = cycles(8, 50, { month: 6, day: 2 });
  const row = (c: CycleFacts, running = false): string =>
    [
      'STE-9',
      c.number,
      kinds[c.kind],
      `2025-${two(c.month)}-${two(c.day)}T${two(c.hour)}:${two(c.minute)}:07`,
      running ? '' : `2025-${two(c.month)}-${two(c.day)}T${end(c)}:11`,
      running ? 'RUNNING' : c.aborted ? 'ABORTED' : 'PASSED',
      running ? '' : c.exposure,
      running ? '' : c.celsius.toFixed(2),
      running ? '' : (c.celsius + 0.3).toFixed(2),
      running ? '' : saturated(c.celsius).toFixed(1),
      running ? '' : (c.celsius - 0.9).toFixed(1),
    ].join('|');
  const first = [...facts.slice(0, 29).map((c) => row(c)), row(facts[29]!, true)];
  const second = facts.slice(25).map((c) => row(c));
  return {
    name: 'bars in archives',
    zone: 'Europe/Vienna',
    files: {
      'export-1.csv.gz': gzipSync([header, ...first, ''].join('\n')),
      'june.zip': zipSync({
        'out/export-2.csv': new TextEncoder().encode([header, ...second, ''].join('\n')),
      }),
    },
    truth: [
      {
        file: 'export-1.csv',
        kind: 'cycles',
        dates: 'yyyy-MM-dd HH:mm:ss',
        decimal: '.',
        columns: {
          unit: { headers: ['DeviceId'] },
          cycle_number: { headers: ['CycleCounter'] },
          kind: { headers: ['CycleProgram'] },
          start: { headers: ['StartTimestamp'] },
          end: { headers: ['EndTimestamp'] },
          outcome: { headers: ['CycleResult'] },
          exposure_s: { headers: ['ExposureTimeSec'], measure: 's' },
          exposure_temperature_min_c: { headers: ['ChamberTempMin'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['ChamberTempMax'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['ChamberPressure_kPa_abs'], measure: 'kPa absolute' },
          drain_temperature_c: { headers: ['DrainTemp'], measure: 'C' },
        },
        counts: { records: 50, duplicates: 5, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 7. Workbook with a sheet a month: a row a unit, a column a day, ticks and initials. */
async function wideStrainers(): Promise<Style> {
  const sheet = (name: string, days: number, seed: number) => ({
    name,
    rows: [
      [`Drain strainer cleaning, ${name} 2025`],
      [null],
      ['Sterilizer', ...Array.from({ length: days }, (_, at) => at + 1)],
      ...['S1', 'S2', 'S3'].map((unit, row): TestCell[] => [
        unit,
        ...Array.from(
          { length: days },
          (_, at): TestCell =>
            (at + row) % 7 === 6
              ? null
              : (at * 7 + row + seed) % 13 === 0
                ? 'missed'
                : (at + seed) % 5 === 0
                  ? 'KM'
                  : '✓',
        ),
      ]),
    ] as TestCell[][],
  });
  const filled = (days: number): number =>
    [0, 1, 2].reduce(
      (sum, row) => sum + Array.from({ length: days }).filter((_, at) => (at + row) % 7 !== 6).length,
      0,
    );
  return {
    name: 'wide cleaning sheets',
    zone: 'Europe/Dublin',
    files: { 'strainers.xlsx': await workbook([sheet('March', 31, 0), sheet('April', 30, 3)]) },
    truth: [
      {
        file: 'strainers.xlsx',
        sheet: 'March',
        kind: 'cleanings',
        columns: { unit: { headers: ['Sterilizer'] }, task: { other: 'always' } },
        counts: { records: filled(31) + filled(30), duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 8. Workbook saved with numbers for dates, durations as cells of numbers, English in capitals; two kinds of record on two sheets. */
async function serialNumbers(): Promise<Style> {
  const serial = (c: CycleFacts, add = 0): number =>
    (Date.UTC(2025, c.month - 1, c.day, c.hour, c.minute + add) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const facts = cycles(9, 40, { month: 7, day: 1 });
  const cyclesSheet = {
    name: 'RUNS',
    rows: [
      [
        'MACHINE',
        'RUN NUMBER',
        'TYPE',
        'STARTED',
        'FINISHED',
        'COMPLETION',
        'HOLD TIME',
        'DRYING',
        'TEMP MIN',
        'TEMP MAX',
        'PRESSURE BAR',
      ],
      ...facts.map((c): TestCell[] => [
        'M2',
        c.number,
        ['AIR REMOVAL TEST', 'WRAPPED', 'LINEN', 'LIQUIDS'][c.kind]!,
        serial(c),
        serial(c, 50),
        c.aborted ? 'STOPPED' : 'OK',
        c.exposure,
        c.drying,
        c.celsius,
        c.celsius + 0.5,
        Math.round(saturated(c.celsius)) / 100,
      ]),
    ] as TestCell[][],
  };
  const leak = {
    name: 'LEAK',
    rows: [
      ['MACHINE', 'DATE', 'LEAK RATE MBAR/MIN', 'LIMIT MBAR/MIN'],
      ...Array.from({ length: 15 }, (_, at): TestCell[] => [
        'M2',
        serial({ ...facts[0]!, day: 1 + at * 2, hour: 5, minute: 30 }),
        0.4 + (at % 5) / 10,
        1.3,
      ]),
    ] as TestCell[][],
  };
  return {
    name: 'days as numbers',
    zone: 'Europe/Rome',
    files: { 'data.xlsx': await workbook([cyclesSheet, leak]) },
    truth: [
      {
        file: 'data.xlsx',
        sheet: 'RUNS',
        kind: 'cycles',
        dates: 'serial 1900',
        decimal: '.',
        columns: {
          unit: { headers: ['MACHINE'] },
          cycle_number: { headers: ['RUN NUMBER'] },
          kind: { headers: ['TYPE'] },
          start: { headers: ['STARTED'] },
          end: { headers: ['FINISHED'] },
          outcome: { headers: ['COMPLETION'] },
          exposure_s: { headers: ['HOLD TIME'], measure: 's' },
          drying_s: { headers: ['DRYING'], measure: 's' },
          exposure_temperature_min_c: { headers: ['TEMP MIN'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['TEMP MAX'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['PRESSURE BAR'], measure: 'bar absolute' },
        },
        counts: { records: 40, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'data.xlsx',
        sheet: 'LEAK',
        kind: 'leak_tests',
        dates: 'serial 1900',
        columns: {
          unit: { headers: ['MACHINE'] },
          time: { headers: ['DATE'] },
          leak_rate_kpa_min: { headers: ['LEAK RATE MBAR/MIN'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['LIMIT MBAR/MIN'], measure: 'mbar per min' },
        },
        counts: { records: 15, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 9. Dates that nothing tells apart (first ten days of a month, no order), UTF-16, inspections with people in it. */
function ambiguousDates(): Style {
  const days = [7, 3, 9, 4, 10, 5, 8, 6];
  const rows = days.map((day, at) =>
    [
      `Unit ${at % 3}`,
      `${two(day)}/${two(((day + at) % 9) + 1)}/2025`,
      at % 4,
      at % 2 === 0 ? 'No' : 'Yes',
      at === 2 ? '"brown, at the drain"' : '',
      ['Ada Example', 'Bo Sample', 'Cy Testcase'][at % 3],
    ].join(','),
  );
  const text = [
    'Unit,Inspection date,Appearance score,Residue after rinsing,Remarks,Inspector name',
    ...rows,
    '',
  ].join('\r\n');
  return {
    name: 'ambiguous dates in UTF-16',
    zone: 'America/Toronto',
    files: {
      'chamber inspections.csv': Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]),
    },
    truth: [
      {
        file: 'chamber inspections.csv',
        kind: 'inspections',
        dates: ['dd/MM/yyyy', 'MM/dd/yyyy'],
        columns: {
          unit: { headers: ['Unit'] },
          time: { headers: ['Inspection date'] },
          appearance: { headers: ['Appearance score'] },
          residue_after_rinsing: { headers: ['Residue after rinsing'] },
          note: { headers: ['Remarks'] },
        },
        counts: { records: 8, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** 10. Three small lists of one department: leak tests in kPa over ten minutes, service, water; month names, quotes everywhere, a percent sign for comments. */
function leakAndService(): Style {
  const q = (...cells: (string | number)[]): string => cells.map((cell) => `"${cell}"`).join(',');
  const months = ['Jan', 'Feb', 'Mar', 'Apr'];
  const leaks = Array.from({ length: 24 }, (_, at) =>
    q(
      'North',
      `${two((at % 28) + 1)}-${months[at % 4]}-2025`,
      `0${5 + (at % 3)}:15`,
      (0.3 + (at % 7) / 10).toFixed(2),
      1.3,
    ),
  );
  const service = [
    q('North', '03 Feb 2025 08:00', '03 Feb 2025 12:30', 'Repair', 'N', 'valve replaced'),
    q('South', '17 Mar 2025 09:15', '17 Mar 2025 11:00', 'Preventive maintenance', 'N', ''),
    q('South', '02 Apr 2025 07:00', '04 Apr 2025 16:00', 'New controller', 'Y', 'control upgrade'),
    q('North', '21 Apr 2025 07:00', '', 'Inspected roof', 'N', ''),
  ];
  const water = ['conductivity', 'chloride', 'pH'].flatMap((what, at) => [
    q('Feed tank', '2025-03-14', what, 3.2 + at, at === 2 ? 'pH' : 'mg/l'),
    q('Feed tank', '2025-06-13', what, 3.4 + at, at === 2 ? 'pH' : 'mg/l'),
  ]);
  return {
    name: 'three small lists',
    zone: 'Australia/Sydney',
    files: {
      'lists/vacuum leak tests.csv': [
        '% weekly',
        q(
          'Unit',
          'Date of test',
          'Test time',
          'Pressure rise (kPa in 10 min)',
          'Max allowed (kPa in 10 min)',
        ),
        ...leaks,
        '',
      ].join('\n'),
      'lists/service log.csv': [
        q('Equipment', 'Out from', 'Back in use', 'Type of work', 'Major repair', 'Details'),
        ...service,
        '',
      ].join('\n'),
      'lists/water.csv': [
        q('Sampling point', 'Date sampled', 'Parameter', 'Measured value', 'Unit of measure'),
        ...water,
        '',
      ].join('\n'),
    },
    truth: [
      {
        file: 'vacuum leak tests.csv',
        kind: 'leak_tests',
        dates: 'dd-MMM-yyyy HH:mm',
        columns: {
          unit: { headers: ['Unit'] },
          time: { headers: ['Date of test', 'Test time'] },
          leak_rate_kpa_min: { headers: ['Pressure rise (kPa in 10 min)'], measure: 'kPa per 10 min' },
          limit_kpa_min: { headers: ['Max allowed (kPa in 10 min)'], measure: 'kPa per 10 min' },
        },
        counts: { records: 24, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'service log.csv',
        kind: 'service',
        dates: 'dd MMM yyyy HH:mm',
        columns: {
          unit: { headers: ['Equipment'] },
          from: { headers: ['Out from'] },
          to: { headers: ['Back in use'] },
          kind: { headers: ['Type of work'] },
          major: { headers: ['Major repair'] },
          note: { headers: ['Details'] },
        },
        counts: { records: 3, duplicates: 0, rejected: 1, skipped: 0 },
      },
      {
        file: 'water.csv',
        kind: 'water',
        dates: 'yyyy-MM-dd',
        columns: {
          point: { headers: ['Sampling point'] },
          time: { headers: ['Date sampled'] },
          determinand: { headers: ['Parameter'] },
          value: { headers: ['Measured value'] },
          measure: { headers: ['Unit of measure'] },
        },
        counts: { records: 6, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
