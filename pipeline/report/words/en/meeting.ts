import type { ActionStanding } from '../../../findings/actions/actions-schema.ts';
import type { MissingCode, MissingData, NextMonth } from '../../../findings/next-month/next-month-schema.ts';
import type { CleaningTask } from '../../../site/vocabulary.ts';
import { format } from './format.ts';

const { count, integer, date } = format;

/** Words of the page for the meeting: actions of the month, what to decide, what the next month brings. */
export const meeting = {
  shortHeading: 'Since the last review, and next',
  whole: 'Changes, actions, and what the next month brings',
  actionsHeading: 'Actions: done, open, late',
  actionsIntro:
    'From the list of actions that the site keeps, as it stood at the end of the month. Late: its day had passed and it was not on record as done.',
  notKept:
    'No list of actions was read. Keep one as a table with the columns time, unit, action, role, due, done_on and state, and the next review shows what was done; next-steps.csv can be its beginning.',
  noActions: (month: string) => `No action was open, decided or done in ${month}.`,
  settledBefore: (n: number) =>
    `${count(n, 'action was', 'actions were')} done or dropped before the month and ${n === 1 ? 'is' : 'are'} not shown.`,
  actionCounts: (counts: Record<ActionStanding, number>) =>
    `${format.sentence(count(counts.done + counts.done_late, 'action', 'actions'))} done${
      counts.done_late > 0 ? ` (${integer(counts.done_late)} after its day)` : ''
    }, ${integer(counts.open)} open, ${integer(counts.late)} late${counts.dropped > 0 ? `, ${integer(counts.dropped)} dropped` : ''}.`,
  actionsCaption: (month: string) => `Actions in ${month}`,
  actionHeads: {
    action: 'Action',
    unit: 'Unit',
    role: 'Who decides',
    decided: 'Decided',
    due: 'Due',
    done: 'Done',
    standing: 'State',
  },
  standing: {
    late: 'late',
    open: 'open',
    done_late: 'done, late',
    done: 'done',
    dropped: 'dropped',
  } satisfies Record<ActionStanding, string>,
  daysLate: (days: number) => count(days, 'day', 'days'),
  afterMonth: (on: string) => `${date(on)}, after the month`,
  noDay: 'no day stated',
  anyUnit: 'no single unit',
  noRole: 'not stated',
  stepsHeading: 'What to decide now',
  stepsIntro:
    'Each reason for attention with the next step that usually follows from it and the role that decides. It proposes and records nothing: the meeting decides, the instructions for use and local policy rule.',
  stepsNone: 'No unit has a reason on record to need attention, so nothing is proposed.',
  stepsCaption: 'Next steps, most pressing first',
  stepHeads: { unit: 'Unit', when: 'When', why: 'Why', step: 'Next step', decides: 'Who decides' },
  stepsFile: 'The same as the beginning of a list of actions, with the day to be filled in:',
  nextHeading: (month: string) => `What ${month} brings if nothing changes`,
  nextIntro: (weeks: number) =>
    `By the site’s cleaning policy and what was last done, each task taken as done on its day. Days of use are expected by habit: weekdays on which a unit was in use in at least half of the last ${integer(weeks)} weeks; holidays are not known.`,
  tasksNone: (month: string) => `No task with an interval is known to fall due in ${month}.`,
  calendarTitle: (month: string) => `Tasks that fall due in ${month}, by unit and day`,
  calendarDescription: (month: string, parts: string) =>
    `A row for each unit and a cell for each day of ${month}. ${parts}. Pale cells are days of expected use; blank ones are days with none.`,
  calendarCount: (task: string, due: number, outstanding: number) =>
    `${task}: ${integer(due)} to fall due, ${integer(outstanding)} outstanding`,
  dayTitle: (month: string) => `Operating day of ${month}`,
  letter: { drain_strainer: 'S', drain_flush: 'F', chamber: 'C', professional: 'P' } satisfies Record<
    CleaningTask,
    string
  >,
  outstandingMark: '!',
  key: 'How tasks are drawn',
  keyOutstanding: 'fell due before the month and is not on record as done: on the first day of use',
  keyExpected: 'expected in use, nothing with an interval due',
  keyIdle: 'blank: no use expected',
  daily: (task: string, days: number, units: number) =>
    `${task}: before the first cycle of each day of use, ${count(days, 'time', 'times')} on ${count(units, 'unit', 'units')}.`,
  tasksCaption: (month: string) => `Tasks with an interval in ${month}`,
  taskHeads: { day: 'Day', unit: 'Unit', task: 'Task', state: 'State', last: 'Last done' },
  taskState: {
    due: 'due',
    outstanding: 'outstanding',
    each_day_of_use: 'each day of use',
  } satisfies Record<NextMonth['tasks'][number]['state'], string>,
  taskSince: (due: string) => `since ${date(due)}`,
  taskOn: (due: string) => `on ${date(due)}, a day of no expected use`,
  afterChamber: 'after the chamber cleaning',
  never: 'none on record',
  watchHeading: 'Units under watch',
  watchIntro: 'Reasons for attention that do not end with the month.',
  watchNone: 'No unit is under watch. No flag does not mean no fault.',
  watchCaption: 'Units under watch',
  watchHeads: { unit: 'Unit', why: 'Why' },
  missingHeading: 'Data that will be missing',
  missingIntro:
    'What the records of the month already lack. If nothing changes, the next review can’t say what depends on it.',
  missingNone: 'Nothing is known to be missing: all sources go on, and what they should hold is there.',
  missingCaption: 'Data that will be missing if nothing changes',
  missingHeads: { what: 'What', where: 'Where', since: 'Last', effect: 'What can’t be said without it' },
  missing: {
    source_stopped: 'Source fell silent for longer than ever',
    source_without_records: 'Source without any record',
    cleaning_log_silent: 'No entry in the cleaning log for over ten days',
    no_leak_tests: 'No leak test in the month',
    no_durations: 'Test and warm-up cycles without durations',
    tests_without_time: 'Tests of which only the date is known',
    cycles_without_end: 'Cycles without an end',
    no_use_expected: 'No regular day of use in the last weeks',
  } satisfies Record<MissingCode, string>,
  missingEffect: {
    source_stopped: 'anything that rests on it',
    source_without_records: 'anything that rests on it',
    cleaning_log_silent: 'whether cleaning was done: blanks are then neither done nor missed',
    no_leak_tests: 'whether the unit holds its vacuum',
    no_durations: 'whether the unit drifts before it fails',
    tests_without_time: 'whether tests came before production',
    cycles_without_end: 'whether a cleaning record fits the cycle log',
    no_use_expected: 'when tasks fall due',
  } satisfies Record<MissingCode, string>,
  missingCount: (of: MissingData) =>
    of.count === null || of.of === null ? '' : `${integer(of.count)} of ${integer(of.of)}`,
  missingWhere: (of: MissingData) =>
    [of.source, of.unit === null ? null : `unit ${of.unit}`, of.unit === null ? of.site : null]
      .filter((part) => part !== null)
      .join(', '),
  shortActions: (counts: Record<ActionStanding, number>) =>
    `Actions: ${integer(counts.done + counts.done_late)} done, ${integer(counts.open)} open, ${integer(counts.late)} late.`,
  shortNext: (month: string, due: number, outstanding: number) =>
    `In ${month} ${count(due, 'task with an interval falls', 'tasks with an interval fall')} due and ${integer(outstanding)} ${outstanding === 1 ? 'is' : 'are'} outstanding.`,
  shortMissing: (n: number) =>
    n === 0
      ? ''
      : `${format.sentence(count(n, 'thing', 'things'))} will be missing from the data if nothing changes.`,
};
export type MeetingWords = typeof meeting;
