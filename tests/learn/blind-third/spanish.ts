import type { BlindStyle } from '../blind/make-blind.ts';
import { comma, counts, later, lines, wall, wave, windows1252, write } from './paper.ts';

/** A Spanish hospital: semicolons, decimal comma, Windows code page; means in the last line. */
export async function spanish(): Promise<BlindStyle> {
  const cycles: (string | number)[][] = [
    ['Central de esterilización'],
    ['Listado de ciclos;octubre 2024'],
    [
      'Equipo',
      'Nº de ciclo',
      'Programa',
      'Fecha y hora de inicio',
      'Fecha y hora de fin',
      'Tiempo de esterilización (min)',
      'Temperatura mínima (ºC)',
      'Temperatura máxima (ºC)',
      'Presión (bar abs)',
      'Estado',
      'Alarma',
    ],
  ];
  const programs = [
    'Precalentamiento',
    'Test Bowie-Dick',
    'Instrumental 134',
    'Textil 134',
    'Gomas 134',
    'Test de vacío',
  ];
  for (let at = 0; at < 36; at++) {
    const start = wall('2024-10-01', Math.floor(at / 3), 400 + 85 * (at % 3));
    const bad = at === 14 || at === 27;
    cycles.push([
      `Autoclave ${1 + (at % 2)}`,
      18_040 + at,
      programs[(at * 5 + Math.floor(at / 6)) % 6]!,
      write(start, 'dd/MM/yyyy HH:mm'),
      write(later(start, 48 + (at % 5)), 'dd/MM/yyyy HH:mm'),
      bad ? '' : comma((5 + (at % 3) * 0.1).toFixed(1)),
      bad ? '' : comma(wave(at, 134.2, 0.2, 1)),
      bad ? '' : comma(wave(at, 135.3, 0.3, 1, 5)),
      bad ? '' : comma(wave(at, 3.12, 0.02, 2)),
      bad ? 'Abortado' : at === 8 ? 'Con fallo' : 'Finalizado',
      bad ? 'Fallo de suministro de vapor' : '',
    ]);
  }
  const list = lines(cycles.slice(2), ';');
  const leaks: (string | number)[][] = [
    [
      'Fecha',
      'Equipo',
      'Nº de ciclo',
      'Fuga (mbar/10 min)',
      'Máximo permitido (mbar/10 min)',
      'Apto',
      'Técnico',
    ],
  ];
  for (let at = 0; at < 18; at++)
    leaks.push([
      write(wall('2024-08-05', 7 * Math.floor(at / 2)), 'dd/MM/yyyy'),
      `Autoclave ${1 + (at % 2)}`,
      17_900 + at,
      comma(wave(at, 4.5, 3, 1)),
      '13',
      'Sí',
      `T${1 + (at % 3)}`,
    ]);
  return {
    name: 'spanish',
    zone: 'Europe/Madrid',
    sources: [
      {
        file: 'ciclos',
        kind: 'cycles',
        decimal: ',',
        columns: {
          unit: { headers: ['Equipo'] },
          start: { headers: ['Fecha y hora de inicio'], dates: ['dd/MM/yyyy HH:mm'] },
          end: { headers: ['Fecha y hora de fin'], dates: ['dd/MM/yyyy HH:mm'] },
          kind: { headers: ['Programa'] },
          outcome: { headers: ['Estado'] },
          cycle_number: { headers: ['Nº de ciclo'] },
          abort_text: { headers: ['Alarma'] },
          exposure_s: { headers: ['Tiempo de esterilización (min)'], measure: 'min' },
          exposure_temperature_min_c: { headers: ['Temperatura mínima (ºC)'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['Temperatura máxima (ºC)'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['Presión (bar abs)'], measure: 'bar absolute' },
        },
        words: {
          kind: {
            Precalentamiento: 'warm_up',
            'Test Bowie-Dick': 'air_removal_test',
            'Instrumental 134': 'production',
            'Textil 134': 'production',
            'Gomas 134': 'production',
            'Test de vacío': 'leak_test',
          },
          outcome: { Finalizado: 'completed', Abortado: 'aborted', 'Con fallo': 'failed' },
        },
        counts: counts(36, 1),
      },
      {
        file: 'fugas',
        kind: 'leak_tests',
        decimal: ',',
        columns: {
          unit: { headers: ['Equipo'] },
          time: { headers: ['Fecha'], dates: ['dd/MM/yyyy'] },
          leak_rate_kpa_min: { headers: ['Fuga (mbar/10 min)'], measure: 'mbar per 10 min' },
          limit_kpa_min: { headers: ['Máximo permitido (mbar/10 min)'], measure: 'mbar per 10 min' },
          cycle_number: { headers: ['Nº de ciclo'] },
        },
        counts: counts(18),
      },
    ],
    files: {
      'ciclos_octubre.csv': windows1252(
        `Central de esterilización\r\nListado de ciclos;octubre 2024\r\n${list}Media;;;;;5,1;134,2;135,3;3,12;;\r\n`,
      ),
      'fugas.csv': windows1252(lines(leaks, ';')),
    },
  };
}

/** A Mexican hospital: commas, decimal point, 12-hour clock with "a. m."; a form of cleanings, maintenance orders, inspections. */
export async function mexican(): Promise<BlindStyle> {
  const half = ['a. m.', 'p. m.'] as const;
  const stamp = (time: Date): string => write(time, 'dd/MM/yyyy h:mm a', half);
  const cleanings: (string | number)[][] = [
    [
      'Marca temporal',
      'Esterilizador',
      'Actividad',
      'Fecha de limpieza',
      'Hora de término',
      '¿Se realizó?',
      'Motivo',
      'Comentarios',
    ],
  ];
  const works = ['Limpieza de coladera', 'Limpieza de cámara', 'Limpieza de coladera', 'Enjuague de drenaje'];
  for (let at = 0; at < 30; at++) {
    const time = wall('2025-02-03', at, 1020 + (at % 5) * 6);
    cleanings.push([
      stamp(later(time, 35)),
      `Vapor ${1 + (at % 2)}`,
      works[Math.floor(at / 2) % 4]!,
      write(time, 'dd/MM/yyyy'),
      write(time, 'h:mm a', half),
      at % 10 === 7 ? 'No' : at === 22 ? 'No aplica' : 'Sí',
      at === 13 ? 'Por falla' : 'Programada',
      at === 13 ? 'se encontró sarro' : '',
    ]);
  }
  const orders: (string | number)[][] = [
    [
      'Orden',
      'Esterilizador',
      'Fecha inicio',
      'Fecha fin',
      'Tipo de mantenimiento',
      'Trabajo realizado',
      'Costo (MXN)',
    ],
  ];
  const kinds = [
    'Preventivo',
    'Reparación',
    'Preventivo',
    'Cambio de tarjeta de control',
    'Fuera de servicio',
  ];
  for (let at = 0; at < 15; at++)
    orders.push([
      `OT-${410 + at}`,
      `Vapor ${1 + (at % 2)}`,
      write(wall('2023-01-09', 52 * at), 'dd/MM/yyyy'),
      write(wall('2023-01-09', 52 * at + (at % 3)), 'dd/MM/yyyy'),
      kinds[at % 5]!,
      ['cambio de filtro', 'bomba de vacío', 'empaque de puerta', 'tarjeta nueva', 'espera de refacción'][
        at % 5
      ]!,
      wave(at, 8200, 4100, 2),
    ]);
  orders.push(['Total', '', '', '', '', '', '123000.00']);
  const looks: (string | number)[][] = [
    [
      'Fecha de inspección',
      'Esterilizador',
      'Aspecto de la cámara (0 a 4)',
      'Residuo después de enjuagar',
      'Observaciones',
    ],
  ];
  for (let at = 0; at < 16; at++)
    looks.push([
      write(wall('2025-02-07', 7 * Math.floor(at / 2)), 'dd/MM/yyyy'),
      `Vapor ${1 + (at % 2)}`,
      (at * 2) % 5,
      at % 5 === 3 ? 'Sí' : 'No',
      at === 9 ? 'manchas cafés' : '',
    ]);
  return {
    name: 'mexican',
    zone: 'America/Mexico_City',
    sources: [
      {
        file: 'bitacora de limpieza',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Esterilizador'] },
          task: { headers: ['Actividad'] },
          time: { headers: ['Fecha de limpieza', 'Hora de término'], dates: ['dd/MM/yyyy h:mm a'] },
          state: { headers: ['¿Se realizó?'] },
          reason: { headers: ['Motivo'] },
          note: { headers: ['Comentarios'] },
          entered_at: { headers: ['Marca temporal'], dates: ['dd/MM/yyyy h:mm a'] },
        },
        words: {
          task: {
            'Limpieza de coladera': 'drain_strainer',
            'Limpieza de cámara': 'chamber',
            'Enjuague de drenaje': 'drain_flush',
          },
          state: { Sí: 'done', No: 'missed', 'No aplica': 'not_due' },
          reason: { Programada: 'routine', 'Por falla': 'reactive' },
        },
        counts: counts(30),
      },
      {
        file: 'mantenimiento',
        kind: 'service',
        columns: {
          unit: { headers: ['Esterilizador'] },
          from: { headers: ['Fecha inicio'], dates: ['dd/MM/yyyy'] },
          to: { headers: ['Fecha fin'], dates: ['dd/MM/yyyy'] },
          kind: { headers: ['Tipo de mantenimiento'] },
          note: { headers: ['Trabajo realizado'] },
        },
        words: {
          kind: {
            Preventivo: 'maintenance',
            Reparación: 'repair',
            'Cambio de tarjeta de control': 'controller_replaced',
            'Fuera de servicio': 'out_of_service',
          },
        },
        counts: counts(15, 1),
      },
      {
        file: 'inspecciones',
        kind: 'inspections',
        columns: {
          unit: { headers: ['Esterilizador'] },
          time: { headers: ['Fecha de inspección'], dates: ['dd/MM/yyyy'] },
          appearance: { headers: ['Aspecto de la cámara (0 a 4)'] },
          residue_after_rinsing: { headers: ['Residuo después de enjuagar'] },
          note: { headers: ['Observaciones'] },
        },
        counts: counts(16),
      },
    ],
    files: {
      'bitacora de limpieza.csv': lines(cleanings, ',', '\n'),
      'mantenimiento.csv': lines(orders, ',', '\n'),
      'inspecciones.csv': lines(looks, ',', '\n'),
    },
  };
}
