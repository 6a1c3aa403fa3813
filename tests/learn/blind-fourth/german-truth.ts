import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const DAY_TIME = 'dd.MM.yyyy HH:mm';

const PLAN: Omit<BlindSource, 'sheet'> = {
  file: 'Reinigungsplan',
  kind: 'cleanings',
  wide: 'day of month',
  columns: { unit: col('Sterilisator'), task: col('Arbeit') },
};
const MARKS = { x: 'done', o: 'missed', '/': 'not_due' };
const TASKS = { 'Ablaufsieb reinigen': 'drain_strainer', 'Kammer reinigen': 'chamber' };
export const sources: BlindSource[] = [
  {
    file: 'Chargenuebersicht',
    kind: 'cycles',
    decimal: ',',
    columns: {
      unit: col('Gerät'),
      start: dated(DAY_TIME, 'Datum', 'Startzeit'),
      end: dated(DAY_TIME, 'Datum', 'Endzeit'),
      kind: col('Programm'),
      outcome: col('Status'),
      cycle_number: col('Charge'),
      abort_text: col('Störmeldung'),
      evacuation_s: measured('Evakuieren [mm:ss]', 'mm:ss'),
      heat_up_s: measured('Aufheizen [mm:ss]', 'mm:ss'),
      exposure_s: measured('Haltezeit [mm:ss]', 'mm:ss'),
      drying_s: measured('Trocknen [mm:ss]', 'mm:ss'),
      exposure_temperature_min_c: measured('T min [°C]', 'C'),
      exposure_temperature_max_c: measured('T max [°C]', 'C'),
      exposure_pressure_kpa: measured('Druck abs. [mbar]', 'mbar absolute'),
    },
    words: {
      kind: {
        Aufheizcharge: 'warm_up',
        'Bowie & Dick': 'air_removal_test',
        'Universal 134°C': 'production',
        'Gummi 121°C': 'production',
      },
      outcome: { 'i.O.': 'completed', 'n.i.O.': 'failed', Abbruch: 'aborted' },
    },
    counts: counts(47, 1, 1, 1),
  },
  {
    file: 'BD_Auswertung',
    kind: 'air_removal_tests',
    columns: {
      unit: col('Gerät'),
      time: dated(DAY_TIME, 'Testdatum', 'Uhrzeit'),
      result: col('Farbumschlag'),
      cycle_number: col('Charge'),
      note: col('Bemerkung'),
      entered_at: dated(DAY_TIME, 'Erfasst am'),
    },
    words: { result: { gleichmäßig: 'pass', ungleichmäßig: 'fail', 'nicht auswertbar': 'invalid' } },
    counts: counts(30),
  },
  { ...PLAN, sheet: 'Mai 2025', words: { task: TASKS, state: MARKS }, counts: counts(93) },
  { ...PLAN, sheet: 'Juni 2025', words: { task: TASKS, state: MARKS }, counts: counts(88) },
  {
    file: 'Medizintechnik',
    kind: 'service',
    columns: {
      unit: col('Gerät'),
      from: dated(DAY_TIME, 'Beginn'),
      to: dated(DAY_TIME, 'Ende'),
      kind: col('Auftragsart'),
      major: col('Große Reparatur'),
      note: col('Text'),
    },
    words: {
      kind: {
        Wartung: 'maintenance',
        Instandsetzung: 'repair',
        'Grundreinigung durch Fremdfirma': 'professional_cleaning',
        'Austausch der Steuerung': 'controller_replaced',
        Stilllegung: 'out_of_service',
      },
    },
    counts: counts(6),
  },
];
