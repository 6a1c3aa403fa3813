import type { NextMonth, TaskAhead } from '../next-month/next-month-schema.ts';

/** Tasks that are outstanding at the end of the month, as the next month's list has them: fallen due and not on record as done. */
export const outstandingTasks = (ahead: Pick<NextMonth, 'tasks'>): TaskAhead[] =>
  ahead.tasks.filter((task) => task.state === 'outstanding');
