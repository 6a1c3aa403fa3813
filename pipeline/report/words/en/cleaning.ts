import { format } from './format.ts';

const { integer, count, list } = format;

/** Words about cleaning done against due. */
export const cleaning = {
  heading: 'Cleaning done against due',
  intro: (month: string) =>
    `Each task that fell due in ${month}, by unit and operating day. A blank in the log is neither done nor missed unless the site’s rule says so.`,
  leftOut:
    'Left out: days with no day of use, on which nothing falls due; work beyond what was due. Tasks still open are counted as due and as neither done nor missed. These are counts of all that fell due, not a sample, so they have no interval.',
  barsTitle: 'Tasks due, all units, by state',
  barsDescription: (lines: string[]) =>
    `One bar for each task, from none to all that fell due. ${lines.join(' ')}`,
  calendarTitle: (task: string) => `${task}, by unit and day`,
  calendarDescription: (task: string, month: string, states: string) =>
    `A row for each unit and a cell for each operating day of ${month}. ${task}: ${states}. Blank cells are days with no use.`,
  dueCount: (due: number) => `${integer(due)} due`,
  doneCount: (done: number, due: number) => `${integer(done)} of ${integer(due)} done in time`,
  key: 'How states are drawn',
  none: (month: string) => `No task is known to have fallen due in ${month}.`,
  tableCaption: (month: string) => `Cleaning tasks due and done, ${month}`,
  recordCaption: (span: string) => `Cleaning tasks due and done, ${span}`,
  heads: {
    unit: 'Unit',
    task: 'Task',
    due: 'Due',
    done: 'Done in time',
    done_late: 'Done late',
    missed: 'Missed',
    not_recorded: 'Not recorded',
    contradicted: 'Contradicted',
    open: 'Open',
  },
  chamberCaption: (span: string) => `Chamber cleaning records beside the cycle log, ${span}`,
  chamberHeads: {
    unit: 'Unit',
    interval: 'Interval stated',
    clock: 'Days since the last that counts',
    pastDue: 'Days past due',
    records: 'Records',
    supported: 'Supported',
    running: 'Unit was running',
    hot: 'Unit was hot',
    noReturn: 'No return',
    notJudged: 'Date only',
    reactive: 'Reactive',
  },
  chamberNote:
    'Supported: the unit stood idle for the cool-down before the work, and a warm-up and a passing air-removal test came before production. Running or hot: the log contradicts the record. A record can be hot and lack its return at once, so that the columns may sum to more than the records. Date only: of the record, or of the passing test after it, the time is not known, so that the order can’t be judged. Days past due: as of the day after the month; not known where the site’s rule does not say what a blank means, or its log was not kept. Reactive: within two days after a failure, or marked so.',
  noInterval: 'none stated',
  never: 'no record',
  notKnown: 'not known',
  unitLine: (parts: string[]) => format.sentence(list(parts)),
  taskSummary: (task: string, done: number, due: number) =>
    `${task}: ${integer(done)} of ${count(due, 'task', 'tasks')} due done.`,
};
export type CleaningWords = typeof cleaning;
