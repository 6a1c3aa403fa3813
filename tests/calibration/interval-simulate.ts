import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { parseDay } from '../../pipeline/site/day.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Records } from '../../pipeline/site/records.ts';
import type { Site } from '../../pipeline/site/site.ts';
import type { IntervalScenario } from './interval-scenarios.ts';

const DAY_MS = 86_400_000;
const MINUTE = 60_000;
const FIRST_DAY = parseDay('2024-01-01')!;
const INTERVAL = 28;
const LONGEST_DELAY = 25;
/** Price of a cleaning; a failure costs so many times as much. */
const CLEANING_PRICE = 100;
const EPISODE_DAY_FAILS = 0.3;

export interface IntervalFleet {
  site: Site;
  records: Records;
  until: number;
}

/** Simulates a fleet. What the clock is and what it does to failures is decided here, without any of the code under test. */
export function simulateIntervalFleet(scenario: IntervalScenario, seed: number): IntervalFleet {
  const generator = xoroshiro128plus(seed * 7919 + 13);
  const next = () => uniformFloat64(generator);
  const records: Records = {
    cycles: [],
    air_removal_tests: [],
    leak_tests: [],
    cleanings: [],
    service: [],
    inspections: [],
    water: [],
    actions: [],
  };
  const ids = Array.from({ length: scenario.units }, (_, index) => `U${String(index + 1).padStart(2, '0')}`);
  for (const unit of ids) {
    const level = Math.exp(scenario.unitSpread * normal(next) - scenario.unitSpread ** 2 / 2);
    simulateUnit(scenario, unit, level, next, records);
  }
  return { site: siteOf(ids, scenario), records, until: FIRST_DAY + scenario.days };
}

const normal = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

function siteOf(ids: string[], scenario: IntervalScenario): Site {
  return readSiteFile(
    [
      'sites: [{ id: s, zone: Etc/UTC }]',
      `units: [${ids.map((id) => `{ id: ${id} }`).join(', ')}]`,
      `cleaning: [{ task: chamber, every: ${INTERVAL}, unrecorded_means: missed }]`,
      'interval:',
      `  longest_by_instructions: ${scenario.limit}`,
      `  costs: { other_per_cleaning: ${CLEANING_PRICE}, repair_per_failure: ${CLEANING_PRICE * scenario.costRatio} }`,
    ].join('\n'),
    'simulated',
  );
}

function simulateUnit(
  scenario: IntervalScenario,
  unit: string,
  level: number,
  next: () => number,
  records: Records,
): void {
  let row = 0;
  const mark = () => ({
    unit,
    time_mark: 'time' as const,
    origin: { source: 'simulated', file: unit, sheet: null, row: ++row },
  });
  const due = () => {
    const usual = scenario.badCleanedEarly
      ? Math.max(10, Math.min(45, Math.round(INTERVAL / level)))
      : INTERVAL;
    return (
      usual +
      (next() < scenario.lateChance ? 1 + Math.floor(next() * LONGEST_DELAY) : -Math.floor(next() * 4))
    );
  };
  const rate = (level * scenario.failures28) / INTERVAL ** scenario.shape;
  let cleaned = -Math.floor(next() * INTERVAL);
  let cleanOn = cleaned + due();
  let inEpisode = false;
  let spellUntil = -1;
  for (let day = 0; day < scenario.days; day++) {
    const midnight = (FIRST_DAY + day) * DAY_MS;
    const at = (minutes: number) => midnight + minutes * MINUTE;
    if (day >= cleanOn) {
      records.cleanings.push({ ...mark(), task: 'chamber', time: at(315), start: at(270), state: 'done' });
      cleaned = day;
      cleanOn = day + due();
    }
    if (day > spellUntil && scenario.spellFactor > 1 && next() < 1 / 120)
      spellUntil = day + 14 + Math.floor(next() * 21);
    const clock = day - cleaned;
    const expected =
      rate *
      ((clock + 1) ** scenario.shape - clock ** scenario.shape) *
      (day <= spellUntil ? scenario.spellFactor : 1);
    const fails: boolean = next() < (inEpisode ? EPISODE_DAY_FAILS : 1 - Math.exp(-expected));
    const began = fails && !inEpisode;
    inEpisode = fails;
    records.cycles.push({ ...mark(), start: at(360), end: at(380), kind: 'warm_up', outcome: 'completed' });
    records.cycles.push({
      ...mark(),
      start: at(390),
      end: at(415),
      kind: 'air_removal_test',
      outcome: 'completed',
    });
    records.air_removal_tests.push({ ...mark(), time: at(416), result: fails ? 'fail' : 'pass' });
    for (const start of [480, 600]) {
      const aborts = next() < 0.01;
      records.cycles.push({
        ...mark(),
        start: at(start),
        end: at(start + 45),
        kind: 'production',
        outcome: aborts ? 'aborted' : 'completed',
        ...(aborts ? { abort_text: 'evacuation too slow' } : {}),
      });
    }
    if (began && next() < scenario.reactiveChance) {
      records.cleanings.push({
        ...mark(),
        task: 'chamber',
        time: at(960),
        start: at(900),
        state: 'done',
        reason: 'reactive',
      });
      // What the cleaning does is over by the next day's test.
      cleaned = day + 1;
      cleanOn = day + due();
    }
  }
}

/**
 * True best interval of a unit at the mean level, in whole days up to the limit: policy II of Barlow and Hunter (1960) in closed form, T = (cp / ((shape - 1) cf rate))^(1 / shape),
 * where failures leave the clock; policy I by summing days where each failure brings a cleaning.
 */
export function trueBest(scenario: IntervalScenario): number {
  const { shape, failures28, costRatio, limit } = scenario;
  if (shape <= 1) return limit;
  const rate = failures28 / INTERVAL ** shape;
  if (scenario.reactiveChance < 1)
    return Math.min(limit, (1 / ((shape - 1) * costRatio * rate)) ** (1 / shape));
  let best = limit;
  let least = Number.POSITIVE_INFINITY;
  for (let interval = 1; interval <= limit; interval++) {
    let length = 0;
    for (let day = 0; day < interval; day++) length += Math.exp(-rate * (day + 0.5) ** shape);
    const failed = 1 - Math.exp(-rate * interval ** shape);
    const cost = (1 + costRatio * failed) / length;
    if (cost < least) [best, least] = [interval, cost];
  }
  return best;
}
