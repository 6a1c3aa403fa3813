import type { Review } from '../../findings/review-schema.ts';
import type { CleaningTask } from '../../site/vocabulary.ts';
import { type DueState, dueStateLook, notDueLook } from '../charts/palette.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** A cell of the cleaning calendar. `look` is drawn: fill, line and letter of the state. */
export interface CalendarRow {
  unit: string;
  task: CleaningTask;
  date: string;
  day_of_month: number;
  state: string;
  letter: string;
  fill: string;
  line: string;
  letter_colour: string;
  /** What the mark says of itself, with its unit; nothing where nothing was due. */
  told: string;
}

/** Columns of the table; colours are left to the picture. */
export const CALENDAR_COLUMNS = ['unit', 'task', 'date', 'state'] as const;

/** Cells of the calendar, idle days included as empty cells. */
export function calendarRows(days: Review['cleaning']['days'], words: Words): CalendarRow[] {
  const { terms, tips } = words;
  return days.map(({ unit, task, date, state }) => {
    const look =
      state === 'idle'
        ? { fill: 'none', line: 'none', letter: '', letterColour: 'none' }
        : state === 'not_due'
          ? { ...notDueLook, letter: '', letterColour: 'none' }
          : { ...dueStateLook[state satisfies DueState], letter: terms.dueLetter[state] };
    return {
      unit,
      task,
      date,
      day_of_month: Number(date.slice(8, 10)),
      state,
      letter: look.letter,
      fill: look.fill,
      line: look.line,
      letter_colour: look.letterColour,
      told:
        state === 'idle' || state === 'not_due'
          ? ''
          : toldText({
              unit,
              tip: tips.of(unit, tips.day(date, tips.state(terms.task[task], terms.dueState[state]))),
            }),
    };
  });
}
