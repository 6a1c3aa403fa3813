import { workbook } from '../../ingest/workbook.ts';
import { comma, madeUpDays, minutesSeconds, parts, rows } from './made-up-days.ts';

type Files = Record<string, string | Uint8Array>;

/** A central department: semicolon, decimal commas, kPa, minutes and seconds. */
export async function central(): Promise<Files> {
  const cycles = madeUpDays(41, 3, '2025-10-01', 25);
  const day = (at: number) => `${parts(at).d}/${parts(at).M}/${parts(at).yyyy}`;
  const programs = {
    warm_up: 'Precalentamiento',
    air_removal_test: 'Bowie-Dick',
    leak_test: 'Test de vacío',
    production: 'Textil 134',
    liquids: 'Líquidos 121',
  };
  const ends = { completed: 'Correcto', aborted: 'Abortado', failed: 'Incorrecto' };
  const faults = ['Vacío insuficiente', 'Cancelado por operador', 'Falta de vapor', 'Fallo de puerta'];
  return {
    'ciclos octubre.csv': `Informe de ciclos;;;\r\nCentral de esterilización;;;\r\n${rows(';', [
      [
        'Autoclave',
        'Nº ciclo',
        'Fecha',
        'Hora inicio',
        'Hora fin',
        'Programa',
        'Resultado',
        'Alarma',
        'T. prevacío',
        'T. calentam.',
        'T. esteriliz.',
        'T. secado',
        'Temp. mín. (°C)',
        'Temp. máx. (°C)',
        'Presión ester. (kPa)',
        'Carga',
      ],
      ...cycles.map((one) => [
        `AU-${one.unit + 1}`,
        String(one.number),
        day(one.start),
        `${parts(one.start).HH}:${parts(one.start).mm}:${parts(one.start).ss}`,
        `${parts(one.end).HH}:${parts(one.end).mm}:${parts(one.end).ss}`,
        programs[one.kind],
        ends[one.outcome],
        one.outcome === 'completed' ? '' : faults[one.abort]!,
        minutesSeconds(one.evacuation),
        minutesSeconds(one.heatUp),
        minutesSeconds(one.exposure),
        minutesSeconds(one.drying),
        comma(one.low, 1),
        comma(one.high, 1),
        comma(one.pressure, 0),
        'Instrumental',
      ]),
      ['Total ciclos', String(cycles.length), '', '', '', '', '', '', '', '', '', '', '', '', '', ''],
    ])}`,
    'prueba BD.csv': rows(';', [
      ['Fecha', 'Hora', 'Autoclave', 'Nº ciclo', 'Prueba B-D', 'Obs.'],
      ...cycles
        .filter(({ kind }) => kind === 'air_removal_test')
        .map((one) => [
          day(one.end),
          `${parts(one.end).HH}:${parts(one.end).mm}`,
          `AU-${one.unit + 1}`,
          String(one.number),
          one.passed ? 'Apto' : 'No apto',
          '',
        ]),
    ]),
    'fugas.csv': rows(';', [
      ['Fecha', 'Autoclave', 'Fuga (mbar/min)', 'Límite (mbar/min)', 'Apto/No apto'],
      ...cycles
        .filter(({ kind }) => kind === 'leak_test')
        .map((one) => [
          day(one.end),
          `AU-${one.unit + 1}`,
          comma(one.leak * 10, 1),
          '1,3',
          one.leak <= 0.13 ? 'Apto' : 'No apto',
        ]),
    ]),
    'limpieza.csv': rows(';', [
      ['Fecha', 'Autoclave', 'Tarea', 'Realizado', 'Motivo', 'Observaciones'],
      ...cycles
        .filter(({ kind }) => kind === 'warm_up')
        .map((one, at) => [
          day(one.start),
          `AU-${one.unit + 1}`,
          at % 15 === 7 ? 'Limpieza de cámara' : 'Limpieza del filtro de desagüe',
          at % 8 === 7 ? 'No' : 'Sí',
          at % 30 === 7 ? 'Correctivo' : 'Preventivo',
          '',
        ]),
    ]),
  };
}

/** A small hospital's workbook and lists: days that can be read both ways in the log of cleaning, psi gauge, weekdays before dates. */
export async function regional(): Promise<Files> {
  const cycles = madeUpDays(42, 2, '2025-03-03', 12);
  const short = ['dom', 'lun', 'mar', 'mié', 'jue', 'vie', 'sáb'];
  const stamp = (at: number) =>
    `${short[parts(at).weekday]} ${parts(at).dd}-${parts(at).MM}-${parts(at).yyyy} ${parts(at).HH}:${parts(at).mm}`;
  const kinds = {
    warm_up: 'Vacio calentamiento',
    air_removal_test: 'BD',
    leak_test: 'Hermeticidad',
    production: 'Instrumental',
    liquids: 'Liquidos',
  };
  const ends = { completed: 'Finalizado', aborted: 'Interrumpido', failed: 'Fallido' };
  return {
    'registro.xlsx': await workbook([
      {
        name: 'Ciclos',
        rows: [
          ['REGISTRO DE CICLOS DE ESTERILIZACION'],
          [null],
          [
            'Equipo',
            'No. de ciclo',
            'Inicio',
            'Termino',
            'Tipo',
            'Estado final',
            'Causa',
            'Tiempo exposicion (min)',
            'Tiempo secado (min)',
            'Temp min C',
            'Temp max C',
            'Presion psi',
          ],
          ...cycles.map((one) => [
            `Equipo ${one.unit + 1}`,
            one.number,
            new Date(one.start),
            new Date(one.end),
            kinds[one.kind],
            ends[one.outcome],
            one.outcome === 'completed' ? null : 'Falla de vacio',
            Number((one.exposure / 60).toFixed(1)),
            Number((one.drying / 60).toFixed(0)),
            Number(one.low.toFixed(1)),
            Number(one.high.toFixed(1)),
            Number(((one.pressure - 101.3) / 6.895).toFixed(1)),
          ]),
        ],
      },
      {
        name: 'Pruebas BD',
        rows: [
          ['Equipo', 'Fecha y hora', 'Viraje', 'Notas'],
          ...cycles
            .filter(({ kind }) => kind === 'air_removal_test')
            .map((one) => [
              `Equipo ${one.unit + 1}`,
              new Date(one.end),
              one.passed ? 'Uniforme' : 'No uniforme',
              null,
            ]),
        ],
      },
    ]),
    'aseo.csv': rows(',', [
      ['Dia', 'Equipo', 'Actividad', 'Cumplido'],
      ...cycles
        .filter(({ kind, start }) => kind === 'warm_up' && Number(parts(start).dd) <= 12)
        .map((one, at) => [
          `${parts(one.start).dd}/${parts(one.start).MM}/${parts(one.start).yyyy}`,
          `Equipo ${one.unit + 1}`,
          at % 6 === 3 ? 'Lavado de camara' : 'Limpieza rejilla de drenaje',
          at % 7 === 6 ? 'NO' : 'SI',
        ]),
    ]),
    'mantenimiento.csv': rows(',', [
      ['Equipo', 'Desde', 'Hasta', 'Tipo de servicio', 'Detalle'],
      [
        'Equipo 1',
        stamp(Date.parse('2025-03-05T08:00:00Z')),
        stamp(Date.parse('2025-03-05T13:20:00Z')),
        'Reparacion',
        'Cambio de empaque',
      ],
      [
        'Equipo 2',
        stamp(Date.parse('2025-03-13T07:30:00Z')),
        stamp(Date.parse('2025-03-13T10:00:00Z')),
        'Mantenimiento preventivo',
        '',
      ],
      [
        'Equipo 2',
        stamp(Date.parse('2025-03-14T07:30:00Z')),
        stamp(Date.parse('2025-03-14T17:00:00Z')),
        'Fuera de servicio',
        'Sin vapor',
      ],
    ]),
  };
}
