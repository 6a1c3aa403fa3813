import { describe, expect, it } from 'vitest';
import type { Cycle } from '../../../pipeline/site/records.ts';
import { dayOf, notesOf, watched } from './watched.ts';

/** Unit A's evacuation time by day, with noise of 2 %; undefined where the record has none. */
const watch = (level: (day: number) => number | undefined) =>
  watched((day, plain, noise): Cycle => {
    const { evacuation_s: _, ...rest } = plain;
    const now = level(day);
    return now === undefined ? rest : { ...rest, evacuation_s: Math.round(now * (1 + 0.02 * noise())) };
  });

const states = (drift: ReturnType<typeof watch>['drift']) => [...new Set(drift.probes.map((of) => of.state))];

describe('the watch', () => {
  it('calls a level series steady, and takes nothing from production cycles', () => {
    const { drift, evacuation } = watch(() => 400);
    expect(states(drift).filter((state) => state !== 'steady' && state !== 'not_enough_data')).toEqual([]);
    expect(evacuation.level_now).toBeGreaterThan(380);
    expect(evacuation.level_now).toBeLessThan(420);
  });

  it('finds a slow rise in the unit that has it and in no other', () => {
    const { drift, evacuation } = watch((day) => 400 * (1 + Math.max(0, day - 130) * 0.004));
    expect(evacuation).toMatchObject({ state: 'moving', direction: 'up' });
    // Begun on day 130 at 0.4 % a day: 11.2 s a week of 400 s.
    expect(Math.abs(dayOf(evacuation.since!) - 130)).toBeLessThanOrEqual(14);
    expect(evacuation.rate_per_week!.value).toBeGreaterThan(7);
    expect(evacuation.rate_per_week!.value).toBeLessThan(16);
    expect(drift.units[0]!.unit).toBe('A');
    expect(drift.probes.filter((of) => of.unit !== 'A' && of.state === 'moving')).toEqual([]);
  });

  it('tells a step from a slope', () => {
    const { evacuation } = watch((day) => (day < 120 ? 400 : 450));
    expect(evacuation).toMatchObject({ state: 'stepped', direction: 'up' });
    expect(Math.abs(dayOf(evacuation.step!.date) - 120)).toBeLessThanOrEqual(3);
  });

  it('makes no alarm of values that stop coming, and says so', () => {
    const { evacuation } = watch((day) => (day < 100 ? 400 : undefined));
    expect(evacuation.state).toBe('not_enough_data');
    expect(notesOf(evacuation)).toContain('no_recent_values');
  });
});
