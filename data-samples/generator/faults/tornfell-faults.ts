import { change, type FaultSpec, raw } from './fault.ts';

/** Messy rows of Tornfell. Columns by position: see the headers in `exports/`. */

// biome-ignore format: one fault a line
export const TORNFELL_FAULTS: readonly FaultSpec[] = [
  { file: 'tornfell/journal_T1.csv', place: 0.3, how: 'insert', make: change({ 4: 'peut-être' }), fate: 'rejected', code: 'unknown_word', what: 'État "peut-être"' },
  { file: 'tornfell/journal_T2.csv', place: 0.45, how: 'insert', make: change({ 1: '31.02.2026 08:15' }), fate: 'rejected', code: 'bad_time', what: 'Start on 31 February' },
  { file: 'tornfell/journal_T2.csv', place: 0.8, how: 'edit', make: change({ 2: '01.05.2025 06:00' }), fate: 'cell', code: 'end_before_start', what: 'End before start' },
  { file: 'tornfell/journal_T3.csv', place: 0.35, how: 'insert', make: raw('15210;07.10.2025 1'), fate: 'rejected', code: 'short_row', what: 'Row cut short' },
  { file: 'tornfell/journal_T3.csv', place: 1, how: 'insert', make: raw('Total;;;;;;;;;;;;;;;;'), fate: 'skipped', what: 'Line of totals' },
  { file: 'tornfell/journal_T4.csv', place: 0.62, how: 'edit', make: change({ 11: '2736' }), fate: 'cell', code: 'out_of_range', what: 'Temperature 2736 F, the comma is lost' },
  { file: 'tornfell/essais-air/essais_2025-08.csv', place: 0.5, how: 'insert', make: change({ 0: 'T-9' }), fate: 'rejected', code: 'unknown_unit', what: 'Unit T-9, which the organisation has not' },
  { file: 'tornfell/essais-air/essais_2026-01.csv', place: 0.3, how: 'insert', make: change({ 0: 'OLD-7' }), fate: 'rejected', code: 'unknown_unit', what: 'Old name of T1, weeks after it was renamed' },
  { file: 'tornfell/fuites.csv', place: 0.6, how: 'insert', make: change({ 3: '0.35' }), fate: 'rejected', code: 'bad_number', what: 'Number with a point where commas are the rule' },
  { file: 'tornfell/nettoyages.csv', place: 0.25, how: 'insert', make: change({ 1: 'vitre' }), fate: 'rejected', code: 'unknown_word', what: 'Tâche "vitre"' },
  { file: 'tornfell/nettoyages.csv', place: 0.55, how: 'insert', make: change({ 3: '' }), fate: 'rejected', code: 'missing_value', what: 'No date' },
];
