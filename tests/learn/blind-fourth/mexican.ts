import type { BlindStyle } from '../blind/make-blind.ts';
import { later, lines, wall, wave, withMark, write } from '../blind-third/paper.ts';
import { sources } from './mexican-truth.ts';

const HALF = ['a. m.', 'p. m.'] as const;
const UNITS = ['AV-1', 'AV-2'];
const table = (rows: readonly (readonly (string | number)[])[]): string => withMark(lines(rows, ','));
const dayOf = (time: Date): string => write(time, 'dd/MM/yyyy');
const hourOf = (time: Date): string => write(time, 'h:mm a', HALF).padStart(11, '0');

/** Logs of a Mexican hospital: 12-hour clock, psi by the gauge, one file of cycles for each autoclave, which stands in its name alone. */
export function mexican(): BlindStyle {
  return {
    name: 'mexican',
    zone: 'America/Mexico_City',
    sources,
    files: {
      'bitacora_AV-1.csv': cycles(0),
      'bitacora_AV-2.csv': cycles(1),
      'prueba_bowie_dick.csv': tests(),
      'prueba_de_vacio.csv': leaks(),
      'limpieza_autoclaves.csv': cleaning(),
    },
  };
}

/** 24 cycles an autoclave and a line with their number; in the second file one has no state. */
function cycles(unit: number): string {
  const kinds = ['Calentamiento', 'Bowie Dick', 'Instrumental 132 °C', 'Textiles 132 °C'];
  const rows: (string | number)[][] = [
    [
      'Fecha',
      'Hora de inicio',
      'Hora de término',
      'No. de ciclo',
      'Tipo de ciclo',
      'Estatus',
      'Causa de cancelación',
      'Exposición (min)',
      'Secado (min)',
      'Temp. mín. exposición (°C)',
      'Temp. máx. exposición (°C)',
      'Presión de cámara (psi)',
      'Turno',
    ],
  ];
  for (let at = 0; at < 24; at++) {
    const start = wall('2025-07-07', 2 * Math.floor(at / 4) + unit, 395 + 160 * (at % 4));
    const bad = at === 14 - unit;
    rows.push([
      dayOf(start),
      hourOf(start),
      hourOf(later(start, bad ? 8 : 48 + (at % 7))),
      1210 + 700 * unit + at,
      kinds[at % 4]!,
      unit === 1 && at === 19 ? '' : bad ? 'Cancelado' : 'Completo',
      bad ? (unit ? 'Cancelado por el operador' : 'No alcanza vacío') : '',
      ...(bad
        ? ['', '', '', '', '']
        : [
            at % 4 === 1 ? '3.5' : '4',
            at % 4 > 1 ? 25 : 5,
            wave(at, 132.5, 0.2, 1),
            wave(at, 133.6, 0.2, 1, 3),
            wave(at, 27.9, 0.3, 1, 5),
          ]),
      ['Matutino', 'Vespertino'][Math.floor((at % 4) / 2)]!,
    ]);
  }
  return `${table(rows)}Total de ciclos: 24${','.repeat(12)}\r\n`;
}

/** 26 tests, one typed twice. */
function tests(): string {
  const rows: (string | number)[][] = [
    ['Fecha', 'Hora', 'Equipo', 'No. de ciclo', 'Resultado', 'Observaciones', 'Leyó'],
  ];
  for (let at = 0; at < 26; at++) {
    const time = wall('2025-07-07', Math.floor(at / 2), 612 + 9 * (at % 2));
    rows.push([
      dayOf(time),
      hourOf(time),
      UNITS[at % 2]!,
      1211 + at * 4,
      at === 11 ? 'Rechazada' : at === 20 ? 'No válida' : 'Aprobada',
      at === 11 ? 'Mancha clara al centro' : at === 20 ? 'Paquete caducado' : '',
      ['G.', 'N.'][at % 2]!,
    ]);
  }
  return table([...rows, rows[17]!]);
}

function leaks(): string {
  const rows: (string | number)[][] = [
    ['Fecha', 'Hora', 'Equipo', 'No. de ciclo', 'Fuga (mmHg/min)', 'Máximo permitido (mmHg/min)'],
  ];
  for (let at = 0; at < 16; at++) {
    const time = wall('2025-05-19', 7 * Math.floor(at / 2), 370 + 30 * (at % 2));
    rows.push([dayOf(time), hourOf(time), UNITS[at % 2]!, 1000 + at * 13, wave(at, 0.5, 0.2, 2), '1.0']);
  }
  return table(rows);
}

function cleaning(): string {
  const jobs = ['Limpieza de coladera', 'Lavado de cámara', 'Enjuague de drenaje'];
  const rows: (string | number)[][] = [
    ['Fecha', 'Hora', 'Equipo', 'Actividad', '¿Se realizó?', 'Minutos', 'Motivo', 'Observaciones', 'Firma'],
  ];
  for (let at = 0; at < 28; at++) {
    const time = wall('2025-07-07', Math.floor(at / 2), 350 + 12 * (at % 2) + (at % 5));
    const state = at % 9 === 4 ? 'No' : at === 19 ? 'No aplica' : 'Sí';
    rows.push([
      dayOf(time),
      hourOf(time),
      UNITS[at % 2]!,
      jobs[Math.floor(at / 2) % 3]!,
      state,
      state === 'Sí' ? 10 + (at % 3) * 5 : '',
      at === 12 ? 'Por falla' : 'Programada',
      state === 'No' ? 'falta de personal' : '',
      'G.',
    ]);
  }
  return table(rows);
}
