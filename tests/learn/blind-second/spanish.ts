// Over 300 lines: the tables of one style and their truth side by side.
import type { BlindStyle } from '../blind/make-blind.ts';
import { at, hhmmss, komma, madeUpLog, PSI, table, withRows } from './made-up-log.ts';

const dia = (time: number): string => {
  const { y, m, d } = at(time);
  return `${d}-${m}-${y}`;
};

/** Spain: UTF-16, tabs, days with strokes, lengths as h:mm:ss, mbar; tests and vacuum tests in one style, works. */
export function planta(): BlindStyle {
  const NAMES = ['Est-1', 'Est-2'];
  const runs = madeUpLog(81, 2, '2024-11-18', 6);
  const cycles = runs.filter(({ what }) => what !== 'leak');
  const PROGRAMS = { warm: 'Precalent.', test: 'B-D', leak: '', load: 'Text./Instr. 134', fluid: 'Líq. 121' };
  const ENDS = { ok: 'Correcto', stopped: 'Anulado', bad: 'Incorrecto' };
  const lines = cycles.map((run) => [
    run.number,
    PROGRAMS[run.what],
    NAMES[run.unit]!,
    dia(run.start),
    at(run.start).clock.slice(0, 5),
    dia(run.end),
    at(run.end).clock.slice(0, 5),
    hhmmss(run.heatUp),
    hhmmss(run.exposure),
    hhmmss(run.drying),
    komma(run.low, 1),
    komma(run.high, 1),
    Math.round(run.pressure * 10),
    ENDS[run.ended],
    run.ended === 'bad' ? 'Tiempo de vacío excedido' : '',
    run.what === 'load' ? 'Quir. 2' : '',
    `op${run.number % 3}`,
  ]);
  const header =
    'Nº ciclo|Prog.|Equipo|F. inicio|H. inicio|F. fin|H. fin|T. calent.|T. ester.|T. sec.|Temp. mín. (ºC)|Temp. máx. (ºC)|Pres. ester. (mbar abs)|Estado|Alarma|Contenido|Oper.'.split(
      '|',
    );
  const rows = withRows<(string | number)[]>(lines, [
    [15, lines[13]!],
    [
      28,
      [
        '',
        'Líq. 121',
        'Est-2',
        '31-11-2024',
        '10:00',
        '31-11-2024',
        '11:00',
        '0:02:00',
        '0:20:00',
        '0:10:00',
        '121,4',
        '121,9',
        2080,
        'Correcto',
        '',
        '',
        '',
      ],
    ],
    [lines.length + 2, ['Total ciclos', lines.length, ...Array<string>(15).fill('')]],
  ]);
  const leaks = madeUpLog(82, 2, '2024-06-03', 84, 0).filter(({ what }) => what === 'leak');
  const leakLines = leaks.map((run) => [
    NAMES[run.unit]!,
    dia(run.start),
    at(run.start).clock.slice(0, 5),
    komma(run.leak * 10, 1),
    '1,3',
    run.leak > 0.13 ? 'No apto' : 'Apto',
  ]);
  const WORKS = [
    'Preventivo',
    'Correctivo',
    'Limpieza cámara empresa',
    'Cambio de placa',
    'Fuera de servicio',
  ];
  const works = Array.from({ length: 22 }, (_, place) => {
    const from = Date.parse('2023-01-16') + place * 27 * 86_400_000;
    return [
      `P${place + 70}`,
      NAMES[place % 2]!,
      WORKS[place % 5]!,
      dia(from),
      dia(from + (place % 3) * 86_400_000),
      place % 5 === 3 ? 'sí' : 'no',
      place % 5 === 1 ? 'junta de puerta' : '',
      120 + place * 15,
    ];
  });
  const utf16 = (text: string): Uint8Array => Buffer.from(`\ufeff${text}`, 'utf16le');
  return {
    name: 'planta',
    zone: 'Europe/Madrid',
    files: {
      'Ciclos_sem47.txt': utf16(table('\t', [header, ...rows])),
      'Prueba vacio.txt': utf16(
        table('\t', [
          ['Equipo', 'Fecha', 'Hora', 'Fuga (mbar/min)', 'Máx. (mbar/min)', 'Dictamen'],
          ...leakLines,
        ]),
      ),
      'Partes de trabajo.csv': table(';', [
        ['Parte', 'Equipo', 'Clase', 'Desde', 'Hasta', 'Revalid.', 'Observ.', 'Importe'],
        ...works,
      ]),
    },
    sources: [
      {
        file: 'Ciclos_sem47.txt',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Equipo'] },
          start: { headers: ['F. inicio', 'H. inicio'], dates: ['dd-MM-yyyy HH:mm'] },
          end: { headers: ['F. fin', 'H. fin'], dates: ['dd-MM-yyyy HH:mm'] },
          kind: { headers: ['Prog.'] },
          outcome: { headers: ['Estado'] },
          cycle_number: { headers: ['Nº ciclo'] },
          abort_text: { headers: ['Alarma'] },
          heat_up_s: { headers: ['T. calent.'], measure: 'hh:mm:ss' },
          exposure_s: { headers: ['T. ester.'], measure: 'hh:mm:ss' },
          drying_s: { headers: ['T. sec.'], measure: 'hh:mm:ss' },
          exposure_temperature_min_c: { headers: ['Temp. mín. (ºC)'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Temp. máx. (ºC)'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Pres. ester. (mbar abs)'], measure: 'mbar absolute' },
        },
        words: {
          kind: {
            'Precalent.': 'warm_up',
            'B-D': 'air_removal_test',
            'Text./Instr. 134': 'production',
            'Líq. 121': 'liquids',
          },
          outcome: { Correcto: 'completed', Anulado: 'aborted', Incorrecto: 'failed' },
        },
        counts: { records: cycles.length, duplicates: 1, rejected: 1, skipped: 1 },
      },
      {
        file: 'Prueba vacio.txt',
        kind: 'leak_tests',
        decimal: ',',
        columns: {
          unit: { headers: ['Equipo'] },
          time: { headers: ['Fecha', 'Hora'], dates: ['dd-MM-yyyy HH:mm'] },
          leak_rate_kpa_min: { headers: ['Fuga (mbar/min)'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['Máx. (mbar/min)'], measure: 'mbar per min' },
        },
        counts: { records: leaks.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Partes de trabajo.csv',
        kind: 'service',
        columns: {
          unit: { headers: ['Equipo'] },
          from: { headers: ['Desde'], dates: ['dd-MM-yyyy'] },
          to: { headers: ['Hasta'], dates: ['dd-MM-yyyy'] },
          kind: { headers: ['Clase'] },
          major: { headers: ['Revalid.'] },
          note: { headers: ['Observ.'] },
        },
        words: {
          kind: {
            Preventivo: 'maintenance',
            Correctivo: 'repair',
            'Limpieza cámara empresa': 'professional_cleaning',
            'Cambio de placa': 'controller_replaced',
            'Fuera de servicio': 'out_of_service',
          },
        },
        counts: { records: 22, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}

/** Mexico: commas and full stops, two digits of the year, a test a line with the hour apart, cleanings by shift, chamber checks in words of a scale. */
export function turno(): BlindStyle {
  const NAMES = ['AUT 1', 'AUT 2', 'AUT 3'];
  const corto = (time: number): string => {
    const { y, m, d } = at(time);
    return `${d}/${m}/${y.slice(2)}`;
  };
  const runs = madeUpLog(91, 3, '2024-07-15', 4).filter(({ what }) => what !== 'leak' && what !== 'test');
  const PROGRAMS = { warm: 'CALENTAMIENTO', test: '', leak: '', load: 'INSTRUMENTAL', fluid: 'LIQUIDOS' };
  const ENDS = { ok: 'TERMINADO', stopped: 'CANCELADO', bad: 'FALLA' };
  const lines = runs.map((run) => [
    NAMES[run.unit]!,
    `${corto(run.start)} ${at(run.start).clock}`,
    (Math.round((run.end - run.start) / 6000) / 10).toFixed(1),
    run.number,
    PROGRAMS[run.what],
    ENDS[run.ended],
    run.ended === 'bad' ? 'NO ALCANZA TEMP' : '',
    (run.exposure / 60).toFixed(1),
    run.low.toFixed(1),
    run.high.toFixed(1),
    ((run.pressure - 101.325) / PSI).toFixed(1),
    run.unit + 1,
  ]);
  const tests = madeUpLog(92, 3, '2024-07-08', 10, 0).filter(({ what }) => what === 'test');
  const testLines = withRows<(string | number)[]>(
    tests.map((run) => [
      corto(run.end),
      at(run.end).clock.slice(0, 5),
      NAMES[run.unit]!,
      run.ended === 'bad' ? 'RECHAZADA' : run.ended === 'stopped' ? 'ANULADA' : 'ACEPTADA',
      'MATUTINO',
      run.ended === 'bad' ? 'se repite' : '',
    ]),
    [[6, ['10/07/24', '06:40', '', 'ACEPTADA', 'MATUTINO', '']]],
  );
  const cleaned = Array.from({ length: 40 }, (_, place) => [
    corto(Date.parse('2024-07-08') + Math.floor(place / 3) * 86_400_000),
    NAMES[place % 3]!,
    place % 10 === 7 ? 'Purga de dren' : place % 13 === 5 ? 'Lavado cámara' : 'Canastilla dren',
    place % 8 === 3 ? 'NO' : place % 17 === 9 ? 'NO APLICA' : 'SI',
    `T${place % 3}`,
    place % 12 === 4 ? 'tapado' : '',
  ]);
  const looks = Array.from({ length: 21 }, (_, place) => [
    NAMES[place % 3]!,
    corto(Date.parse('2024-01-10') + place * 8 * 86_400_000),
    (place * 4) % 5,
    place % 5 === 3 ? 'SI' : 'NO',
    place % 7 === 1 ? 'mancha cafe' : '',
  ]);
  return {
    name: 'turno',
    zone: 'America/Mexico_City',
    files: {
      'BITACORA CICLOS JUL.csv': table(',', [
        [
          'AUTOCLAVE',
          'INICIO',
          'DURACION',
          'FOLIO',
          'TIPO CICLO',
          'ESTATUS',
          'CAUSA',
          'EXP MIN',
          'TEMP MIN',
          'TEMP MAX',
          'PRESION PSI',
          'IMPRESORA',
        ],
        ...lines,
      ]),
      'BITACORA BOWIE JUL.csv': table(',', [
        ['FECHA', 'HORA', 'AUTOCLAVE', 'PRUEBA', 'TURNO', 'OBS'],
        ...testLines,
      ]),
      'LIMPIEZAS JUL.csv': table(',', [
        ['FECHA', 'AUTOCLAVE', 'ACTIVIDAD', 'REALIZADO', 'TURNO', 'OBS'],
        ...cleaned,
      ]),
      'REVISION CAMARA.csv': table(',', [
        ['AUTOCLAVE', 'FECHA', 'GRADO SUCIEDAD', 'RESIDUO', 'OBS'],
        ...looks,
      ]),
    },
    sources: [
      {
        file: 'BITACORA CICLOS JUL.csv',
        kind: 'cycles',
        columns: {
          unit: { headers: ['AUTOCLAVE'] },
          start: { headers: ['INICIO'], dates: ['dd/MM/yy HH:mm:ss'] },
          kind: { headers: ['TIPO CICLO'] },
          outcome: { headers: ['ESTATUS'] },
          cycle_number: { headers: ['FOLIO'] },
          abort_text: { headers: ['CAUSA'] },
          exposure_s: { headers: ['EXP MIN'], measure: 'min' },
          exposure_temperature_min_c: { headers: ['TEMP MIN'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['TEMP MAX'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['PRESION PSI'], measure: 'psi gauge' },
        },
        words: {
          kind: { CALENTAMIENTO: 'warm_up', INSTRUMENTAL: 'production', LIQUIDOS: 'liquids' },
          outcome: { TERMINADO: 'completed', CANCELADO: 'aborted', FALLA: 'failed' },
        },
        counts: { records: runs.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'BITACORA BOWIE JUL.csv',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['AUTOCLAVE'] },
          time: { headers: ['FECHA', 'HORA'], dates: ['dd/MM/yy HH:mm'] },
          result: { headers: ['PRUEBA'] },
          note: { headers: ['OBS'] },
        },
        words: { result: { ACEPTADA: 'pass', RECHAZADA: 'fail', ANULADA: 'invalid' } },
        counts: { records: tests.length, duplicates: 0, rejected: 1, skipped: 0 },
      },
      {
        file: 'LIMPIEZAS JUL.csv',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['AUTOCLAVE'] },
          task: { headers: ['ACTIVIDAD'] },
          time: { headers: ['FECHA'], dates: ['dd/MM/yy'] },
          state: { headers: ['REALIZADO'] },
          note: { headers: ['OBS'] },
        },
        words: {
          task: {
            'Purga de dren': 'drain_flush',
            'Lavado cámara': 'chamber',
            'Canastilla dren': 'drain_strainer',
          },
          state: { SI: 'done', NO: 'missed', 'NO APLICA': 'not_due' },
        },
        counts: { records: 40, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'REVISION CAMARA.csv',
        kind: 'inspections',
        columns: {
          unit: { headers: ['AUTOCLAVE'] },
          time: { headers: ['FECHA'], dates: ['dd/MM/yy'] },
          appearance: { headers: ['GRADO SUCIEDAD'] },
          residue_after_rinsing: { headers: ['RESIDUO'] },
          note: { headers: ['OBS'] },
        },
        counts: { records: 21, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
