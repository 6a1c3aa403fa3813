import { formatDay } from '../../site/day.ts';
import type { CommonMovement } from './common-movement.ts';
import type { SiteMovement } from './drift-schema.ts';
import { PROBE_META, type Probe } from './probes.ts';
import { median, rounded } from './robust.ts';

const DAYS_APART = 28;
const WEEK = 7;

/** The common movement of a site as a row: percent for times, else the measure itself. Null where there is none. */
export function siteMovement(site: string, probe: Probe, common: CommonMovement): SiteMovement | null {
  const { days } = common;
  if (days.length === 0) return null;
  const log = PROBE_META[probe].scale === 'log';
  const shown = (effect: number) => rounded(log ? 100 * Math.expm1(effect) : effect);
  const [from, to] = [days[0]!.day, days.at(-1)!.day];
  const weekTo = (end: number) =>
    median(days.filter((of) => of.day > end - WEEK && of.day <= end).map((of) => of.effect));
  const [now, before] = [weekTo(to), weekTo(to - DAYS_APART)];
  return {
    site,
    probe,
    measure: log ? 'percent' : (PROBE_META[probe].measure as 'kPa/min' | 'K'),
    change_4_weeks: now === undefined || before === undefined ? null : shown(now - before),
    from: formatDay(from),
    day: days.map((of) => of.day - from),
    movement: days.map((of) => shown(of.effect)),
    units: days.map((of) => of.units),
  };
}
