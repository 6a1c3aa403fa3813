import { describe, expect, it } from 'vitest';
import { actionsDone } from '../../pipeline/findings/actions/actions-done.ts';
import { movements } from '../../pipeline/findings/attention-drift.ts';
import type { Drift } from '../../pipeline/findings/drift/drift-schema.ts';
import type { Probe } from '../../pipeline/findings/drift/probes.ts';
import { monthSpan, parseDay } from '../../pipeline/site/day.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Action } from '../../pipeline/site/records.ts';
import { driftOf } from '../report/fixtures/drift-parts.ts';

type Movement = Partial<Drift['probes'][number]> & { probe: Probe };

const still = driftOf('A1', 'north');
const base = still.probes[0]!;
const moving = (of: Movement): Drift['probes'][number] => ({
  ...base,
  state: 'moving',
  direction: 'up',
  since: '2026-03-05',
  days_to_limit: null,
  saw_tooth: null,
  ...of,
});
function reasons(
  probes: Movement[],
  cause: Drift['units'][number]['cause'] = null,
  done: [string, string][] = [],
) {
  const units = [{ ...still.units[0]!, cause }];
  return [
    ...movements(
      'A1',
      { units, probes: probes.map(moving) },
      done.map(([action, done_on]) => ({ unit: 'A1', action, done_on })),
    ),
  ].map(({ code, level, numbers }) => ({ code, level, ...numbers }));
}
const CLOGGED: Drift['units'][number]['cause'] = {
  fits_best: ['clogged strainer or drain'],
  probes: ['evacuation_time', 'heat_up_time', 'exhaust_time'],
};
const days = (low: number) => ({ days: low + 30, low, high: low + 90 });

// Which probes go with a cause stands in the table of causes; what is one reason, and how far is far, is the project's choice.
describe('reasons from movements', () => {
  it('are one for the probes that one cause moves, with the others named; those it does not move have their own', () => {
    const found = reasons(
      [
        { probe: 'evacuation_time', since: '2026-03-09' },
        { probe: 'exhaust_time' },
        { probe: 'leak_rate' },
        { probe: 'heat_up_time', direction: 'down' },
      ],
      CLOGGED,
    );
    expect(found).toMatchObject([
      {
        probe: 'evacuation_time',
        with: 'exhaust_time',
        with_since: '2026-03-05',
        cause: 'clogged strainer or drain',
      },
      { probe: 'leak_rate', cause: null },
      { probe: 'heat_up_time', cause: null },
    ]);
  });

  it('are one for each probe where no cause fits', () => {
    expect(reasons([{ probe: 'evacuation_time' }, { probe: 'exhaust_time' }])).toHaveLength(2);
  });

  it('are for soon where the limit is far at the near end of its interval, else for this review', () => {
    const level = (days_to_limit: Movement['days_to_limit'], state: Movement['state'] = 'moving') =>
      reasons([{ probe: 'leak_rate', days_to_limit: days_to_limit ?? null, state }])[0]!.level;
    expect(level(days(269))).toBe('look');
    expect(level(days(90))).toBe('look');
    expect(level(days(89))).toBe('decide');
    expect(level(null)).toBe('decide');
    expect(level(days(269), 'near_limit')).toBe('decide');
  });

  it('are told by the probe nearest to its limit, and are near it where one of them is', () => {
    const found = reasons(
      [
        { probe: 'evacuation_time', days_to_limit: days(200) },
        { probe: 'heat_up_time', days_to_limit: days(20) },
        { probe: 'exhaust_time', state: 'near_limit' },
      ],
      CLOGGED,
    );
    expect(found).toMatchObject([
      {
        code: 'drift_near_limit',
        level: 'decide',
        probe: 'exhaust_time',
        with: 'heat_up_time evacuation_time',
      },
    ]);
  });

  it('name the last action that was done since the movement began', () => {
    const done: [string, string][] = [
      ['Before', '2026-03-04'],
      ['First', '2026-03-05'],
      ['Last', '2026-03-20'],
    ];
    expect(reasons([{ probe: 'leak_rate' }], null, done)).toMatchObject([
      { done_action: 'Last', done_on: '2026-03-20', done_more: 1 },
    ]);
    expect(reasons([{ probe: 'leak_rate' }], null, done.slice(0, 1))[0]).not.toHaveProperty('done_action');
  });
});

describe('actions done', () => {
  it('are those of a unit with a day up to the end of the month, in its order', () => {
    const site = readSiteFile('sites: [{ zone: Europe/Berlin }]', 'site.yaml');
    const noon = (date: string) => parseDay(date)! * 86_400_000 + 43_200_000;
    const action = (name: string, parts: Partial<Action>): Action => ({
      time: noon('2026-03-01'),
      action: name,
      unit: 'A1',
      time_mark: 'time',
      origin: { source: 'actions', file: 'actions.csv', sheet: null, row: 2 },
      ...parts,
    });
    const done = actionsDone(
      site,
      [
        action('Late', { done_on: noon('2026-03-31') }),
        action('Early', { done_on: noon('2026-03-02'), state: 'done' }),
        action('Next month', { done_on: noon('2026-04-01') }),
        action('Open', { done_on: noon('2026-03-03'), state: 'open' }),
        action('Dropped', { done_on: noon('2026-03-03'), state: 'dropped' }),
        action('No day', { state: 'done' }),
        { ...action('No unit', { done_on: noon('2026-03-03') }), unit: undefined } as unknown as Action,
      ],
      { month: '2026-03', ...monthSpan('2026-03')! },
    );
    expect(done.map(({ action: name, done_on }) => [name, done_on])).toEqual([
      ['Early', '2026-03-02'],
      ['Late', '2026-03-31'],
    ]);
  });
});
