import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { workbook } from '../../ingest/workbook.ts';
import type { BlindStyle } from '../blind/make-blind.ts';
import { at, komma, madeUpLog, table, withRows } from './made-up-log.ts';

/** A bag of many hands in one archive: times with the month by name, German and English lists, a sheet for each unit, one file packed by itself. */
export async function bag(): Promise<BlindStyle> {
  const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const named = (time: number): string => {
    const { y, m, d, clock } = at(time);
    return `${d}-${MONTHS[Number(m) - 1]}-${y} ${clock}`;
  };
  const tag = (time: number): string => {
    const { y, m, d } = at(time);
    return `${d}.${m}.${y.slice(2)}`;
  };
  const runs = madeUpLog(101, 2, '2024-04-08', 6).filter(({ what }) => what !== 'leak');
  const PROGRAMS = { warm: 'WU', test: 'ART', leak: '', load: 'P134-4', fluid: 'FLUIDS121' };
  const ENDS = { ok: 'PASS', stopped: 'ABORTED', bad: 'FAIL' };
  const cycleLines = runs.map((run) => [
    run.number,
    `S0${run.unit + 1}`,
    PROGRAMS[run.what],
    named(run.start),
    named(run.end),
    ENDS[run.ended],
    run.ended === 'bad' ? 'F21 evacuation slow' : '',
    run.evacuation,
    run.heatUp,
    run.exposure,
    run.exhaust,
    run.low.toFixed(1),
    run.high.toFixed(1),
    (run.pressure / 100).toFixed(3),
  ]);
  const tests = madeUpLog(102, 2, '2024-04-01', 14, 0).filter(({ what }) => what === 'test');
  const testLines = tests.map((run) => [
    tag(run.end),
    at(run.end).clock.slice(0, 5),
    `S0${run.unit + 1}`,
    run.ended === 'bad' ? 'n. best.' : run.ended === 'stopped' ? 'ungült.' : 'best.',
    run.ended === 'bad' ? 'Wiederholung' : '',
  ]);
  const cleanings = (unit: number) =>
    Array.from({ length: 20 }, (_, place) => [
      {
        value: new Date(`${at(Date.parse('2024-04-01') + (place + unit) * 86_400_000).date}T00:00:00Z`),
        format: 'yyyy-mm-dd',
      },
      place % 10 === 6 ? 'Chamber clean' : place % 6 === 2 ? 'Drain flushed' : 'Strainer cleaned',
      place % 9 === 7 ? 'Missed' : 'Completed',
      place % 9 === 7 ? null : 7 + ((place * 3) % 12),
      place % 8 === 1 ? 'lint' : null,
    ]);
  const leaks = madeUpLog(103, 2, '2024-01-08', 84, 0).filter(({ what }) => what === 'leak');
  const leakLines = leaks.map((run) => [
    `S0${run.unit + 1}`,
    named(run.start),
    komma(run.leak * 10, 2),
    '1,3',
    'Prt 4',
  ]);
  const heads = ['Date', 'Task', 'Status', 'Minutes', 'Remarks'];
  const packed = zipSync(
    {
      'April/cyclelog.psv': Buffer.from(
        table(
          '|',
          withRows<(string | number)[]>(
            [
              [
                'CycleID',
                'Stz',
                'Prg',
                'StartedAt',
                'EndedAt',
                'Res',
                'FaultTxt',
                'EvacSec',
                'HeatSec',
                'HoldSec',
                'ExhSec',
                'HoldTmin',
                'HoldTmax',
                'HoldBarA',
              ],
              ...cycleLines,
            ],
            [[14, cycleLines[12]!]],
          ),
          '\n',
        ),
      ),
      'April/BD-Tests.csv': Buffer.from(
        table(';', [['Dat.', 'Zeit', 'Steri', 'Ergebn.', 'Bem.'], ...testLines]),
        'latin1',
      ),
      'April/Cleaning.xlsx': new Uint8Array(
        await workbook([
          { name: 'S01', rows: [heads, ...cleanings(0)] },
          { name: 'S02', rows: [heads, ...cleanings(1)] },
        ]),
      ),
      'April/leak.csv.gz': gzipSync(
        table(';', [['Stz', 'Tested', 'Leak mbar/min', 'Limit mbar/min', 'Printer'], ...leakLines]),
      ),
    },
    { mtime: new Date('2024-05-01T00:00:00') },
  );
  return {
    name: 'bag',
    zone: 'Europe/Zurich',
    files: { 'quarter.zip': packed },
    sources: [
      {
        file: 'cyclelog.psv',
        kind: 'cycles',
        columns: {
          unit: { headers: ['Stz'] },
          start: { headers: ['StartedAt'], dates: ['dd-MMM-yyyy HH:mm:ss'] },
          end: { headers: ['EndedAt'], dates: ['dd-MMM-yyyy HH:mm:ss'] },
          kind: { headers: ['Prg'] },
          outcome: { headers: ['Res'] },
          cycle_number: { headers: ['CycleID'] },
          abort_text: { headers: ['FaultTxt'] },
          evacuation_s: { headers: ['EvacSec'], measure: 's' },
          heat_up_s: { headers: ['HeatSec'], measure: 's' },
          exposure_s: { headers: ['HoldSec'], measure: 's' },
          exhaust_s: { headers: ['ExhSec'], measure: 's' },
          exposure_temperature_min_c: { headers: ['HoldTmin'], measure: 'C' },
          exposure_temperature_max_c: { headers: ['HoldTmax'], measure: 'C' },
          exposure_pressure_kpa: { headers: ['HoldBarA'], measure: 'bar absolute' },
        },
        words: {
          kind: { WU: 'warm_up', ART: 'air_removal_test', 'P134-4': 'production', FLUIDS121: 'liquids' },
          outcome: { PASS: 'completed', ABORTED: 'aborted', FAIL: 'failed' },
        },
        counts: { records: runs.length, duplicates: 1, rejected: 0, skipped: 0 },
      },
      {
        file: 'BD-Tests.csv',
        kind: 'air_removal_tests',
        columns: {
          unit: { headers: ['Steri'] },
          time: { headers: ['Dat.', 'Zeit'], dates: ['dd.MM.yy HH:mm'] },
          result: { headers: ['Ergebn.'] },
          note: { headers: ['Bem.'] },
        },
        words: { result: { 'best.': 'pass', 'n. best.': 'fail', 'ungült.': 'invalid' } },
        counts: { records: tests.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'Cleaning.xlsx',
        sheet: 'S01',
        kind: 'cleanings',
        columns: {
          unit: { from: 'sheet_name' },
          task: { headers: ['Task'] },
          time: { headers: ['Date'] },
          state: { headers: ['Status'] },
          minutes: { headers: ['Minutes'] },
          note: { headers: ['Remarks'] },
        },
        words: {
          task: {
            'Chamber clean': 'chamber',
            'Drain flushed': 'drain_flush',
            'Strainer cleaned': 'drain_strainer',
          },
          state: { Completed: 'done', Missed: 'missed' },
        },
        counts: { records: 20, duplicates: 0, rejected: 0, skipped: 0 },
      },
      {
        file: 'leak.csv',
        kind: 'leak_tests',
        decimal: ',',
        columns: {
          unit: { headers: ['Stz'] },
          time: { headers: ['Tested'], dates: ['dd-MMM-yyyy HH:mm:ss'] },
          leak_rate_kpa_min: { headers: ['Leak mbar/min'], measure: 'mbar per min' },
          limit_kpa_min: { headers: ['Limit mbar/min'], measure: 'mbar per min' },
        },
        counts: { records: leaks.length, duplicates: 0, rejected: 0, skipped: 0 },
      },
    ],
  };
}
