import type { BlindSource } from '../blind/make-blind.ts';
import { counts } from '../blind-third/paper.ts';
import { col, dated, measured } from './truth.ts';

const START = 'MM/dd/yyyy hh:mm a';

export const sources: BlindSource[] = [
  {
    file: 'SterilizerCycleSummary',
    kind: 'cycles',
    columns: {
      unit: col('Sterilizer ID'),
      start: dated(START, 'Cycle Date', 'Start'),
      end: dated(START, 'Cycle Date', 'Stop'),
      kind: col('Cycle Selected'),
      outcome: col('Result'),
      cycle_number: col('Cycle Count'),
      abort_text: col('Alarm / Cancel Reason'),
      evacuation_s: measured('Evac (mm:ss)', 'mm:ss'),
      heat_up_s: measured('Come-Up (mm:ss)', 'mm:ss'),
      exposure_s: measured('Exposure (mm:ss)', 'mm:ss'),
      exhaust_s: measured('Exhaust (mm:ss)', 'mm:ss'),
      drying_s: measured('Dry Time (min)', 'min'),
      exposure_temperature_min_c: measured('Exp. Temp Low (F)', 'F'),
      exposure_temperature_max_c: measured('Exp. Temp High (F)', 'F'),
      exposure_pressure_kpa: measured('Chamber Press. (psig)', 'psi gauge'),
    },
    words: {
      kind: {
        'WARM-UP': 'warm_up',
        'BOWIE-DICK TEST': 'air_removal_test',
        'PREVAC 270F 4 MIN': 'production',
        'GRAVITY 250F 30 MIN': 'production',
        'LIQUID 250F': 'liquids',
        'ENGINEERING QUAL RUN': 'qualification',
      },
      outcome: { COMPLETE: 'completed', ABORTED: 'aborted', 'IN PROCESS': 'running' },
    },
    counts: counts(39, 3, 1, 1),
  },
  {
    file: 'BowieDick_log',
    kind: 'air_removal_tests',
    columns: {
      unit: col('Sterilizer ID'),
      time: dated(START, 'Test Date', 'Time Read'),
      result: col('Pass/Fail'),
      note: col('Comments'),
    },
    words: { result: { PASS: 'pass', FAIL: 'fail', VOID: 'invalid' } },
    counts: counts(30),
  },
  {
    file: 'LeakTest_log',
    kind: 'leak_tests',
    columns: {
      unit: col('Sterilizer ID'),
      time: dated(START, 'Date', 'Time'),
      leak_rate_kpa_min: measured('Leak Rate (mmHg/min)', 'mmHg per min'),
      limit_kpa_min: measured('Max Allowed (mmHg/min)', 'mmHg per min'),
      cycle_number: col('Cycle Count'),
    },
    counts: counts(18),
  },
  {
    file: 'biomed_workorders',
    kind: 'service',
    columns: {
      unit: col('Asset'),
      from: dated(START, 'Opened'),
      to: dated(START, 'Completed'),
      kind: col('Work Type'),
      major: col('Major Repair (Y/N)'),
      note: col('Work Performed'),
    },
    words: {
      kind: {
        'Preventive Maintenance': 'maintenance',
        Repair: 'repair',
        'Contractor Chamber Cleaning': 'professional_cleaning',
        'Controller Replacement': 'controller_replaced',
        'Out of Service': 'out_of_service',
      },
    },
    counts: counts(7),
  },
];
