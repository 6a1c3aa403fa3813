import { type TestCell, workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { comma, isSunday, later, lines, wall, wave, withMark, write } from '../blind-third/paper.ts';
import { sources } from './argentinian-truth.ts';

const UNITS = ['Autoclave Norte', 'Autoclave Sur'];
const day = (time: Date): TestCell => ({ value: time, format: 'dd/mm/yyyy' });

/** Sheets of an Argentinian cannery's laboratory: a sheet of cycles for each autoclave, decimal commas in text, a cleaning list with a column a day. */
export async function argentinian(): Promise<BlindStyle> {
  return {
    name: 'argentinian',
    zone: 'America/Argentina/Buenos_Aires',
    sources,
    files: {
      'Planilla de ciclos.xlsx': await workbook(UNITS.map((name, unit) => ({ name, rows: cycles(unit) }))),
      'Hermeticidad.csv': leaks(),
      'Limpieza abril.csv': cleaning(),
      'Mantenimiento.csv': jobs(),
    },
  };
}

/** 24 cycles a sheet; the first has a date that is none. */
function cycles(unit: number): TestCell[][] {
  const programs = ['Precalentamiento', 'Líquidos 121', 'Material envuelto 134', 'Líquidos 121'];
  const rows: TestCell[][] = [
    [`Registro de ciclos - ${UNITS[unit]}`],
    [],
    [
      'Fecha',
      'Inicio',
      'Fin',
      'Nº ciclo',
      'Programa',
      'Estado',
      'Falla',
      'Calentamiento (min)',
      'Meseta (min)',
      'T° mín. meseta',
      'T° máx. meseta',
      'Presión (bar man.)',
      'Operador',
    ],
  ];
  for (let at = 0; at < 24; at++) {
    const start = wall('2025-04-07', Math.floor(at / 4), 425 + 20 * unit + 110 * (at % 4));
    const hot = at % 4 === 2;
    const bad = at === 9 + unit * 4;
    rows.push([
      unit === 0 && at === 16 ? '31/04/2025' : day(wall('2025-04-07', Math.floor(at / 4))),
      write(start, 'HH:mm'),
      write(later(start, bad ? 20 : 80 + (at % 6)), 'HH:mm'),
      450 + 300 * unit + at,
      programs[at % 4]!,
      bad ? 'Interrumpido' : at === 21 ? 'Rechazado' : 'Finalizado',
      bad ? 'Baja presión de vapor de red' : at === 21 ? 'Temperatura baja en meseta' : null,
      ...(bad
        ? [null, null, null, null, null]
        : [
            Number(wave(at, hot ? 9 : 16, 2, 0)),
            hot ? 7 : 25,
            Number(wave(at, hot ? 134.4 : 121.2, 0.2, 1)),
            Number(wave(at, hot ? 135.2 : 122, 0.3, 1, 3)),
            Number(wave(at, hot ? 2.1 : 1.08, 0.03, 2, 5)),
          ]),
      ['L', 'V'][at % 2]!,
    ]);
  }
  return rows;
}

/** 18 tests; of one the rate is a word. */
function leaks(): string {
  const rows: (string | number)[][] = [
    [
      'Equipo',
      'Fecha',
      'Hora',
      'Pérdida de vacío (kPa/10 min)',
      'Máx. admitido (kPa/10 min)',
      'Nº ciclo',
      'Firma',
    ],
  ];
  for (let at = 0; at < 18; at++) {
    const time = wall('2025-02-17', 7 * Math.floor(at / 2), 400 + 35 * (at % 2));
    rows.push([
      UNITS[at % 2]!,
      write(time, 'dd/MM/yyyy'),
      write(time, 'HH:mm'),
      at === 5 ? 'no leído' : comma(wave(at, 0.62, 0.3, 2)),
      '1,30',
      400 + at * 8,
      'L',
    ]);
  }
  return withMark(lines(rows, ';'));
}

/** Two autoclaves with two tasks each; nothing on Sundays. NC may stand for more than one thing, and no legend says which. */
function cleaning(): string {
  const days = Array.from({ length: 30 }, (_, at) => wall('2025-04-01', at));
  const rows: string[][] = [['Equipo', 'Tarea', ...days.map((date) => write(date, 'dd/MM/yyyy'))]];
  for (let unit = 0; unit < 2; unit++) {
    rows.push([
      UNITS[unit]!,
      'Limpieza del filtro de desagüe',
      ...days.map((date, at) =>
        isSunday(date) ? '' : (at + unit) % 9 === 4 ? 'NO' : (at + unit) % 14 === 11 ? 'NC' : 'SI',
      ),
    ]);
    rows.push([
      UNITS[unit]!,
      'Limpieza de la cámara',
      ...days.map((date, at) => (date.getUTCDay() !== 1 + unit ? '' : at > 20 ? 'NO' : 'SI')),
    ]);
  }
  return withMark(lines(rows, ';'));
}

const jobs = (): string =>
  withMark(
    lines(
      [
        ['Equipo', 'Desde', 'Hasta', 'Tipo de trabajo', '¿Reparación mayor?', 'Detalle', 'Costo'],
        [
          UNITS[0]!,
          '14/01/2025',
          '14/01/2025',
          'Mantenimiento preventivo',
          'no',
          'Service trimestral',
          '180000',
        ],
        [
          UNITS[1]!,
          '15/01/2025',
          '15/01/2025',
          'Mantenimiento preventivo',
          'no',
          'Service trimestral',
          '180000',
        ],
        [UNITS[1]!, '20/02/2025', '26/02/2025', 'Reparación', 'sí', 'Bomba de vacío cambiada', '940000'],
        [UNITS[0]!, '17/03/2025', '17/03/2025', 'Limpieza por empresa externa', 'no', '', '210000'],
        [UNITS[0]!, '21/04/2025', '23/04/2025', 'Cambio de controlador', 'sí', 'Tablero nuevo', '1500000'],
        [UNITS[1]!, '28/04/2025', '09/05/2025', 'Fuera de servicio', 'no', 'Sin vapor', ''],
      ],
      ';',
    ),
  );
