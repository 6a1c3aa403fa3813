import { type Fleet, recordsOf } from '../fleet.ts';
import { stream } from '../random.ts';
import { row, type Table, type TableRow } from '../table.ts';
import { RENAMED } from '../unit-stories.ts';
import { mmHgPerMin, month, RESULT, stamp } from './tornfell-words.ts';

/** Air-removal tests, one file a month; leak tests, one file. T1 stands under its old name until the day of renaming. */

export const nameOn = (unit: string, time: number): string =>
  unit === RENAMED.unit && time < (RENAMED.lastDay + 1) * 86_400_000 + 4 * 3_600_000 ? RENAMED.oldName : unit;

export function tornfellTests(fleet: Fleet): Table[] {
  const draw = stream('Tornfell/test initials');
  const months = new Map<string, TableRow[]>();
  for (const test of recordsOf(fleet, 'Tornfell', 'tests', (each) => each.time)) {
    const cells = [
      nameOn(test.unit, test.time),
      stamp(test.time),
      String(test.cycle),
      RESULT[test.result],
      test.note,
      stamp(test.entered),
      draw.pick(['aa', 'bx', 'cw', 'dz']),
    ];
    const rows = months.get(month(test.time)) ?? [];
    rows.push(row(cells, `${test.unit} ${test.cycle} ${test.time}`, test.time));
    months.set(month(test.time), rows);
  }
  return [...months].map(([name, rows]) => ({
    file: `tornfell/essais-air/essais_${name}.csv`,
    source: 'Tornfell essais d’air',
    preamble: [],
    header: ['Appareil', 'Lu le', 'N° de cycle', 'Lecture', 'Remarque', 'Saisi le', 'Opér.'],
    rows,
  }));
}

export function tornfellLeaks(fleet: Fleet): Table {
  const leaks = recordsOf(fleet, 'Tornfell', 'leaks', (leak) => leak.time);
  return {
    file: 'tornfell/fuites.csv',
    source: 'Tornfell fuites',
    preamble: [],
    header: ['Appareil', 'Date', 'N° de cycle', 'Hausse (mmHg/min)', 'Limite (mmHg/min)'],
    rows: leaks.map((leak) =>
      row(
        [nameOn(leak.unit, leak.time), stamp(leak.time), String(leak.cycle), mmHgPerMin(leak.rate), '1,00'],
        `${leak.unit} ${leak.cycle} ${leak.time}`,
        leak.time,
      ),
    ),
  };
}
