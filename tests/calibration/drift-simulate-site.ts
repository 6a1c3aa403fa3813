// Over 300 lines: one simulated site, from its seasons to its cycles, in the order in which it is made.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { saturationPressure } from '../../data-samples/generator/saturation.ts';
import { PROBES, type Probe } from '../../pipeline/findings/drift/probes.ts';
import { parseDay } from '../../pipeline/site/day.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Cycle, Records } from '../../pipeline/site/records.ts';
import type { Site } from '../../pipeline/site/site.ts';
import type { DriftScenario } from './drift-scenarios.ts';

/** A drift as it was built in: from its first day to the failure at its end. */
export interface TrueDrift {
  unit: string;
  /** Sizes at the end by probe, the leading one first. */
  sizes: ReadonlyMap<Probe, number>;
  leading: Probe;
  from: number;
  failed: number;
  /**
   * Day on which the leading probe's level under the noise reaches its limit, were the drift to go on and the site's movement to stay as it was in the two weeks before the given day; null where there
   * is no limit.
   */
  atLimit: ((seen: number) => number) | null;
}

/** An unrecorded step as it was built in. */
export interface TrueStep {
  unit: string;
  probe: Probe;
  day: number;
  /** In noise standard deviations. */
  size: number;
}

/** A simulated site: its records as an export would give them, and what is true of it. */
export interface SimulatedSite {
  site: Site;
  records: Records;
  first: number;
  until: number;
  drifts: TrueDrift[];
  steps: TrueStep[];
  /** Days on which a unit's record opens a new era. */
  eras: { unit: string; day: number }[];
  /** What moved all units, in noise standard deviations, by days from the first. */
  common: ReadonlyMap<Probe, readonly number[]>;
}

const DAY_MS = 86_400_000;
const MINUTE = 60_000;
const FIRST_DAY = parseDay('2024-01-01')!;
/** Noise of a single cycle: a share of the time, or the measure itself. */
const NOISE: Record<Probe, number> = {
  evacuation_time: 0.024,
  heat_up_time: 0.024,
  exhaust_time: 0.024,
  leak_rate: 0.0035,
  exposure_spread: 0.08,
  saturation_residual: 0.06,
};
const LEVEL: Record<Probe, number> = {
  evacuation_time: 400,
  heat_up_time: 125,
  exhaust_time: 82,
  leak_rate: 0.045,
  exposure_spread: 0.6,
  saturation_residual: 0,
};
const IS_TIME: ReadonlySet<Probe> = new Set(['evacuation_time', 'heat_up_time', 'exhaust_time']);
const ALARM_TEXT: Partial<Record<Probe, string>> = {
  evacuation_time: 'evacuation too slow',
  heat_up_time: 'heat-up too long',
  exhaust_time: 'exhaust too slow',
};
const COMMON_KEEP = 0.7;
/** Walls are colder at the first cycle of the day: its heat-up takes longer. */
const WARM_UP = 1.12;
/** The leak rate of a unit is its own affair: no season, no common movement. */
const OWN_AFFAIR: ReadonlySet<Probe> = new Set(['leak_rate']);

/** Seeded chance: uniform, normal. */
export function dice(seed: number) {
  const generator = xoroshiro128plus(seed);
  // The first values after seeds that lie near one another are alike.
  for (let i = 0; i < 64; i++) generator.next();
  const float = () => uniformFloat64(generator);
  const normal = () => Math.sqrt(-2 * Math.log(1 - float())) * Math.cos(2 * Math.PI * float());
  /** Student's t with 5 degrees of freedom, brought to standard deviation 1: heavier tails than the normal. */
  const heavy = () => {
    let squares = 0;
    for (let i = 0; i < 5; i++) squares += normal() ** 2;
    return normal() / Math.sqrt(squares / 3);
  };
  const between = (low: number, high: number) => low + (high - low) * float();
  return {
    float,
    normal,
    heavy,
    between,
    int: (low: number, high: number) => Math.floor(between(low, high + 1)),
  };
}
type Dice = ReturnType<typeof dice>;

/** A series that keeps a share of itself from day to day, with standard deviation 1. */
function slowSeries(draw: Dice, keep: number, days: number): number[] {
  const series: number[] = [draw.normal()];
  for (let i = 1; i < days; i++)
    series.push(keep * series[i - 1]! + Math.sqrt(1 - keep * keep) * draw.normal());
  return series;
}

/**
 * Not built as the judge assumes: noise has heavy tails and whole seconds, the units feel the site's movement unequally, the spread of temperatures can't fall
 * below 0, times go missing, tests are repeated, chambers are cleaned (now and then just before a leak test).
 *
 * Simulates a site: the empty cycles of each day of use with their phases, leak tests, flushes, repairs, failures. Knows nothing of the code under test but the
 * form of its input.
 */
export function simulateSite(scenario: DriftScenario, seed: number): SimulatedSite {
  const { days } = scenario;
  const ids = Array.from({ length: scenario.units }, (_, i) => `U${i + 1}`);
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
  const truth: SimulatedSite = {
    site: readSiteFile(
      `sites: [{ id: s, zone: Etc/UTC }]\nunits: [${ids.map((id) => `{ id: ${id} }`).join(', ')}]`,
      'simulated',
    ),
    records,
    first: FIRST_DAY,
    until: FIRST_DAY + days,
    drifts: [],
    steps: [],
    eras: [],
    common: new Map(),
  };
  const draw = dice(seed * 7919 + 13);
  const phase = draw.float();
  const common = new Map(
    PROBES.map((probe) => {
      const slow = slowSeries(draw, COMMON_KEEP, days);
      const season = draw.float() < 0.5 ? 1 : -1;
      return [
        probe,
        OWN_AFFAIR.has(probe)
          ? slow.map(() => 0)
          : slow.map(
              (value, day) =>
                scenario.common * value +
                season * scenario.season * Math.cos(2 * Math.PI * (day / 365.25 + phase)),
            ),
      ] as const;
    }),
  );
  truth.common = common;
  for (const [index, unit] of ids.entries())
    simulateUnit(scenario, truth, unit, index, common, dice(seed * 104_729 + index * 31 + 7));
  return truth;
}

function simulateUnit(
  scenario: DriftScenario,
  truth: SimulatedSite,
  unit: string,
  index: number,
  common: ReadonlyMap<Probe, readonly number[]>,
  draw: Dice,
): void {
  const { records } = truth;
  const { days } = scenario;
  let row = 0;
  const mark = () => ({
    unit,
    time_mark: 'time' as const,
    origin: { source: 'simulated', file: unit, sheet: null, row: ++row },
  });
  const kept = index % 3 === 2 ? 7 : 5;
  const level = new Map(PROBES.map((probe) => [probe, draw.normal() * 2]));
  const slow = new Map(PROBES.map((probe) => [probe, slowSeries(draw, scenario.slowKeep, days)]));
  const base = new Map(level);
  // Units don't all feel steam, water and season alike.
  const feels = new Map(PROBES.map((probe) => [probe, draw.between(0.75, 1.25)]));
  const drift = planDrift(scenario, truth, unit, draw);
  let flushed = 0;
  let repairDue = -1;
  const alarm = drift && ALARM_TEXT[drift.leading] ? alarmOf(drift, base) : null;

  for (let day = 0; day < days; day++) {
    const today = FIRST_DAY + day;
    const at = (minutes: number) => today * DAY_MS + minutes * MINUTE;
    if (day === repairDue || draw.float() < scenario.erasPerYear / 365) {
      // Not during a drift but at its end: what a repair does to a drift is known.
      if (day === repairDue || !drift || today < drift.from - 60 || today > drift.failed) {
        records.service.push({ ...mark(), from: at(300), to: at(330), kind: 'repair' });
        truth.eras.push({ unit, day: today });
        for (const probe of PROBES) level.set(probe, base.get(probe)! + draw.heavy());
      }
    }
    const quiet = drift !== null && today >= drift.from - 60 && today <= drift.failed;
    if (!quiet && draw.float() < scenario.stepsPerYear / 365) {
      const size = draw.between(...scenario.stepSizes) * (draw.float() < 0.5 ? 1 : -1);
      const first = draw.int(0, PROBES.length - 1);
      const probes = draw.int(1, 2);
      for (let i = 0; i < probes; i++) {
        const probe = PROBES[(first + i) % PROBES.length]!;
        // Not up to the alarm: no unit is run for months with most of its cycles given up.
        const up = alarm?.probe === probe && level.get(probe)! + size > alarm.level - LEAST_ROOM;
        const moved = up ? -Math.abs(size) : size;
        truth.steps.push({ unit, probe, day: today, size: moved });
        level.set(probe, level.get(probe)! + moved);
      }
    }
    if (today === drift?.from) {
      const felt = (seen: number) =>
        feels.get(drift.leading)! * lately(common.get(drift.leading)!, seen - FIRST_DAY);
      drift.atLimit = limitDay(drift, level.get(drift.leading)!, alarm?.level ?? null, felt);
    }
    const closed = (today + 3) % 7 >= kept || draw.float() < 0.02;
    if (closed && today !== drift?.failed) continue;

    const flushDay = index < scenario.sawTeeth && day - flushed >= 7;
    if (flushDay) {
      flushed = day;
      records.cleanings.push({ ...mark(), task: 'drain_flush', time: at(340), state: 'done' });
    }
    const moved = (probe: Probe): number => {
      let sum = level.get(probe)! + feels.get(probe)! * common.get(probe)![day]!;
      if (drift && today >= drift.from && today <= drift.failed)
        sum += ((drift.sizes.get(probe) ?? 0) * (today - drift.from)) / (drift.failed - drift.from);
      if (probe === 'exhaust_time' && index < scenario.sawTeeth) sum += 0.6 * (day - flushed);
      return sum + Math.sqrt(scenario.slowShare) * slow.get(probe)![day]!;
    };
    const value = (probe: Probe): number => {
      const far = draw.float() < scenario.outliers ? draw.between(4, 8) : 0;
      const off = NOISE[probe] * (moved(probe) + Math.sqrt(1 - scenario.slowShare) * draw.heavy() + far);
      return IS_TIME.has(probe) ? LEVEL[probe] * Math.exp(off) : LEVEL[probe] + off;
    };
    const seconds = (time: number) =>
      scenario.wholeMinutes ? 60 * Math.max(1, Math.round(time / 60)) : Math.round(time);
    const timed = <T>(value: T) => (draw.float() < scenario.missing ? {} : value);
    const cycle = (kind: 'warm_up' | 'air_removal_test', start: number): Cycle => {
      const residual = value('saturation_residual');
      const spread = Math.max(0, value('exposure_spread'));
      const middle = 134.5 + 0.1 * draw.normal();
      const times = {
        evacuation_time: value('evacuation_time'),
        heat_up_time: value('heat_up_time') * (kind === 'warm_up' ? WARM_UP : 1),
        exhaust_time: value('exhaust_time'),
      };
      const done: Cycle = {
        ...mark(),
        kind,
        start: at(start),
        end: at(start + 24),
        outcome: 'completed',
        ...timed({ evacuation_s: seconds(times.evacuation_time) }),
        ...timed({ heat_up_s: seconds(times.heat_up_time) }),
        ...timed({ exhaust_s: seconds(times.exhaust_time) }),
        exposure_temperature_min_c: Math.round(10 * (middle - spread / 2)) / 10,
        exposure_temperature_max_c: Math.round(10 * (middle + spread / 2)) / 10,
        exposure_pressure_kpa: Math.round(10 * saturationPressure(middle - residual)) / 10,
      };
      return alarm && times[alarm.probe] > alarm.time ? givenUp(done, alarm) : done;
    };
    records.cycles.push(cycle('warm_up', 360), cycle('air_removal_test', 420));
    if (draw.float() < 0.03) records.cycles.push(cycle('air_removal_test', 470));
    if (draw.float() < 1 / 30)
      records.cleanings.push({
        ...mark(),
        task: 'chamber',
        time: at(draw.float() < 0.2 ? 380 : 960),
        state: 'done',
      });
    const fails = drift?.failed === today;
    records.air_removal_tests.push({ ...mark(), time: at(446), result: fails ? 'fail' : 'pass' });
    if (scenario.leakTests === 'daily' || today % 7 === index % 5)
      records.leak_tests.push({
        ...mark(),
        time: at(400),
        leak_rate_kpa_min: Math.round(1000 * value('leak_rate')) / 1000,
      });
    if (fails) repairDue = day + 1;
    // Loads early on that the control gave up.
    if (alarm && day < 12)
      records.cycles.push(
        givenUp({ ...mark(), kind: 'production', start: at(600), end: at(630), outcome: 'completed' }, alarm),
      );
  }
}

/** A drift that begins when the unit has been on record for four months and ends with the failure, a day of use. */
function planDrift(
  scenario: DriftScenario,
  truth: SimulatedSite,
  unit: string,
  draw: Dice,
): TrueDrift | null {
  if (scenario.drifting.length === 0) return null;
  const pattern = scenario.drifting[draw.int(0, scenario.drifting.length - 1)]!;
  const [shortest, longest] = scenario.driftDays;
  const length = draw.int(shortest, longest);
  const start = draw.int(120, scenario.days - longest - 20);
  let failed = FIRST_DAY + start + length;
  while ((failed + 3) % 7 >= 5) failed++;
  const drift = {
    unit,
    sizes: new Map(pattern),
    leading: pattern[0]![0],
    from: FIRST_DAY + start,
    failed,
    atLimit: null,
  };
  truth.drifts.push(drift);
  return drift;
}

/** When the control of a unit gives up a phase. */
interface Alarm {
  probe: 'evacuation_time' | 'heat_up_time' | 'exhaust_time';
  time: number;
  /** The level of a test cycle at which its time is the alarm time, in noise standard deviations. */
  level: number;
}

const LEAST_ROOM = 3;

/** The alarm time of the leading probe lies where the drift will end, in the slowest kind of cycle. */
function alarmOf(drift: TrueDrift, base: ReadonlyMap<Probe, number>): Alarm {
  const probe = drift.leading as Alarm['probe'];
  const slowest = probe === 'heat_up_time' ? Math.log(WARM_UP) / NOISE[probe] : 0;
  const level = base.get(probe)! + drift.sizes.get(probe)! + slowest;
  return { probe, time: LEVEL[probe] * Math.exp(NOISE[probe] * level), level };
}

/** The cycle as it is recorded where the control gave it up: nothing of what would have come after. */
function givenUp(cycle: Cycle, { probe, time }: Alarm): Cycle {
  const { evacuation_s, heat_up_s, exhaust_s: _, ...rest } = cycle;
  const exhausts = probe === 'exhaust_time';
  const {
    exposure_temperature_min_c: _min,
    exposure_temperature_max_c: _max,
    exposure_pressure_kpa: _pressure,
    ...before
  } = rest;
  return {
    ...(exhausts ? rest : before),
    outcome: 'aborted',
    abort_text: ALARM_TEXT[probe]!,
    ...(probe !== 'evacuation_time' && evacuation_s !== undefined ? { evacuation_s } : {}),
    ...(exhausts && heat_up_s !== undefined ? { heat_up_s } : {}),
    [probe.replace('_time', '_s')]: Math.round(time),
  };
}

/** The limit of a time is the alarm time; that of the leak rate is the default of the site file. */
function limitDay(
  drift: TrueDrift,
  level: number,
  alarm: number | null,
  felt: (seen: number) => number,
): TrueDrift['atLimit'] {
  const probe = drift.leading;
  const limit = probe === 'leak_rate' ? (0.13 - LEVEL.leak_rate) / NOISE.leak_rate : alarm;
  if (limit === null) return null;
  const rate = drift.sizes.get(probe)! / (drift.failed - drift.from);
  return (seen) => drift.from + (limit - level - felt(seen)) / rate;
}

const LATELY = 14;

function lately(series: readonly number[], day: number): number {
  const last = series.slice(Math.max(0, day - LATELY), day);
  return last.reduce((sum, value) => sum + value, 0) / Math.max(1, last.length);
}
