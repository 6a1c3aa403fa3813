import type { ProbeDrift, SiteMovement } from '../../findings/drift/drift-schema.ts';
import type { AttentionReason, Review } from '../../findings/review-schema.ts';
import type { ReportMeasures } from '../../site/report-settings.ts';
import { leakRateIn, measureNames, temperatureDifferenceIn } from './measures.ts';

type Convert = (value: number) => number;
interface Measure {
  name: string;
  convert: Convert;
}

/**
 * The review with its leak rates and differences of temperature in the measures of the site, for pages alone: `measure` fields then name what the values are in. The data
 * files are written from the review as it is.
 */
export function inMeasures(review: Review, measures: ReportMeasures): Review {
  const names = measureNames(measures);
  const leakRate = { name: names.leakRate, convert: leakRateIn(measures) };
  const byMeasure: Record<string, Measure> = {
    'kPa/min': leakRate,
    K: { name: names.temperatureDifference, convert: temperatureDifferenceIn(measures) },
  };
  return {
    ...review,
    units: review.units.map((unit) => ({
      ...unit,
      leak: {
        ...unit.leak,
        last: orNull(unit.leak.last, leakRate.convert),
        limit: leakRate.convert(unit.leak.limit),
      },
      attention: unit.attention.map((reason) => reasonIn(reason, leakRate, byMeasure)),
    })),
    drift: {
      ...review.drift,
      probes: review.drift.probes.map((probe) => {
        const measure = byMeasure[probe.measure];
        return measure ? probeIn(probe, measure) : probe;
      }),
      sites: review.drift.sites.map((site) => {
        const measure = byMeasure[site.measure];
        return measure ? siteIn(site, measure) : site;
      }),
    },
  };
}

/** The review as it is made, for tables, but with the reasons for attention as the pages have them: the list of next steps holds their sentences. */
export function ofTables(made: Review, shown: Review): Review {
  return {
    ...made,
    units: made.units.map((unit, index) => ({ ...unit, attention: shown.units[index]!.attention })),
  };
}

const orNull = (value: number | null, convert: Convert): number | null =>
  value === null ? null : convert(value);

/** The numbers of a reason; a reason about a leak gets the name of its measure. */
function reasonIn(
  reason: AttentionReason,
  leakRate: Measure,
  byMeasure: Readonly<Record<string, Measure>>,
): AttentionReason {
  const leak = reason.code === 'leak_over_limit' || reason.code === 'leak_near_limit';
  const measure = leak ? leakRate : byMeasure[String(reason.numbers.measure ?? '')];
  if (!measure) return reason;
  const fields = leak ? ['last', 'limit'] : ['rate', 'rate_low', 'rate_high', 'before', 'after'];
  const converted = Object.entries(reason.numbers).map(([name, value]) => [
    name,
    fields.includes(name) && typeof value === 'number' ? measure.convert(value) : value,
  ]);
  return { ...reason, numbers: { ...Object.fromEntries(converted), measure: measure.name } };
}

function probeIn(probe: ProbeDrift, { name, convert }: Measure): ProbeDrift {
  const { rate_per_week: rate, baseline, step, limit, saw_tooth, series } = probe;
  return {
    ...probe,
    measure: name as ProbeDrift['measure'],
    rate_per_week: rate && {
      ...rate,
      value: convert(rate.value),
      low: convert(rate.low),
      high: convert(rate.high),
    },
    level_now: orNull(probe.level_now, convert),
    baseline: baseline && {
      ...baseline,
      centre: convert(baseline.centre),
      low: convert(baseline.low),
      high: convert(baseline.high),
    },
    step: step && { ...step, before: convert(step.before), after: convert(step.after) },
    limit: limit && { ...limit, value: convert(limit.value) },
    saw_tooth: saw_tooth && { ...saw_tooth, fall: convert(saw_tooth.fall) },
    series: {
      from: series.from,
      // Made where they are asked for, as those of a large fleet are (`unpackSeries`).
      get day() {
        return series.day;
      },
      get value() {
        return series.value.map(convert);
      },
      get adjusted() {
        return series.adjusted.map(convert);
      },
      left_out: series.left_out.map((of) => ({ ...of, value: convert(of.value) })),
    },
  };
}

function siteIn(site: SiteMovement, { name, convert }: Measure): SiteMovement {
  return {
    ...site,
    measure: name as SiteMovement['measure'],
    change_4_weeks: orNull(site.change_4_weeks, convert),
    movement: site.movement.map(convert),
  };
}
