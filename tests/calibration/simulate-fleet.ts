import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { parseDay } from '../../pipeline/site/day.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Records } from '../../pipeline/site/records.ts';
import type { Site } from '../../pipeline/site/site.ts';
import type { Scenario } from './scenarios.ts';

/** A simulated fleet: its records as an export would give them, and which units have the effect. */
export interface Fleet {
  site: Site;
  records: Records;
  until: number;
  affected: string[];
}

const DAY_MS = 86_400_000;
const MINUTE = 60_000;
const FIRST_DAY = parseDay('2024-01-01')!;
const INTERVAL = 28;
const LONGEST_DELAY = 25;
const EPISODE_DAY_FAILS = 0.35;
const WINDOW = 7;

/** Seeded chance: uniform numbers in [0, 1) from 53 random bits. */
function chance(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => ((generator.next() >>> 5) * 67_108_864 + (generator.next() >>> 6)) / 9_007_199_254_740_992;
}

/**
 * Simulates a fleet. Knows nothing of the code under test but the form of its input: what is overdue or missed, and what that does to failures, is
 * decided here by itself.
 */
export function simulateFleet(scenario: Scenario, seed: number): Fleet {
  const ids = Array.from({ length: scenario.units }, (_, index) => `U${String(index + 1).padStart(2, '0')}`);
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
  const affected = ids.slice(0, Math.round(scenario.affected * scenario.units));
  for (const [index, unit] of ids.entries()) {
    simulateUnit(
      scenario,
      unit,
      index,
      affected.includes(unit) ? scenario.ratio : 1,
      chance(seed * 1009 + index * 31 + 7),
      records,
    );
  }
  return { site: siteOf(ids), records, until: FIRST_DAY + scenario.days, affected };
}

function siteOf(ids: string[]): Site {
  const lines = [
    'sites: [{ id: s, zone: Etc/UTC }]',
    `units: [${ids.map((id) => `{ id: ${id} }`).join(', ')}]`,
    'cleaning:',
    `  - { task: chamber, every: ${INTERVAL}, unrecorded_means: missed }`,
    '  - { task: drain_strainer, every: 1, counted_in: days_of_use, unrecorded_means: missed }',
  ];
  return readSiteFile(lines.join('\n'), 'simulated');
}

function simulateUnit(
  scenario: Scenario,
  unit: string,
  index: number,
  ratio: number,
  next: () => number,
  records: Records,
): void {
  let row = 0;
  const mark = () => ({
    unit,
    time_mark: 'time' as const,
    origin: { source: 'simulated', file: unit, sheet: null, row: ++row },
  });
  const busyness = scenario.busy ? index / scenario.units : 0;
  let lastCleaned = -Math.floor(next() * INTERVAL);
  let cleanOn = nextCleaning(lastCleaned, next, scenario.lateChance);
  let streak = false;
  let inEpisode = false;
  let spellUntil = -1;
  const misses: boolean[] = [];

  for (let day = 0; day < scenario.days; day++) {
    const midnight = (FIRST_DAY + day) * DAY_MS;
    const at = (minutes: number) => midnight + minutes * MINUTE;
    const rising = scenario.busy ? 1 + busyness * (2 + (3 * day) / scenario.days) : 1;

    if (scenario.routine && day >= cleanOn) {
      const faked = next() < scenario.falseRecords;
      // The work stands at 04:30 to 05:15 on a cold unit; a false record claims 10:00 to 10:40, when the unit was running.
      const [from, to] = faked ? [600, 640] : [270, 315];
      records.cleanings.push({ ...mark(), task: 'chamber', time: at(to), start: at(from), state: 'done' });
      if (!faked) lastCleaned = day;
      cleanOn = nextCleaning(day, next, lateness(scenario, rising));
    }
    const overdue = day - lastCleaned > INTERVAL;
    streak = streak
      ? next() >= scenario.streakEnds
      : next() < scenario.streakBegins * rising * (scenario.together && overdue ? 8 : 1);
    misses.push(streak);
    if (!streak) records.cleanings.push({ ...mark(), task: 'drain_strainer', time: at(330), state: 'done' });
    if (day > spellUntil && scenario.spellFactor > 1 && next() < 1 / 120)
      spellUntil = day + 10 + Math.floor(next() * 25);

    const exposed = scenario.effect === 'strainer' ? misses.slice(-WINDOW).some(Boolean) : overdue;
    const multiplier =
      (exposed ? ratio : 1) *
      (day <= spellUntil ? scenario.spellFactor : 1) *
      (scenario.busy ? 0.5 * rising : 1);
    const odds = (scenario.failRate / (1 - scenario.failRate)) * multiplier;
    const fails: boolean = next() < (inEpisode ? EPISODE_DAY_FAILS : odds / (1 + odds));

    records.cycles.push({ ...mark(), start: at(360), end: at(380), kind: 'warm_up', outcome: 'completed' });
    records.cycles.push({
      ...mark(),
      start: at(390),
      end: at(415),
      kind: 'air_removal_test',
      outcome: 'completed',
    });
    records.air_removal_tests.push({ ...mark(), time: at(416), result: fails ? 'fail' : 'pass' });
    inEpisode = fails;
    for (const start of [480, 600]) {
      const cleanliness = next() < Math.min(0.9, scenario.abortRate * multiplier);
      const unrelated = !cleanliness && next() < scenario.abortRate;
      const abort_text = cleanliness ? 'evacuation too slow' : unrelated ? 'door not sealed' : undefined;
      records.cycles.push({
        ...mark(),
        start: at(start),
        end: at(start + 45),
        kind: 'production',
        outcome: abort_text ? 'aborted' : 'completed',
        ...(abort_text ? { abort_text } : {}),
      });
    }
    if (fails && next() < scenario.reactiveChance) {
      // In the afternoon, when the unit has been idle for over four hours.
      records.cleanings.push({ ...mark(), task: 'chamber', time: at(960), start: at(900), state: 'done' });
      lastCleaned = day;
      cleanOn = nextCleaning(day, next, lateness(scenario, rising));
    }
  }
}

const lateness = (scenario: Scenario, rising: number): number =>
  Math.min(0.95, scenario.lateChance * (scenario.busy ? 0.5 * rising : 1));

function nextCleaning(last: number, next: () => number, lateChance: number): number {
  const late = next() < lateChance ? 1 + Math.floor(next() * LONGEST_DELAY) : -Math.floor(next() * 4);
  return last + INTERVAL + late;
}
