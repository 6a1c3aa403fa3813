import type { BlindStyle } from '../blind/make-blind.ts';
import { at, degreesF, madeUpLog, mmss, PSI, table, withRows } from './made-up-log.ts';

const us = (time: number): string => {
  const { y, m, d, hour, minute } = at(time);
  return `${m}/${d}/${y} ${hour}:${minute}`;
};

/** United States: month before day, psi and F, one list of cycles with quoted cells, one of tests, a maintenance list and a paper form typed in. */
export function counter(): BlindStyle {
  const NAMES = ['STER-A', 'STER-B'];
  const runs = madeUpLog(11, 2, '2024-09-09', 6);
  const cycles = runs.filter(({ what }) => what !== 'leak');
  const TYPES = { warm: 'PREHEAT', test: 'BD', leak: '', load: 'PREVAC 270', fluid: 'LIQ 250' };
  const ENDS = { ok: 'CMPLT', stopped: 'CANCELLED', bad: 'ALARM' };
  const lines = cycles.map((run) => [
    NAMES[run.unit]!,
    run.number,
    TYPES[run.what],
    us(run.start),
    us(run.end),
    ENDS[run.ended],
    run.ended === 'bad' ? '"COME-UP TIMEOUT, SEE TAPE"' : run.ended === 'stopped' ? 'OPERATOR STOP' : '',
    run.ended === 'stopped' ? '' : mmss(run.evacuation),
    run.ended === 'stopped' ? '' : mmss(run.heatUp),
    run.ended === 'stopped' ? '' : mmss(run.exposure),
    run.ended === 'stopped' ? '' : mmss(run.drying),
    run.ended === 'stopped' ? '' : degreesF(run.low),
    run.ended === 'stopped' ? '' : degreesF(run.high),
    run.ended === 'stopped' ? '' : (run.pressure / PSI - 14.7).toFixed(1),
    run.what === 'load' ? 'INSTR SETS' : '',
    `T${run.unit + 3}`,
  ]);
  const header =
    'Sterilizer,Cyc #,Cyc Type,Cyc Start,Cyc Stop,Disp,Alarm Msg,Evac,Come-Up,Sterilize,Dry,Min Temp F,Max Temp F,Chmbr PSIG,Load Desc,Tech'.split(
      ',',
    );
  const cycleRows = withRows<(string | number)[]>(lines, [
    [7, lines[6]!],
    [20, ['STER-B', '', 'PREVAC 270', '', '', 'CMPLT', '', '', '', '', '', '', '', '', '', '']],
    [lines.length + 2, ['Total', lines.length, '', '', '', '', '', '', '', '', '', '', '', '', '', '']],
  ]);
  const longer = madeUpLog(12, 2, '2024-09-02', 14, 1).filter(({ what }) => what === 'test');
  const testLines = longer.map((run) => {
    const { y, m, d, twelve, minute, half } = at(run.end);
    return [
      `${Number(m)}/${Number(d)}/${y.slice(2)}`,
      `${twelve}:${minute} ${half}`,
      NAMES[run.unit]!,
      run.number,
      run.ended === 'bad' ? 'Not uniform' : run.ended === 'stopped' ? 'Void - wrong pack' : 'Uniform',
      'L2409',
      run.ended === 'bad' ? 'repeated' : '',
    ];
  });
  const cleaned = Array.from({ length: 28 }, (_, day) => {
    const { y, m, d } = at(Date.parse('2024-09-02') + day * 86_400_000);
    return [
      `${m}/${d}/${y}`,
      NAMES[day % 2]!,
      day % 14 === 5 ? 'Chamber wash' : day % 7 === 3 ? 'Flush drain line' : 'Drain screen',
      day % 9 === 4 ? 'Not done' : day % 11 === 6 ? 'N/A' : 'Done',
      day % 9 === 4 ? '' : 10 + ((day * 7) % 25),
      `Initials ${day % 3}`,
      day % 13 === 2 ? 'after failed BD' : '',
    ];
  });
  return {
    name: 'counter',
    zone: 'America/Denver',
    files: {
      'cyc_hist_0909.csv': table(',', [header, ...cycleRows]),
      'dart results.txt': table('\t', [
        ['Run Dt', 'Run Tm', 'Ster', 'Cyc', 'Sheet Color', 'Pack Lot', 'Cmnt'],
        ...testLines,
      ]),
      'PM checklist.csv': table(',', [
        ['Sterile Processing - PM checklist', '', '', '', '', '', ''],
        ['', '', '', '', '', '', ''],
        ['Dt', 'Equip', 'PM Task', 'Stat', 'Mins', 'By', 'Rmks'],
        ...cleaned,
      ]),
    },
    sources: [
      {
        file: 'cyc_hist_0909.csv',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Sterilizer'] },
          start: { headers: ['Cyc Start'], dates: ['MM/dd/yyyy HH:mm'] },
          end: { headers: ['Cyc Stop'], dates: ['MM/dd/yyyy HH:mm'] },
          kind: { headers: ['Cyc Type'] },
          outcome: { headers: ['Disp'] },
          cycle_number: { headers: ['Cyc #'] },
          abort_text: { headers: ['Alarm Msg'] },
          evacuation_s: { headers: ['Evac'], measure: 'mm:ss' },
          heat_up_s: { headers: ['Come-Up'], measure: 'mm:ss' },
          exposure_s: { headers: ['Sterilize'], measure: 'mm:ss' },
          drying_s: { headers: ['Dry'], measure: 'mm:ss' },
          exposure_temperature_min_c: { headers: ['Min Temp F'], measure: 'F' },
          exposure_temperature_max_c: { headers: ['Max Temp F'], measure: 'F' },
          exposure_pressure_kpa: { headers: ['Chmbr PSIG'], measure: 'psi gauge' },
        },
        words: {
          kind: {
            PREHEAT: 'warm_up',
            BD: 'air_removal_test',
            'PREVAC 270': 'production',
            'LIQ 250': 'liquids',
          },
          outcome: { CMPLT: 'completed', CANCELLED: 'aborted', ALARM: 'failed' },
        },
        counts: { records: cycles.length, duplicates: 1, rejected: 1, skipped: 1 },
      },
      {
        file: 'dart results.txt',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Ster'] },
          time: { headers: ['Run Dt', 'Run Tm'], dates: ['M/d/yy h:mm a'] },
          result: { headers: ['Sheet Color'] },
          cycle_number: { headers: ['Cyc'] },
          note: { headers: ['Cmnt'] },
        },
        words: { result: { Uniform: 'pass', 'Not uniform': 'fail', 'Void - wrong pack': 'invalid' } },
        counts: { records: longer.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'PM checklist.csv',
        kind: 'cleanings',
        columns: {
          unit: { headers: ['Equip'] },
          task: { headers: ['PM Task'] },
          time: { headers: ['Dt'], dates: ['MM/dd/yyyy'] },
          state: { headers: ['Stat'] },
          minutes: { headers: ['Mins'] },
          note: { headers: ['Rmks'] },
        },
        words: {
          task: {
            'Drain screen': 'drain_strainer',
            'Flush drain line': 'drain_flush',
            'Chamber wash': 'chamber',
          },
          state: { Done: 'done', 'Not done': 'missed', 'N/A': 'not_due' },
        },
        counts: { records: 28, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
