import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const DAY_TIME = 'dd-MMM-yyyy HH:mm';

export const sources: BlindSource[] = [
  {
    file: 'AC_CYC_REG',
    kind: 'cycles',
    columns: {
      unit: col('EQP_ID'),
      start: dated(DAY_TIME, 'CYC_DT', 'ST_TM'),
      end: dated(DAY_TIME, 'CYC_DT', 'END_TM'),
      kind: col('CYC_TYPE'),
      outcome: col('CYC_STS'),
      cycle_number: col('CYC_NO'),
      abort_text: col('ALM_DESC'),
      exposure_s: measured('HOLD_TM_MIN', 'min'),
      exposure_temperature_min_c: measured('HOLD_TEMP_MIN_DEGC', 'C'),
      exposure_temperature_max_c: measured('HOLD_TEMP_MAX_DEGC', 'C'),
      exposure_pressure_kpa: measured('CHMBR_PR_BARG', 'bar gauge'),
      drain_temperature_c: measured('DRN_TEMP_DEGC', 'C'),
    },
    words: {
      kind: {
        'WARM UP': 'warm_up',
        'BD TEST': 'air_removal_test',
        'HPHV 121': 'production',
        'LIQ LOAD 121': 'liquids',
        'PQ RUN': 'qualification',
      },
      outcome: { OK: 'completed', ABRT: 'aborted', FAIL: 'failed' },
    },
    counts: counts(44, 0, 1, 2),
  },
  {
    file: 'AC_BD_TST',
    kind: 'air_removal_tests',
    columns: {
      unit: col('EQP_ID'),
      time: dated(DAY_TIME, 'TST_DT', 'TST_TM'),
      result: col('BD_RSLT'),
      cycle_number: col('CYC_NO'),
      note: col('RMK'),
      entered_at: dated(DAY_TIME, 'ENTRY_DT_TM'),
    },
    words: { result: { Complies: 'pass', 'Does not comply': 'fail', 'Test invalid': 'invalid' } },
    counts: counts(26, 0, 1),
  },
  {
    file: 'AC_VLT',
    kind: 'leak_tests',
    columns: {
      unit: col('EQP_ID'),
      time: dated(DAY_TIME, 'VLT_DT', 'VLT_TM'),
      leak_rate_kpa_min: measured('LEAK_RATE_MBAR_PER_MIN', 'mbar per min'),
      limit_kpa_min: measured('ACC_LIMIT_MBAR_PER_MIN', 'mbar per min'),
      cycle_number: col('CYC_NO'),
    },
    counts: counts(15),
  },
  {
    file: 'AC_CLNG',
    kind: 'cleanings',
    columns: {
      unit: col('EQP_ID'),
      task: col('ACTIVITY'),
      start: dated(DAY_TIME, 'CLNG_DT', 'FROM_TM'),
      time: dated(DAY_TIME, 'CLNG_DT', 'TO_TM'),
      minutes: col('DURN_MIN'),
      state: col('STS'),
      reason: col('CLNG_TYP'),
      note: col('RMK'),
    },
    words: {
      task: {
        'DRAIN STRAINER CLNG': 'drain_strainer',
        'CHAMBER CLNG': 'chamber',
        'DRAIN LINE FLUSHING': 'drain_flush',
        'DEEP CLNG BY VENDOR': 'professional',
      },
      state: { DONE: 'done', 'NOT DONE': 'missed' },
      reason: { ROUTINE: 'routine', 'AFTER BD FAILURE': 'reactive' },
    },
    counts: counts(24),
  },
  {
    file: 'AC_PM_BD',
    kind: 'service',
    columns: {
      unit: col('EQP_ID'),
      from: dated(DAY_TIME, 'FROM_DT_TM'),
      to: dated(DAY_TIME, 'TO_DT_TM'),
      kind: col('JOB_TYP'),
      major: col('MAJOR_YN'),
      note: col('JOB_DTLS'),
    },
    words: {
      kind: {
        'PREV MAINT': 'maintenance',
        'BREAKDOWN REPAIR': 'repair',
        'PLC REPLACED': 'controller_replaced',
        'NOT IN USE': 'out_of_service',
      },
    },
    counts: counts(6),
  },
];
