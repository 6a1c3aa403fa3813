import { describe, expect, it } from 'vitest';
import {
  CAUSES,
  causePattern,
  movesAs,
  type ProbeMove,
} from '../../../pipeline/findings/drift/cause-pattern.ts';
import { scanChanges } from '../../../pipeline/findings/drift/change-scan.ts';
import { daysToLimit, FARTHEST_DAYS, rateInterval } from '../../../pipeline/findings/drift/days-to-limit.ts';
import { PROBES, type Probe } from '../../../pipeline/findings/drift/probes.ts';

const room = { before: 5, afterStep: 3, afterKnot: 5, daysAfterKnot: 4, wholeSlope: false };

/** Level 10 to day 60, then a climb of 0.5 a day to day 99, with a ripple of 0.2. */
function climbing() {
  const t = Array.from({ length: 100 }, (_, day) => day);
  const y = t.map((day) => 10 + 0.5 * Math.max(0, day - 60) + (day % 2 === 0 ? 0.2 : -0.2));
  const { slope, slopes } = scanChanges({ t, y, w: t.map(() => 1) }, room, true);
  return { best: slope!, slopes, unit: 0.04, now: 99, bound: 4.5 };
}

describe('days to the limit', () => {
  it('are those of the line, with the truth inside a narrow interval', () => {
    // 10 + 0.5 (d - 60) = 40 on day 120.
    const found = daysToLimit({ ...climbing(), limit: 40 });
    expect(found.days).toBeCloseTo(21, 0);
    expect(found.low).toBeLessThanOrEqual(21);
    expect(found.high!).toBeGreaterThanOrEqual(21);
    expect(found.high! - found.low).toBeLessThan(6);
  });

  it('are 0 past the limit, and none where the line runs away from it', () => {
    expect(daysToLimit({ ...climbing(), limit: 20 })).toMatchObject({ days: 0, low: 0 });
    const away = daysToLimit({ ...climbing(), limit: 5 });
    expect(away.days).toBeNull();
    expect(away.high).toBeNull();
  });

  it('are over two years where the line is that far away', () => {
    expect(daysToLimit({ ...climbing(), limit: 10 + 0.5 * (FARTHEST_DAYS + 200) }).days).toBeNull();
  });

  it('have a rate whose interval holds the true one', () => {
    const { best, slopes, unit, bound } = climbing();
    const { low, high } = rateInterval(best, slopes, unit, bound);
    expect(low).toBeLessThan(0.5);
    expect(high).toBeGreaterThan(0.5);
    expect(high - low).toBeLessThan(0.1);
  });
});

describe('the cause that a pattern fits', () => {
  const moves = (some: Partial<Record<Probe, ProbeMove>>) =>
    new Map(PROBES.map((probe) => [probe, some[probe] ?? 'still'] as const));

  // The table of drifting variables: the key sign and what is usual beside it.
  it.each([
    [{ exhaust_time: 'up', evacuation_time: 'up', heat_up_time: 'up' }, 'clogged strainer or drain'],
    [{ leak_rate: 'up', evacuation_time: 'up' }, 'door gasket or valve leak'],
    [{ evacuation_time: 'up', saturation_residual: 'down' }, 'pump or ejector wear, or warm or weak water'],
    [{ heat_up_time: 'up', exposure_spread: 'up' }, 'chamber or jacket scale'],
  ] as const)('%j: %s', (some, cause) => {
    expect(causePattern(moves(some))!.fits_best).toContain(cause);
  });

  it('is not asked where one probe moves or none', () => {
    expect(causePattern(moves({ leak_rate: 'up' }))).toBeNull();
    expect(causePattern(moves({}))).toBeNull();
    expect(causePattern(moves({ exhaust_time: 'down', evacuation_time: 'down' }))).toBeNull();
  });

  it('knows which movements go together', () => {
    const together = (...moved: [Probe, number][]) =>
      CAUSES.some((cause) => moved.every(([probe, slope]) => movesAs(cause, probe, slope)));
    expect(together(['exhaust_time', 0.1], ['evacuation_time', 0.2])).toBe(true);
    expect(together(['exhaust_time', 0.1], ['evacuation_time', -0.2])).toBe(false);
    expect(together(['exhaust_time', 0.1], ['leak_rate', 0.2])).toBe(false);
    expect(together(['exhaust_time', 0])).toBe(false);
  });
});
