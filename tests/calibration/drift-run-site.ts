import type { ProbeDrift } from '../../pipeline/findings/drift/drift-schema.ts';
import { driftWatch } from '../../pipeline/findings/drift/drift-watch.ts';
import type { Probe } from '../../pipeline/findings/drift/probes.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import type { DriftScenario } from './drift-scenarios.ts';
import { simulateSite, type TrueDrift } from './drift-simulate-site.ts';

/** What the watch said of one simulated site, beside what was true. */
export interface SiteResult {
  /** Unit-years on which no drift was built in, and the calls of a movement in them: all, and by probe. */
  quietYears: number;
  falseCalls: number;
  falseByProbe: Partial<Record<Probe, number>>;
  falseNearLimit: number;
  /** Days before the failure on which a movement was called, and on which anything was said of the drift (moving, stepped or near the limit); null where not. */
  drifts: { length: number; lead: number | null; attention: number | null; probe: Probe }[];
  /** Looks at units with and without a saw-tooth, a quarter apart, and those at which one was named. */
  teethLooks: number;
  teethNamed: number;
  toothlessLooks: number;
  toothlessNamed: number;
  steps: number;
  stepsCalledSlope: number;
  stepsSeen: number;
  /** Days-to-limit intervals at the first call of a drift, and how many hold the truth; the same each week after. */
  firstIntervals: number;
  firstCovered: number;
  laterIntervals: number;
  laterCovered: number;
  /** Intervals with an upper bound, and their width over the true days. */
  widths: number[];
}

/** Days after the end of a drift (a repair) or before the first judgement that count nowhere. */
const AFTER_DRIFT = 45;
const FIRST_LOOK = 30;
/** A call within so many days after the last one of the same probe is the same call. */
const SAME_CALL = 14;
const STEP_WATCHED = 60;
/** A step read into a drift may be dated so many days before it. */
const STEP_EARLY = 10;
const TEETH_EVERY = 91;

/** Runs the watch on every `stride`-th day of a simulated site, as a scheduler would. */
export function runSite(scenario: DriftScenario, seed: number, stride: number): SiteResult {
  const made = simulateSite(scenario, seed);
  const { histories } = transform(made.site, made.records, made.until);
  const result: SiteResult = {
    quietYears: 0,
    falseCalls: 0,
    falseByProbe: {},
    falseNearLimit: 0,
    drifts: [],
    teethLooks: 0,
    teethNamed: 0,
    toothlessLooks: 0,
    toothlessNamed: 0,
    steps: 0,
    stepsCalledSlope: 0,
    stepsSeen: 0,
    firstIntervals: 0,
    firstCovered: 0,
    laterIntervals: 0,
    laterCovered: 0,
    widths: [],
  };
  const driftOf = new Map(made.drifts.map((drift) => [drift.unit, drift]));
  const lastCall = new Map<string, number>();
  const found = new Map<TrueDrift, { day: number; checked: number | null }>();
  const attended = new Map<TrueDrift, number>();
  const called: { unit: string; probe: Probe; day: number; up: boolean }[] = [];
  const stepped: { unit: string; probe: Probe; day: number; on: number }[] = [];

  let nextTeeth = made.first + TEETH_EVERY;
  for (let day = made.first + FIRST_LOOK; day <= made.until; day += stride) {
    const drift = driftWatch(histories, made.site, day);
    if (day >= nextTeeth) {
      nextTeeth += TEETH_EVERY;
      lookAtTeeth(drift.probes, scenario, day, result);
    }
    for (const unit of histories)
      if (!inDrift(driftOf.get(unit.unit), null, day)) result.quietYears += stride / 365.25;
    for (const row of drift.probes) {
      if (!row.era.current) continue;
      if (row.step && row.state === 'stepped')
        stepped.push({ unit: row.unit, probe: row.probe, day, on: dayOf(row.step.date) });
      const moving = row.state === 'moving' || (row.state === 'near_limit' && row.rate_per_week !== null);
      const own = driftOf.get(row.unit);
      if (own && !attended.has(own) && tellsOf(row, own, day)) attended.set(own, day);
      if (!moving && !(row.state === 'near_limit')) continue;
      if (own && inDrift(own, row.probe, day)) {
        if (moving) onDrift(row, own, day, found, result);
        continue;
      }
      if (!moving) {
        result.falseNearLimit++;
        continue;
      }
      const key = `${row.unit} ${row.probe}`;
      if (day - (lastCall.get(key) ?? Number.NEGATIVE_INFINITY) > SAME_CALL) {
        result.falseCalls++;
        result.falseByProbe[row.probe] = (result.falseByProbe[row.probe] ?? 0) + 1;
      }
      lastCall.set(key, day);
      called.push({ unit: row.unit, probe: row.probe, day, up: row.direction === 'up' });
    }
  }
  for (const drift of made.drifts) {
    const at = found.get(drift)?.day;
    result.drifts.push({
      length: drift.failed - drift.from,
      lead: at === undefined ? null : drift.failed - at,
      attention: attended.has(drift) ? drift.failed - attended.get(drift)! : null,
      probe: drift.leading,
    });
  }
  for (const step of made.steps) {
    const { unit, probe } = step;
    if (step.day < made.first + 60 || step.day > made.until - STEP_WATCHED) continue;
    if (inDrift(driftOf.get(unit), probe, step.day)) continue;
    const near = (of: { unit: string; day: number }) =>
      of.unit === unit && of.day > step.day && of.day <= step.day + STEP_WATCHED;
    if (
      made.eras.some((era) => near(era)) ||
      made.steps.some((of) => of !== step && of.probe === probe && near(of))
    )
      continue;
    result.steps++;
    if (called.some((of) => near(of) && of.probe === probe && of.up === step.size > 0))
      result.stepsCalledSlope++;
    if (stepped.some((of) => near(of) && of.probe === probe && Math.abs(of.on - step.day) <= 10))
      result.stepsSeen++;
  }
  return result;
}

/** Saw-teeth of the exhaust time, in eras that have lasted for two months. */
function lookAtTeeth(
  probes: readonly ProbeDrift[],
  scenario: DriftScenario,
  day: number,
  result: SiteResult,
): void {
  for (const row of probes) {
    if (row.probe !== 'exhaust_time' || !row.era.current || day - dayOf(row.era.from) < 60) continue;
    const named = row.saw_tooth?.falls_back_at === 'drain_flush';
    if (Number(row.unit.slice(1)) <= scenario.sawTeeth) {
      result.teethLooks++;
      if (named) result.teethNamed++;
    } else {
      result.toothlessLooks++;
      if (row.saw_tooth) result.toothlessNamed++;
    }
  }
}

/** Inside a drift of the unit, or so soon after it that its traces are still there. With a probe given, only that probe's. */
function inDrift(drift: TrueDrift | undefined, probe: Probe | null, day: number): boolean {
  if (!drift || (probe !== null && !drift.sizes.has(probe))) return false;
  return day > drift.from && day <= drift.failed + AFTER_DRIFT;
}

/** Whether a row says anything of the drift: that its probe moves or has stepped its way since, or is near its limit. */
function tellsOf(row: ProbeDrift, drift: TrueDrift, day: number): boolean {
  const size = drift.sizes.get(row.probe);
  if (size === undefined || day <= drift.from || day > drift.failed) return false;
  if (row.state === 'near_limit') return true;
  if (row.direction !== (size > 0 ? 'up' : 'down')) return false;
  return row.state === 'moving' || (row.state === 'stepped' && dayOf(row.since!) >= drift.from - STEP_EARLY);
}

function onDrift(
  row: ProbeDrift,
  drift: TrueDrift,
  day: number,
  found: Map<TrueDrift, { day: number; checked: number | null }>,
  result: SiteResult,
): void {
  const size = drift.sizes.get(row.probe)!;
  if (row.direction !== (size > 0 ? 'up' : 'down') || day > drift.failed) return;
  if (!found.has(drift)) found.set(drift, { day, checked: null });
  if (row.probe !== drift.leading) return;
  const call = found.get(drift)!;
  const before = call.checked !== null;
  if (call.checked !== null && day - call.checked < 7) return;
  call.checked = day;
  // The interval counts from the last value; the truth is the day on which the level reaches the limit.
  const { days_to_limit: said, series } = row;
  if (!said || drift.atLimit === null || row.limit?.source === 'failed_before') return;
  const atLimit = drift.atLimit(day);
  const truth = atLimit - (dayOf(series.from) + series.day.at(-1)!);
  if (truth < 1 || atLimit < drift.from) return;
  const covered = said.low <= truth && truth <= (said.high ?? Number.POSITIVE_INFINITY);
  if (!before) {
    result.firstIntervals++;
    if (covered) result.firstCovered++;
    if (said.high !== null) result.widths.push((said.high - said.low) / truth);
  } else {
    result.laterIntervals++;
    if (covered) result.laterCovered++;
  }
}

const dayOf = (date: string): number => Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
