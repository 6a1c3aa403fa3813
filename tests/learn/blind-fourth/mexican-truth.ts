import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const DAY_TIME = 'dd/MM/yyyy hh:mm a';

export const sources: BlindSource[] = [
  {
    file: 'bitacora_',
    kind: 'cycles',
    columns: {
      unit: { from: 'file_name' },
      start: dated(DAY_TIME, 'Fecha', 'Hora de inicio'),
      end: dated(DAY_TIME, 'Fecha', 'Hora de término'),
      kind: col('Tipo de ciclo'),
      outcome: col('Estatus'),
      cycle_number: col('No. de ciclo'),
      abort_text: col('Causa de cancelación'),
      exposure_s: measured('Exposición (min)', 'min'),
      drying_s: measured('Secado (min)', 'min'),
      exposure_temperature_min_c: measured('Temp. mín. exposición (°C)', 'C'),
      exposure_temperature_max_c: measured('Temp. máx. exposición (°C)', 'C'),
      exposure_pressure_kpa: measured('Presión de cámara (psi)', 'psi gauge'),
    },
    words: {
      kind: {
        Calentamiento: 'warm_up',
        'Bowie Dick': 'air_removal_test',
        'Instrumental 132 °C': 'production',
        'Textiles 132 °C': 'production',
      },
      outcome: { Completo: 'completed', Cancelado: 'aborted' },
    },
    counts: counts(47, 2, 1),
  },
  {
    file: 'prueba_bowie_dick',
    kind: 'air_removal_tests',
    columns: {
      unit: col('Equipo'),
      time: dated(DAY_TIME, 'Fecha', 'Hora'),
      result: col('Resultado'),
      cycle_number: col('No. de ciclo'),
      note: col('Observaciones'),
    },
    words: { result: { Aprobada: 'pass', Rechazada: 'fail', 'No válida': 'invalid' } },
    counts: counts(26, 0, 0, 1),
  },
  {
    file: 'prueba_de_vacio',
    kind: 'leak_tests',
    columns: {
      unit: col('Equipo'),
      time: dated(DAY_TIME, 'Fecha', 'Hora'),
      leak_rate_kpa_min: measured('Fuga (mmHg/min)', 'mmHg per min'),
      limit_kpa_min: measured('Máximo permitido (mmHg/min)', 'mmHg per min'),
      cycle_number: col('No. de ciclo'),
    },
    counts: counts(16),
  },
  {
    file: 'limpieza_autoclaves',
    kind: 'cleanings',
    columns: {
      unit: col('Equipo'),
      task: col('Actividad'),
      time: dated(DAY_TIME, 'Fecha', 'Hora'),
      state: col('¿Se realizó?'),
      minutes: col('Minutos'),
      reason: col('Motivo'),
      note: col('Observaciones'),
    },
    words: {
      task: {
        'Limpieza de coladera': 'drain_strainer',
        'Lavado de cámara': 'chamber',
        'Enjuague de drenaje': 'drain_flush',
      },
      state: { Sí: 'done', No: 'missed', 'No aplica': 'not_due' },
      reason: { Programada: 'routine', 'Por falla': 'reactive' },
    },
    counts: counts(28),
  },
];
