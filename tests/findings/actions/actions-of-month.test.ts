import { describe, expect, it } from 'vitest';
import { actionsOfMonth } from '../../../pipeline/findings/actions/actions-of-month.ts';
import { actionsSchema } from '../../../pipeline/findings/actions/actions-schema.ts';
import { monthSpan, parseDay } from '../../../pipeline/site/day.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { Action } from '../../../pipeline/site/records.ts';

const site = readSiteFile('sites: [{ zone: Europe/Berlin }]', 'site.yaml');
const period = { month: '2026-03', ...monthSpan('2026-03')! };
const noon = (date: string) => parseDay(date)! * 86_400_000 + 43_200_000;

function action(
  row: number,
  decided: string,
  parts: { due?: string; done?: string; state?: Action['state'] },
): Action {
  return {
    time: noon(decided),
    action: `Action ${row}`,
    ...(parts.due && { due: noon(parts.due) }),
    ...(parts.done && { done_on: noon(parts.done) }),
    ...(parts.state && { state: parts.state }),
    time_mark: 'time',
    origin: { source: 'actions', file: 'actions.csv', sheet: null, row },
  };
}

const standings = (...actions: Action[]) =>
  actionsSchema
    .parse(actionsOfMonth(site, actions, period))
    .list.map(({ row, standing, days_late }) => [row, standing, days_late]);

describe('actions of the month', () => {
  it('are done, late or open as their days say', () => {
    expect(
      standings(
        action(2, '2026-03-03', { due: '2026-03-20', done: '2026-03-18' }),
        action(3, '2026-03-03', { due: '2026-03-20', done: '2026-03-22' }),
        action(4, '2026-03-03', { due: '2026-03-20' }),
        action(5, '2026-03-03', { due: '2026-04-20' }),
        action(6, '2026-03-03', {}),
      ),
    ).toEqual([
      [4, 'late', 11],
      [5, 'open', null],
      [6, 'open', null],
      [3, 'done_late', 2],
      [2, 'done', null],
    ]);
  });

  it('are not late on the day on which they are due, nor on the last of the month', () => {
    expect(standings(action(2, '2026-03-03', { due: '2026-03-31' }))).toEqual([[2, 'open', null]]);
    expect(standings(action(2, '2026-03-03', { due: '2026-03-30' }))).toEqual([[2, 'late', 1]]);
    expect(standings(action(2, '2026-03-03', { due: '2026-03-20', done: '2026-03-20' }))).toEqual([
      [2, 'done', null],
    ]);
  });

  it('follow what the list says where it contradicts the days', () => {
    expect(standings(action(2, '2026-03-03', { state: 'done' }))).toEqual([[2, 'done', null]]);
    expect(
      standings(action(2, '2026-03-03', { due: '2026-03-10', done: '2026-03-09', state: 'open' })),
    ).toEqual([[2, 'late', 21]]);
    expect(standings(action(2, '2026-03-03', { due: '2026-03-10', state: 'dropped' }))).toEqual([
      [2, 'dropped', null],
    ]);
  });

  it('leave out what was decided later, and count what was settled before', () => {
    const found = actionsOfMonth(
      site,
      [
        action(2, '2026-04-02', {}),
        action(3, '2026-01-10', { done: '2026-02-01' }),
        action(4, '2026-01-10', { state: 'dropped' }),
        action(5, '2026-01-10', { done: '2026-03-02' }),
      ],
      period,
    );
    expect(found.list.map((of) => of.row)).toEqual([5]);
    expect(found.settled_before).toBe(2);
  });

  it('stay as they were at the end of the month when they are done after it', () => {
    const [found] = actionsOfMonth(
      site,
      [action(2, '2026-02-10', { due: '2026-03-10', done: '2026-04-02' })],
      period,
    ).list;
    expect(found).toMatchObject({ standing: 'late', done_on: '2026-04-02', days_late: 21 });
  });

  it('say that no list was read', () => {
    expect(actionsOfMonth(site, [], period)).toEqual({ kept: false, list: [], settled_before: 0 });
  });
});
