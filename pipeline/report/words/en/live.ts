import { format } from './format.ts';

/** Months as the script names them, and days as the tips do. */
const MONTHS = Array.from({ length: 12 }, (_, index) =>
  format.monthName(`2000-${String(index + 1).padStart(2, '0')}`),
);

/** Words of what a page gains where script is allowed. Names in braces stand for values that the script puts in. */
export const live = {
  /** Sentences for the script. */
  says: {
    months: MONTHS.join(','),
    date: '{day} {month} {year}',
    span: '{from} to {to}',
    read: 'Read the marks of {figure} one by one',
    notBegun: 'not begun; arrow keys go from mark to mark',
    noUnit: 'This mark belongs to no single unit.',
    time: 'Time shown in {figure} and in all figures over time',
    spanShown: '{span} is shown in all figures over time.',
    wholeShown: 'The whole record is shown.',
    marked: 'Unit {unit} is marked in {figures} figures.',
    unmarked: 'No unit is marked.',
    found: '{shown} of {all} units',
    foundNoName: 'No unit of that name',
    foundNone: 'No unit like that',
  },
  read: 'Step through the marks',
  closer: 'Closer',
  wider: 'Wider',
  earlier: 'Earlier',
  later: 'Later',
  whole: 'Whole record',
  markedUnit: 'Marked unit:',
  toPage: 'Its page',
  unmark: 'Unmark',
  finder: {
    name: 'Find units',
    text: 'Unit, name or site',
    state: 'Show',
    unit: 'Mark in all figures',
    noUnit: 'none',
    clear: 'Show all',
    all: 'all units',
    states: {
      act: 'before the next load',
      decide: 'at this review',
      look: 'soon',
      calm: 'no reason on record',
      missed: 'cleaning missed',
      overdue: 'chamber overdue',
      failed: 'failed test in the month',
      moving: 'drifting',
      contradicted: 'records contradicted',
    },
    groups: { attention: 'Needs attention', month: 'This month' },
    link: 'Find a unit',
  },
};
export type LiveWords = typeof live;
