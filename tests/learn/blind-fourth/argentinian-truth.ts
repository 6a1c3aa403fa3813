import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const cyclesOf = (sheet: string, rejected: number): BlindSource => ({
  file: 'Planilla de ciclos',
  sheet,
  kind: 'cycles',
  columns: {
    unit: { from: 'sheet_name' },
    start: col('Fecha', 'Inicio'),
    end: col('Fecha', 'Fin'),
    kind: col('Programa'),
    outcome: col('Estado'),
    cycle_number: col('Nº ciclo'),
    abort_text: col('Falla'),
    heat_up_s: measured('Calentamiento (min)', 'min'),
    exposure_s: measured('Meseta (min)', 'min'),
    exposure_temperature_min_c: measured('T° mín. meseta', 'C'),
    exposure_temperature_max_c: measured('T° máx. meseta', 'C'),
    exposure_pressure_kpa: measured('Presión (bar man.)', 'bar gauge'),
  },
  words: {
    kind: { Precalentamiento: 'warm_up', 'Líquidos 121': 'liquids', 'Material envuelto 134': 'production' },
    outcome: { Finalizado: 'completed', Interrumpido: 'aborted', Rechazado: 'failed' },
  },
  counts: counts(24 - rejected, 0, rejected),
});

export const sources: BlindSource[] = [
  cyclesOf('Autoclave Norte', 1),
  cyclesOf('Autoclave Sur', 0),
  {
    file: 'Hermeticidad',
    kind: 'leak_tests',
    decimal: ',',
    columns: {
      unit: col('Equipo'),
      time: dated('dd/MM/yyyy HH:mm', 'Fecha', 'Hora'),
      leak_rate_kpa_min: measured('Pérdida de vacío (kPa/10 min)', 'kPa per 10 min'),
      limit_kpa_min: measured('Máx. admitido (kPa/10 min)', 'kPa per 10 min'),
      cycle_number: col('Nº ciclo'),
    },
    counts: counts(17, 0, 1),
  },
  {
    file: 'Limpieza abril',
    kind: 'cleanings',
    wide: 'dd/MM/yyyy',
    columns: { unit: col('Equipo'), task: col('Tarea') },
    words: {
      task: { 'Limpieza del filtro de desagüe': 'drain_strainer', 'Limpieza de la cámara': 'chamber' },
      state: { SI: 'done', NO: 'missed', NC: null },
    },
    counts: counts(61),
  },
  {
    file: 'Mantenimiento',
    kind: 'service',
    columns: {
      unit: col('Equipo'),
      from: dated('dd/MM/yyyy', 'Desde'),
      to: dated('dd/MM/yyyy', 'Hasta'),
      kind: col('Tipo de trabajo'),
      major: col('¿Reparación mayor?'),
      note: col('Detalle'),
    },
    words: {
      kind: {
        'Mantenimiento preventivo': 'maintenance',
        Reparación: 'repair',
        'Limpieza por empresa externa': 'professional_cleaning',
        'Cambio de controlador': 'controller_replaced',
        'Fuera de servicio': 'out_of_service',
      },
    },
    counts: counts(6),
  },
];
