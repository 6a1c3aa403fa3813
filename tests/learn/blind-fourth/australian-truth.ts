import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const ISO = "yyyy-MM-dd'T'HH:mm:ss";

export const sources: BlindSource[] = [
  {
    file: 'autoclaveCycles',
    kind: 'cycles',
    columns: {
      unit: col('autoclaveName'),
      start: { headers: ['startedAt'], dates: [ISO, 'yyyy-MM-ddTHH:mm:ss'] },
      end: { headers: ['finishedAt'], dates: [ISO, 'yyyy-MM-ddTHH:mm:ss'] },
      kind: col('programName'),
      outcome: col('cycleResult'),
      cycle_number: col('cycleCounter'),
      abort_text: col('faultText'),
      evacuation_s: measured('evacuationSecs', 's'),
      heat_up_s: measured('heatUpSecs', 's'),
      exposure_s: measured('holdSecs', 's'),
      drying_s: measured('dryingSecs', 's'),
      exposure_temperature_min_c: measured('holdTempMinC', 'C'),
      exposure_temperature_max_c: measured('holdTempMaxC', 'C'),
      exposure_pressure_kpa: measured('holdPressureKPaGauge', 'kPa gauge'),
      dry_vacuum_kpa: measured('dryVacuumKPaAbs', 'kPa absolute'),
    },
    words: {
      kind: {
        'Warm-up': 'warm_up',
        'Wrapped goods 134': 'production',
        'Media and liquids 121': 'liquids',
        'Custom 7': null,
      },
      outcome: { Successful: 'completed', Stopped: 'aborted', X: null },
    },
    counts: counts(42),
  },
  {
    file: 'leakRateTests',
    kind: 'leak_tests',
    columns: {
      unit: col('autoclaveName'),
      time: { headers: ['testedAt'], dates: [ISO, 'yyyy-MM-ddTHH:mm:ss'] },
      leak_rate_kpa_min: measured('leakRateKPaPerMin', 'kPa per min'),
      limit_kpa_min: measured('allowableKPaPerMin', 'kPa per min'),
      cycle_number: col('cycleCounter'),
    },
    counts: counts(19, 0, 1),
  },
  {
    file: 'chamberInspections',
    kind: 'inspections',
    columns: {
      unit: col('autoclaveName'),
      time: dated('yyyy-MM-dd', 'inspectedOn'),
      appearance: col('appearanceScore0to4'),
      residue_after_rinsing: col('residueAfterRinse'),
      note: col('comments'),
    },
    counts: counts(13, 0, 1),
  },
  {
    file: 'feedwaterResults',
    kind: 'water',
    columns: {
      point: col('samplePoint'),
      time: dated('yyyy-MM-dd', 'sampledOn'),
      determinand: col('analyte'),
      value: col('resultValue'),
      measure: col('resultUnit'),
      units: col('autoclavesServed'),
    },
    counts: counts(24),
  },
];
