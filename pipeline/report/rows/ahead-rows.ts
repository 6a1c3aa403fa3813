import type { NextMonth } from '../../findings/next-month/next-month-schema.ts';
import type { Review } from '../../findings/review-schema.ts';
import { groupBy } from '../../group-by.ts';
import { dayOfDate, formatDay, parseDay } from '../../site/day.ts';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import { notDueLook, palette } from '../charts/palette.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';
import type { CalendarRow } from './calendar-rows.ts';

/** How tasks of the next month are drawn. */
export const aheadLook = {
  due: { fill: '#dbe9ef', line: palette.series, letterColour: palette.ink },
  outstanding: { fill: palette.overdue, line: palette.failure, letterColour: palette.ink },
} as const;

export const AHEAD_COLUMNS = ['date', 'unit', 'task', 'state', 'due', 'after', 'last_done'] as const;

/** Tasks with an interval, the larger work first where two stand on one day. Those of each day of use are no news. */
export const withInterval = ({ tasks }: NextMonth): NextMonth['tasks'] =>
  tasks
    .filter((task) => task.state !== 'each_day_of_use')
    .toSorted((a, b) => CLEANING_TASKS.indexOf(b.task) - CLEANING_TASKS.indexOf(a.task));

/** Cells of the next month's calendar: a row for each unit, letters of the tasks of each day, pale cells where use is expected. */
export function aheadRows(review: Review, words: Words): CalendarRow[] {
  const { next_month: ahead } = review;
  const { meeting, terms, tips } = words;
  const byCell = groupBy(withInterval(ahead), (task) => `${task.unit}\u0000${task.date}`);
  return ahead.expected_use.flatMap(({ unit, days }) => {
    const used = new Set(days);
    return datesOf(ahead).map((date): CalendarRow => {
      const tasks = byCell.get(`${unit}\u0000${date}`) ?? [];
      const isOutstanding = tasks.some((task) => task.state === 'outstanding');
      const look =
        tasks.length > 0
          ? aheadLook[isOutstanding ? 'outstanding' : 'due']
          : used.has(date)
            ? { ...notDueLook, letterColour: 'none' }
            : { fill: 'none', line: 'none', letterColour: 'none' };
      const lettered = isOutstanding ? tasks.filter((task) => task.state === 'outstanding') : tasks;
      const letters = lettered.map((task) => meeting.letter[task.task]).join('');
      return {
        unit,
        task: tasks[0]?.task ?? 'chamber',
        date,
        day_of_month: Number(date.slice(8, 10)),
        state:
          tasks.length === 0 ? (used.has(date) ? 'not_due' : 'idle') : isOutstanding ? 'outstanding' : 'due',
        letter: isOutstanding ? `${meeting.outstandingMark}${letters}` : letters,
        fill: look.fill,
        line: look.line,
        letter_colour: look.letterColour,
        told:
          tasks.length === 0
            ? ''
            : toldText({
                unit,
                tip: tips.of(
                  unit,
                  tips.day(
                    date,
                    tasks
                      .map((task) => tips.state(terms.task[task.task], meeting.taskState[task.state]))
                      .join('; '),
                  ),
                ),
              }),
      };
    });
  });
}

/** Days of the month, as dates. */
export function datesOf({ from, to }: Pick<NextMonth, 'from' | 'to'>): string[] {
  const first = parseDay(from) ?? dayOfDate(1970, 1, 1);
  const last = parseDay(to) ?? first;
  return Array.from({ length: last - first + 1 }, (_, index) => formatDay(first + index));
}
