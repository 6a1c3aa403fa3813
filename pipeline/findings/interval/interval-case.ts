import { median } from 'simple-statistics';
import { rowsOfUnits } from '../../rows-of-units.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Inspection, Water } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type UnitCourse, unitCourse } from '../shares/unit-course.ts';
import { afterFailureOf } from './after-failure.ts';
import { countCleanings, obstacle } from './answer.ts';
import { makeArgument, NO_ARGUMENT } from './argument.ts';
import { classesByClock, classStarts, type LevelledFit } from './clock-classes.ts';
import { CLOCKS } from './clocks.ts';
import { cumulativeFailures } from './cumulative.ts';
import { checkOfFit } from './fit-check.ts';
import { inputsInForce } from './inputs-in-force.ts';
import { intervalInForce } from './interval-in-force.ts';
import type { IntervalCase, Note } from './interval-schema.ts';
import { levelsOf } from './levels.ts';
import { MEASURED } from './measured.ts';
import { paceOf } from './pace.ts';
import { planMonth } from './plan-month.ts';
import { answerOf } from './shape-answer.ts';
import { clustersOf, describeFit, type Fitted, fitShape } from './shape-fit.ts';
import { lengthOf } from './spell-days.ts';
import { cleaningSpells, SPELL_ENDS, type Spell } from './spells.ts';
import { surfacesOf } from './surfaces.ts';

/**
 * The case for a cleaning interval, from the record up to `until`. Pure: the same record, settings and seed give the same case.
 *
 * @param records inspections and water samples; both may be empty
 * @param until first operating day that is left out; proposals are for the month that begins with it, or that it lies in
 */
export function intervalCase(
  histories: readonly UnitHistory[],
  panel: readonly UnitDay[],
  site: Site,
  records: { inspections: readonly Inspection[]; water: readonly Water[] },
  until: Day,
): IntervalCase {
  const units = histories.map((history) => unitCourse(history, site, until));
  return caseOfUnits(units, panel, site, records, until);
}

/** The same, where what the case needs of each unit was taken before. */
export function caseOfUnits(
  histories: readonly UnitCourse[],
  panel: readonly UnitDay[],
  site: Site,
  records: { inspections: readonly Inspection[]; water: readonly Water[] },
  until: Day,
): IntervalCase {
  const declared = site.declared.interval;
  const { level, alpha, power } = site.rules.comparison;
  const rowsOf = rowsOfUnits(panel);
  const inForce = intervalInForce(site, histories);
  const { clock } = inForce;
  const spells = cleaningSpells(histories, rowsOf, site, 'site');
  const clusters = clustersOf(spells);
  const days = spells.map((spell) => spell.days);
  const cleanings = countCleanings(histories, site.rules.contradicted_counts_as_done);
  const stopped = obstacle(cleanings, spells, clock);
  const pace = paceOf(histories, rowsOf, clock, until);
  const ticksPerWeek =
    pace.length === 0 ? 7 : pace.reduce((sum, of) => sum + of.ticks, 0) / pace.length / (365.25 / 7);
  const { inputs, list } = inputsInForce(site, histories);

  const failures = fitShape(clusters, clock, 'failed_test', level);
  const aborts = fitShape(clusters, clock, 'cleanliness_abort', level);
  const describe = (fitted: Fitted, reading: 'site' | 'all_records' = 'site') =>
    describeFit(fitted, reading, { alpha, power });
  // Where no record is contradicted both readings are one.
  const differs = histories.some((of) => of.chamber_cleanings.some((row) => row.done && row.contradicted));
  const allRecords = differs
    ? fitShape(
        clustersOf(cleaningSpells(histories, rowsOf, site, 'all_records')),
        clock,
        'failed_test',
        level,
      )
    : failures;
  const main = { failures: describe(failures), aborts: describe(aborts) };
  const fits = [
    main.failures,
    main.aborts,
    ...CLOCKS.filter((other) => other !== clock).flatMap((other) => [
      describe(fitShape(clusters, other, 'failed_test', level)),
      describe(fitShape(clusters, other, 'cleanliness_abort', level)),
    ]),
    describe(allRecords, 'all_records'),
  ];
  const levelled = { failed_test: levelledFit(failures), cleanliness_abort: levelledFit(aborts) };
  const by_clock = classesByClock(spells, clock, classStarts(days, clock, ticksPerWeek), levelled, level);
  const after_failure = afterFailureOf(site, histories);
  const argument =
    stopped === null && failures.fit.computable && pace.length > 0
      ? makeArgument({
          site,
          failures,
          aborts,
          main,
          pace,
          inForce,
          inputs,
          list,
          after: after_failure.in_force,
          ticksPerWeek,
        })
      : NO_ARGUMENT;

  const answer =
    stopped !== null
      ? { code: 'cannot_tell' as const, because: [stopped], low: null, high: null }
      : answerOf(main.failures, argument.samples, 'failures', level);
  const abortAnswer =
    stopped !== null
      ? ('cannot_tell' as const)
      : answerOf(main.aborts, argument.samples, 'aborts', level).code;
  const other =
    cleanings.contradicted === 0
      ? null
      : answerOf(describe(allRecords, 'all_records'), [], 'failures', level).code;
  const because =
    other !== null && stopped === null && other !== answer.code
      ? [...answer.because, 'all_records_differ' as const]
      : answer.because;

  const notes: Note[] = [
    ...argument.notes,
    ...(inForce.every === null ? ['no_interval_in_force' as const] : []),
    ...(declared.longest_by_instructions === undefined ? ['limit_not_given' as const] : []),
    ...(inForce.units_otherwise.length > 0 ? ['units_with_other_intervals' as const] : []),
    ...(cleanings.records > 0 &&
    cleanings.reactive >= site.rules.comparison.reactive_share * cleanings.records
      ? ['mostly_reactive' as const]
      : []),
    ...(pace.length === 0 ? ['no_units_in_use' as const] : []),
  ];
  // One after the other, since a list of the days of millions of rows would be as large as the rows.
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { day } of panel) [first, last] = [Math.min(first, day), Math.max(last, day)];
  return {
    format: 'cleaning-evidence interval 1',
    record_from: panel.length === 0 ? null : formatDay(first),
    record_to: panel.length === 0 ? null : formatDay(last),
    answer: {
      code: answer.code,
      because,
      aborts: abortAnswer,
      all_records: other,
      robust_low: answer.low,
      robust_high: answer.high,
    },
    notes,
    clock,
    clock_origin: inForce.clock_origin,
    in_force: inForce.every,
    units_otherwise: inForce.units_otherwise,
    longest_by_instructions: declared.longest_by_instructions ?? null,
    longest_observed: argument.longest_observed,
    longest_considered: argument.longest_considered,
    cleanings,
    spells: describeSpells(spells, clock),
    by_clock,
    cumulative: cumulativeFailures(spells, clock, failures, level),
    fits,
    fit_check: checkOfFit(by_clock),
    levels: levelsOf(failures, aborts, level).map((row) => ({
      ...row,
      best: row.level === 'unit' ? argument.bestOfUnit(row.scope, row.shape?.shrunk ?? null) : null,
    })),
    after_failure,
    inputs: list,
    currency: declared.costs.currency,
    objective: argument.objective,
    units_in_use: pace.map((of) => of.unit),
    candidates: argument.candidates,
    curve: argument.curve,
    best: argument.best,
    sensitivity: argument.sensitivity,
    measured: MEASURED,
    bootstrap: { drawn: argument.drawn, samples: argument.samples.length, seed: declared.seed, level },
    schedule: planMonth(
      histories,
      site,
      pace,
      inputs,
      { clock, every: inForce.every ?? argument.best?.interval ?? null },
      until,
    ),
    surfaces: surfacesOf(histories, site, records, until),
  };
}

function levelledFit(fitted: Fitted): LevelledFit | null {
  const { fit, clusters } = fitted;
  if (!fit.computable) return null;
  const frailty = new Map(
    clusters.map((of, index) => [`${of.unit}\u0000${of.era}`, fit.clusters[index]!.frailty]),
  );
  return {
    intensity: { shape: fit.shape, rate: fit.rate },
    frailtyOf: (spell) => frailty.get(`${spell.unit}\u0000${spell.era}`) ?? 1,
  };
}

function describeSpells(spells: readonly Spell[], clock: IntervalCase['clock']): IntervalCase['spells'] {
  const lengths = spells
    .filter((spell) => spell.ended_by === 'routine_cleaning' || spell.ended_by === 'reactive_cleaning')
    .map((spell) => spell.passed[clock]);
  return {
    spells: spells.length,
    unit_eras: new Set(spells.map((spell) => `${spell.unit}\u0000${spell.era}`)).size,
    units: new Set(spells.map((spell) => spell.unit)).size,
    days_at_risk: lengthOf(spells.map((spell) => spell.days)),
    ended_by: Object.fromEntries(
      SPELL_ENDS.map((end) => [end, spells.filter((spell) => spell.ended_by === end).length]),
    ) as IntervalCase['spells']['ended_by'],
    median_length: lengths.length === 0 ? null : median(lengths),
  };
}
