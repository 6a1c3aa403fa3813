import { DUE_STATES, type DueCounts, type Review } from '../../findings/review-schema.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../site/vocabulary.ts';
import { type DueState, dueStateLook } from '../charts/palette.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** A part of a bar: the due tasks of one kind in one state, over all units. */
export interface DueRow {
  task: CleaningTask;
  task_label: string;
  state: DueState;
  count: number;
  due: number;
  share_from: number;
  share_to: number;
  share_middle: number;
  label: string;
  /** What stands where the part is too narrow for the label. */
  short_label: string;
  fill: string;
  line: string;
  letter_colour: string;
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const DUE_COLUMNS = ['task', 'state', 'count', 'due'] as const;

/** Bars of due tasks over all units, each cut into its states. Tasks that did not fall due have no bar. */
export function dueRows(review: Review, words: Words): DueRow[] {
  return CLEANING_TASKS.flatMap((task) => {
    const counts = sumDue(review.cleaning.month.filter((row) => row.task === task));
    if (counts.due === 0) return [];
    let before = 0;
    return DUE_STATES.filter((state) => counts[state] > 0).map((state) => {
      const count = counts[state];
      const share_from = before / counts.due;
      before += count;
      const share_to = before / counts.due;
      const look = dueStateLook[state];
      const ofState = words.terms.dueLetter[state];
      const letter = ofState === '' ? '' : `${ofState} `;
      return {
        task,
        task_label: `${words.terms.task[task]}|${words.cleaning.dueCount(counts.due)}`,
        state,
        count,
        due: counts.due,
        share_from,
        share_to,
        share_middle: (share_from + share_to) / 2,
        label:
          state === 'done'
            ? words.cleaning.doneCount(count, counts.due)
            : `${letter}${words.format.integer(count)}`,
        short_label: state === 'done' ? words.format.integer(count) : ofState,
        fill: look.fill,
        line: look.line,
        letter_colour: look.letterColour,
        told: toldText({
          unit: '',
          tip: words.tips.due(words.terms.task[task], count, words.terms.dueState[state], counts.due),
        }),
      };
    });
  });
}

export type DueSum = Record<DueState | 'due', number>;

/** Sum of counts over units and tasks. */
export function sumDue(rows: readonly DueCounts[]): DueSum {
  const sum: DueSum = { due: 0, done: 0, done_late: 0, missed: 0, not_recorded: 0, contradicted: 0, open: 0 };
  for (const row of rows) {
    sum.due += row.due;
    for (const state of DUE_STATES) sum[state] += row[state];
  }
  return sum;
}
