import { asItIs, change, type FaultSpec, raw } from './fault.ts';

/** Messy rows of Quillhaven. Columns by position: see the headers in `exports/`. */

const log = (quarter: string) => `quillhaven/cycle-log-${quarter}.csv`;
const HEADER_AGAIN =
  'Unit,Cycle no,Program,Started,Ended,Result,Message,Evacuation (s),Heat-up (s),Exposure (s),Exhaust (s),Drying (s),Temp min (C),Temp max (C),Pressure (kPa),Dry vacuum (kPa),Drain temp (C)';

// biome-ignore format: one fault a line
const CYCLES: readonly FaultSpec[] = [
  { file: log('2025-q2'), place: 0.21, how: 'insert', make: change({ 0: 'Q9' }), fate: 'rejected', code: 'unknown_unit', what: 'Unit Q9, which the organisation has not' },
  { file: log('2025-q2'), place: 0.55, how: 'insert', make: change({ 3: '2025-06-31 09:12:00' }), fate: 'rejected', code: 'bad_time', what: 'Start on 31 June' },
  { file: log('2025-q2'), place: 1, how: 'insert', make: raw('Total,,,,,,,,,,,,,,,,'), fate: 'skipped', what: 'Line of totals' },
  { file: log('2025-q3'), place: 0.3, how: 'insert', make: change({ 0: 'Q 7' }), fate: 'rejected', code: 'unknown_unit', what: 'Unit Q 7, which the organisation has not' },
  { file: log('2025-q3'), place: 0.42, how: 'edit', make: change({ 4: '2025-07-01 00:00:00' }), fate: 'cell', code: 'end_before_start', what: 'End before start' },
  { file: log('2025-q3'), place: 0.6, how: 'insert', make: raw(''), fate: 'blank', what: 'Empty line' },
  { file: log('2025-q3'), place: 1, how: 'insert', make: raw('Total,,,,,,,,,,,,,,,,'), fate: 'skipped', what: 'Line of totals' },
  { file: log('2025-q4'), place: 0.25, how: 'edit', make: change({ 12: '1340', 13: '134.8' }), fate: 'cell', code: 'out_of_range', what: 'Temperature 1340 C, the point is lost' },
  { file: log('2025-q4'), place: 0.5, how: 'insert', make: raw(HEADER_AGAIN), fate: 'skipped', what: 'Header once more in the middle' },
  { file: log('2025-q4'), place: 0.7, how: 'insert', make: raw('Q4,22481,"wrapped,2025-12-05 10:14:09,2025-12-05 11:05:40,complete,,401,139,240,85'), fate: 'rejected', code: 'quote', what: 'A quote that is never closed' },
  { file: log('2026-q1'), place: 0.015, how: 'edit', make: change({ 5: 'not in order' }), fate: 'rejected', code: 'conflicting_duplicate', what: 'A row of the overlap whose result differs from the earlier file; the earlier one stands' },
  { file: log('2026-q1'), place: 0.33, how: 'insert', make: change({ 5: '' }), fate: 'rejected', code: 'missing_value', what: 'Result is empty' },
  { file: log('2026-q1'), place: 0.64, how: 'insert', make: raw('Q2,30466,wrapped,2026-02-1'), fate: 'rejected', code: 'short_row', what: 'Row cut short' },
  { file: log('2026-q1'), place: 0.8, how: 'insert', make: change({ 0: 'Q1', 1: '1', 3: '2000-01-01 00:14:00', 4: '2000-01-01 00:38:00' }), fate: 'rejected', code: 'clock_reset', what: 'Clock of the control was reset to 2000' },
  { file: log('2026-q2'), place: 0.35, how: 'insert', make: change({ 5: 'perhaps' }), fate: 'rejected', code: 'unknown_word', what: 'Result "perhaps"' },
  { file: log('2026-q2'), place: 0.72, how: 'edit', make: change({ 7: '4l2' }), fate: 'cell', code: 'bad_number', what: 'Evacuation time "4l2", a letter for a digit' },
  { file: log('2026-q3'), place: 0.45, how: 'insert', make: change({ 2: 'printer trial' }), fate: 'rejected', code: 'unknown_word', what: 'Program "printer trial"' },
  { file: log('2026-q3'), place: 0.9, how: 'edit', make: change({ 14: '30880' }), fate: 'cell', code: 'out_of_range', what: 'Pressure 30880 kPa, the point is lost' },
];

// biome-ignore format: one fault a line
const OTHERS: readonly FaultSpec[] = [
  { file: 'quillhaven/air-removal-2025-04.csv', place: 0.4, how: 'insert', make: change({ 3: 'grey' }), fate: 'rejected', code: 'unknown_word', what: 'Result "grey"' },
  { file: 'quillhaven/air-removal-2025-04.csv', place: 0.7, how: 'insert', make: asItIs, fate: 'record', what: 'The same test typed twice' },
  { file: 'quillhaven/air-removal-2025-10.csv', place: 0.2, how: 'insert', make: change({ 1: '25:10' }), fate: 'rejected', code: 'bad_time', what: 'Time 25:10' },
  { file: 'quillhaven/air-removal-2025-10.csv', place: 0.6, how: 'insert', make: change({ 2: 'unit four' }), fate: 'rejected', code: 'unknown_unit', what: 'Unit "unit four"' },
  { file: 'quillhaven/air-removal-2026-04.csv', place: 0.5, how: 'insert', make: change({ 3: '' }), fate: 'rejected', code: 'missing_value', what: 'Result is empty' },
  { file: 'quillhaven/leak-tests.csv', place: 0.3, how: 'insert', make: change({ 3: 'not read' }), fate: 'rejected', code: 'bad_number', what: 'Rise "not read"' },
  { file: 'quillhaven/leak-tests.csv', place: 0.8, how: 'insert', make: change({ 3: '5200' }), fate: 'rejected', code: 'out_of_range', what: 'Rise 5200 mbar in 10 min, more than an atmosphere' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.15, how: 'insert', make: change({ 3: 'yesterday' }), fate: 'rejected', code: 'bad_time', what: 'Finished "yesterday"' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.35, how: 'insert', make: change({ 1: 'wiped the door' }), fate: 'rejected', code: 'unknown_word', what: 'Task "wiped the door"' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.5, how: 'insert', make: change({ 0: null }), fate: 'rejected', code: 'missing_value', what: 'Unit is empty' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.4, how: 'insert', make: () => ['Q3', 'strainer', null, wallCell('2025-11-02T01:35'), null, null, 'clogged, cleaned again', wallCell('2025-11-02T03:10')], key: 'Q3 repeated hour', fate: 'record', what: 'Work at 01:35 in the night when clocks went back: the time occurs twice' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.62, how: 'insert', make: () => ['Q3', 'strainer', null, wallCell('2026-03-08T02:20'), null, null, 'clogged, cleaned again', wallCell('2026-03-08T03:40')], key: 'Q3 hour that never was', fate: 'record', what: 'Work at 02:20 in the night when clocks went forward: the time never occurred' },
  { file: 'quillhaven/cleaning-log.xlsx', place: 0.75, how: 'insert', make: () => ['Q5', 'strainer', null, '2026-05-17 13:05', null, 'after failure', 'clogged', '2026-05-17 13:20'], key: 'Q5 text date', fate: 'record', what: 'Dates typed as text' },
  { file: 'quillhaven/service.csv', place: 0.5, how: 'insert', make: change({ 3: 'looked at' }), fate: 'rejected', code: 'unknown_word', what: 'Service "looked at"' },
  { file: 'quillhaven/inspections.csv', place: 0.5, how: 'insert', make: change({ 2: '7' }), fate: 'rejected', code: 'out_of_range', what: 'Appearance 7 on a scale that ends at 4' },
  { file: 'quillhaven/water.csv', place: 0.4, how: 'insert', make: change({ 3: '<0.1' }), fate: 'rejected', code: 'bad_number', what: 'Value "<0.1": below what the laboratory can tell' },
];

function wallCell(wall: string): Date {
  return new Date(`${wall}:00Z`);
}

export const QUILLHAVEN_FAULTS: readonly FaultSpec[] = [...CYCLES, ...OTHERS];
