import { type Day, formatDay } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import { type AdjustedSeries, standsAlone } from './adjusted-series.ts';
import type { CommonMovement } from './common-movement.ts';
import { daysToLimit, rateInterval } from './days-to-limit.ts';
import type { DriftNote, ProbeDrift } from './drift-schema.ts';
import { EVIDENCE } from './evidence.ts';
import type { Judgement } from './judge-series.ts';
import type { ProbeLimit } from './limit-of-probe.ts';
import { slowVariance } from './noise.ts';
import type { PooledNoise } from './pool-noise.ts';
import { fromScale, PROBE_META, toScale } from './probes.ts';
import { median, rounded } from './robust.ts';

export interface ProbeDriftInput {
  series: AdjustedSeries;
  noise: PooledNoise;
  common: CommonMovement;
  judgement: Judgement;
  /** Limits in order of rank, the first that serves is taken. */
  limits: readonly ProbeLimit[];
  /** First operating day that is left out. */
  until: Day;
  rules: Rules['drift'];
}

const WEEK = 7;
const LAST_VALUES = 5;
const STALE_DAYS = 30;
const MUCH_MISSING = 0.2;
/** A limit nearer to the baseline than this, in noise standard deviations, says nothing where it is not configured. */
const LEAST_ROOM = 3;

/** Puts what was judged of one probe in one era into a row. */
export function probeDrift(input: ProbeDriftInput): ProbeDrift {
  const { series, noise, judgement, rules, until } = input;
  const { of, values, memory } = series;
  const { probe } = of;
  const end = of.current ? until - 1 : of.to;
  const watched = values.slice(memory);
  const t = watched.map((value) => value.day);
  const stale = end - (t.at(-1) ?? Number.NEGATIVE_INFINITY) > STALE_DAYS;
  const stuck = of.checked.stuck_since !== null;
  const blind = judgement.state === 'not_enough_data' || stale || stuck;

  const effect = common(input, t.at(-1));
  const scaled = (y: number) => rounded(fromScale(probe, y));
  const base = judgement.slope?.level ?? judgement.scan?.constant.level;
  const levelNow = median(of.days.slice(-LAST_VALUES).map((value) => value.y));
  const slope = blind ? null : judgement.slope;
  const limit =
    base === undefined || of.checked.measure_changed ? null : pickLimit(input, base + effect, slope);
  const limitY = limit && limit.value > 0 ? toScale(probe, limit.value) : null;
  const room = limitY === null || base === undefined ? null : limitY - (base + effect);
  const near =
    !blind &&
    room !== null &&
    levelNow !== undefined &&
    (limitY! - levelNow) * Math.sign(room || 1) <= (1 - rules.near_limit_share) * Math.abs(room);
  const step = judgement.steps.at(-1) ?? null;
  const stepShown = step !== null && end - step.day <= rules.show_step_days;
  const state = blind
    ? 'not_enough_data'
    : near
      ? 'near_limit'
      : judgement.state === 'stepped' && !stepShown
        ? 'steady'
        : judgement.state;
  const moves = blind ? null : slope ? slope.slope : stepShown ? step.after - step.before : null;
  return {
    unit: of.history.unit,
    site: of.history.site,
    probe,
    measure: PROBE_META[probe].measure,
    era: {
      index: of.era.index,
      from: formatDay(of.from),
      to: formatDay(of.to),
      opened_by: of.era.opened_by,
      current: of.current,
    },
    values: watched.length,
    state,
    direction: moves === null ? null : moves > 0 ? 'up' : 'down',
    since: slope ? formatDay(t[judgement.from + slope.index]!) : moves !== null ? formatDay(step!.day) : null,
    rate_per_week: rateOf(input, judgement, slope, levelNow),
    level_now: levelNow === undefined ? null : scaled(levelNow),
    baseline:
      base === undefined
        ? null
        : {
            centre: scaled(base),
            low: scaled(base - 2 * noise.spread),
            high: scaled(base + 2 * noise.spread),
            autocorrelation: rounded(noise.autocorrelation),
          },
    step: step && { date: formatDay(step.day), before: scaled(step.before), after: scaled(step.after) },
    limit: limit && { ...limit, value: rounded(limit.value) },
    days_to_limit: crossing(input, judgement, slope, limitY, effect, levelNow),
    saw_tooth: series.sawTooth && {
      falls_back_at: series.sawTooth.task,
      cleanings: series.sawTooth.falls,
      fall: fallAt(probe, series.sawTooth.fall, levelNow),
    },
    signal: slope ? judgement.signal : null,
    notes: notesOf(input, judgement, stale),
    series: drawn(series),
  };
}

/** What the site's movement adds at present: the limits hold for what is measured, not for what is adjusted. */
function common({ series, common: movement }: ProbeDriftInput, last: Day | undefined): number {
  if (series.comparedWith === 'none' || last === undefined) return 0;
  const near = movement.days.filter((of) => of.day > last - 2 * WEEK && of.day <= last);
  return series.sensitivity * (median(near.map((of) => of.effect)) ?? 0);
}

function pickLimit(
  { limits, series, noise }: ProbeDriftInput,
  base: number,
  slope: { slope: number } | null,
): ProbeLimit | null {
  const { probe } = series.of;
  const serves = limits.filter((limit) => {
    if (limit.source === 'configured') return true;
    if (PROBE_META[probe].scale === 'log' && limit.value <= 0) return false;
    const room = toScale(probe, limit.value) - base;
    if (slope && Math.sign(room) !== Math.sign(slope.slope)) return false;
    return Math.abs(room) >= LEAST_ROOM * noise.spread;
  });
  const rank = ['configured', 'alarm_time', 'failed_before'];
  return serves.toSorted((a, b) => rank.indexOf(a.source) - rank.indexOf(b.source))[0] ?? null;
}

function rateOf(
  { series, noise }: ProbeDriftInput,
  judgement: Judgement,
  slope: Judgement['slope'],
  levelNow: number | undefined,
): ProbeDrift['rate_per_week'] {
  const { probe } = series.of;
  if (levelNow === undefined) return null;
  const perWeek = (rate: number) =>
    rounded(fromScale(probe, levelNow + WEEK * rate) - fromScale(probe, levelNow));
  if (slope) {
    const { low, high } = rateInterval(
      slope,
      judgement.scan!.slopes,
      slowVariance(noise),
      EVIDENCE.profileBound,
    );
    return { value: perWeek(slope.slope), low: perWeek(low), high: perWeek(high) };
  }
  const tooth = series.sawTooth;
  if (!tooth) return null;
  const half = 1.645 * tooth.slopeError;
  return {
    value: perWeek(tooth.slope),
    low: perWeek(tooth.slope - half),
    high: perWeek(tooth.slope + half),
  };
}

function crossing(
  { series, noise }: ProbeDriftInput,
  judgement: Judgement,
  slope: Judgement['slope'],
  limitY: number | null,
  effect: number,
  levelNow: number | undefined,
): ProbeDrift['days_to_limit'] {
  const now = series.values.at(-1)?.day;
  if (limitY === null || now === undefined || levelNow === undefined) return null;
  if (!slope) {
    const tooth = series.sawTooth;
    const room = limitY - levelNow;
    if (!tooth || (tooth.slope > 0 && room < 0)) return null;
    if (Math.sign(room) !== Math.sign(tooth.slope)) return null;
    const [error, half] = [(1.645 * noise.spread) / Math.sqrt(LAST_VALUES), 1.645 * tooth.slopeError];
    const [way, rate] = [Math.abs(room), Math.abs(tooth.slope)];
    const low = Math.max(0, (way - error) / (rate + half));
    const high = rate > half ? (way + error) / (rate - half) : null;
    return {
      days: Math.round(way / rate),
      low: Math.floor(low),
      high: high === null ? null : Math.ceil(high),
    };
  }
  const found = daysToLimit({
    best: slope,
    slopes: judgement.scan!.slopes,
    unit: slowVariance(noise),
    now,
    limit: limitY - effect,
    bound: EVIDENCE.profileBound,
  });
  if (
    found.days === null &&
    found.high === null &&
    found.low > 0 &&
    slope.slope * (limitY - effect - slope.level) < 0
  )
    return null;
  return {
    days: found.days === null ? null : Math.round(found.days),
    low: Math.floor(found.low),
    high: found.high === null ? null : Math.ceil(found.high),
  };
}

function fallAt(probe: ProbeDrift['probe'], fall: number, levelNow: number | undefined): number {
  if (levelNow === undefined || PROBE_META[probe].scale === 'plain') return rounded(fall);
  return rounded(fromScale(probe, levelNow + fall) - fromScale(probe, levelNow));
}

function notesOf({ series }: ProbeDriftInput, judgement: Judgement, stale: boolean): ProbeDrift['notes'] {
  const { of } = series;
  const { checked } = of;
  const notes: ProbeDrift['notes'] = [];
  const say = (code: DriftNote, since: Day | null = null, number: number | null = null) =>
    notes.push({ code, since: since === null ? null : formatDay(since), number });
  if (of.era.opened_by === 'controller_replaced') say('controller_replaced', of.era.from);
  if (checked.measure_changed)
    say('measure_changed', checked.measure_changed.day, checked.measure_changed.factor);
  if (checked.stuck_since !== null) say('stuck', checked.stuck_since);
  else if (checked.stuck_values.length > 0) say('stuck', checked.stuck_values[0]!.day);
  if (checked.whole_minutes) say('whole_minutes');
  if (of.missing >= MUCH_MISSING) say('missing_values', null, rounded(of.missing));
  if (stale) say('no_recent_values', of.days.at(-1)?.day ?? null);
  if (of.wet.length > 0) say('after_cleaning', null, of.wet.length);
  if (of.days.length > 0 && standsAlone(series)) say('common_movement_not_removed');
  if (judgement.undecided) say('undecided');
  return notes;
}

function drawn({ of, values }: AdjustedSeries): ProbeDrift['series'] {
  const { probe } = of;
  const adjusted = new Map(values.map((value) => [value.day, value.y]));
  const from = of.from;
  const rows = of.days.filter((value) => adjusted.has(value.day));
  return {
    from: formatDay(from),
    day: rows.map((value) => value.day - from),
    value: rows.map((value) => rounded(fromScale(probe, value.y))),
    adjusted: rows.map((value) => rounded(fromScale(probe, adjusted.get(value.day)!))),
    left_out: [
      ...of.checked.stuck_values.map((value) => ({ ...value, why: 'stuck' as const })),
      ...of.wet.map((value) => ({ ...value, why: 'after_cleaning' as const })),
    ].map(({ day, value, why }) => ({ day: day - from, value: rounded(value), why })),
  };
}
