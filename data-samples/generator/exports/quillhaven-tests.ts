import { type Fleet, recordsOf } from '../fleet.ts';
import { row, type Table } from '../table.ts';
import { date, minute, time } from './quillhaven-words.ts';

/** Air-removal tests, one file a half-year; leak tests, one file. */

const HALVES = ['2025-04', '2025-10', '2026-04'];
const RESULT = { pass: 'pass', fail: 'fail', invalid: 'void' } as const;

export function quillhavenTests(fleet: Fleet): Table[] {
  const tests = recordsOf(fleet, 'Quillhaven', 'tests', (test) => test.time);
  return HALVES.map((from, index) => ({
    file: `quillhaven/air-removal-${from}.csv`,
    source: 'Quillhaven air removal tests',
    preamble: [],
    header: ['Date', 'Time', 'Unit', 'Result', 'Cycle no', 'Reader remark', 'Entered at'],
    rows: tests
      .filter((test) => date(test.time) >= from && date(test.time) < (HALVES[index + 1] ?? '9999'))
      .map((test) =>
        row(
          [
            date(test.time),
            time(test.time),
            test.unit,
            RESULT[test.result],
            String(test.cycle),
            test.note,
            minute(test.entered),
          ],
          `${test.unit} ${test.cycle} ${test.time}`,
          test.time,
        ),
      ),
  }));
}

/** kPa/min as mbar in 10 min: 10 mbar to the kPa, ten minutes. */
const MBAR_10_MIN = 100;

export function quillhavenLeaks(fleet: Fleet): Table {
  const leaks = recordsOf(fleet, 'Quillhaven', 'leaks', (leak) => leak.time);
  return {
    file: 'quillhaven/leak-tests.csv',
    source: 'Quillhaven leak tests',
    preamble: [],
    header: ['Unit', 'When', 'Cycle no', 'Rise (mbar in 10 min)', 'Limit (mbar in 10 min)'],
    rows: leaks.map((leak) =>
      row(
        [leak.unit, minute(leak.time), String(leak.cycle), (leak.rate * MBAR_10_MIN).toFixed(1), '13.0'],
        `${leak.unit} ${leak.cycle} ${leak.time}`,
        leak.time,
      ),
    ),
  };
}
