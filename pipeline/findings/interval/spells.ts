import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { byOver, isOver } from '../../transform/possible-time.ts';
import { eraOf } from '../../transform/service/eras.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import { logCover } from './log-cover.ts';
import { type DayColumns, dayColumns, type SpellDays } from './spell-days.ts';

export const SPELL_ENDS = [
  'routine_cleaning',
  'reactive_cleaning',
  'era_end',
  'log_gap',
  'record_end',
] as const;
export type SpellEnd = (typeof SPELL_ENDS)[number];

/**
 * A cleaning spell: from a routine chamber cleaning that counts to the next chamber cleaning, the end of the era, a gap in the cleaning log or the end of
 * the record. The clock is 0 at its start.
 */
export interface Spell {
  unit: string;
  site: string;
  era: number;
  from: Day;
  ended_by: SpellEnd;
  /** Days at risk. */
  days: SpellDays;
  /** What passed from start to end, at risk or not. */
  passed: { calendar_days: number; days_of_use: number; cycles: number };
}

/** Which reading of records that the cycle log contradicts: the site's rule, or counted as done. */
export type RecordReading = 'site' | 'all_records';

/**
 * Cuts the units' days of use into cleaning spells.
 *
 * A spell starts with a chamber cleaning that is routine and counts as done in the reading. A reactive cleaning ends the spell and starts none, so that a
 * unit just mended is never taken for one just cleaned. A day belongs to the cleaning that was over when its first cycle started.
 *
 * @param rowsOf rows of the panel of a unit
 */
export function cleaningSpells(
  histories: readonly UnitCourse[],
  rowsOf: (unit: string) => readonly UnitDay[],
  site: Site,
  reading: RecordReading,
): Spell[] {
  const covers = logCover(histories, site);
  const counts = reading === 'all_records' || site.rules.contradicted_counts_as_done;
  return histories.flatMap((history) => {
    const rows = new Map(rowsOf(history.unit).map((row) => [row.day, row]));
    return spellsOfUnit(history, rows, counts, covers.get(history.site)!);
  });
}

function spellsOfUnit(
  history: UnitCourse,
  rows: ReadonlyMap<Day, UnitDay>,
  contradictedCounts: boolean,
  covered: (day: Day) => boolean,
): Spell[] {
  const cleanings = history.chamber_cleanings
    .filter((cleaning) => countsAsDone(cleaning, contradictedCounts))
    .sort(byOver);
  // Made anew where it is asked for.
  const { use_days } = history;
  const columns = dayColumns(rows.size);
  const spells: Spell[] = [];
  let open: Spell | null = null;
  let filled = 0;
  let used = 0;
  let cycles = 0;
  let next = 0;
  const close = (ended_by: SpellEnd, end: Day) => {
    if (!open) return;
    open.ended_by = ended_by;
    open.passed = { calendar_days: Math.max(0, end - open.from), days_of_use: used, cycles };
    spells.push(open);
    open = null;
  };
  for (const use of use_days) {
    const { day } = use;
    for (; next < cleanings.length && isOver(cleanings[next]!, day, use.first_cycle); next++) {
      const cleaning = cleanings[next]!;
      close(cleaning.reactive ? 'reactive_cleaning' : 'routine_cleaning', cleaning.day);
      if (cleaning.reactive) continue;
      open = startAt(history, cleaning.day, columns, filled);
      used = 0;
      cycles = 0;
    }
    const spell = open as Spell | null;
    if (!spell) continue;
    if (eraOf(history.eras, day).index !== spell.era) close('era_end', eraOf(history.eras, day).from);
    else if (!covered(day)) close('log_gap', day);
    else {
      const row = rows.get(day);
      if (row?.at_risk === 1) {
        columns.calendar_days[filled] = day - spell.from;
        columns.days_of_use[filled] = used;
        columns.cycles[filled] = cycles;
        columns.cycles_of_day[filled] = use.cycles;
        columns.failed[filled] = Number(row.failed === 1);
        columns.production[filled] = row.production_cycles;
        columns.aborts[filled] = row.cleanliness_aborts;
        spell.days.to = ++filled;
      }
      used++;
      cycles += use.cycles;
    }
  }
  const last = use_days.at(-1);
  if (last) close('record_end', last.day + 1);
  return spells;
}

function startAt(history: UnitCourse, from: Day, columns: DayColumns, filled: number): Spell {
  return {
    unit: history.unit,
    site: history.site,
    era: eraOf(history.eras, from).index,
    from,
    ended_by: 'record_end',
    days: { columns, from: filled, to: filled },
    passed: { calendar_days: 0, days_of_use: 0, cycles: 0 },
  };
}
