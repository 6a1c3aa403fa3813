import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Inspection, Water } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { kendallOverStrata } from '../../statistics/trend/kendall-over-strata.ts';
import { cochranArmitageTrend } from '../../statistics/two-groups/cochran-armitage-trend.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import { CLOCK_CLASSES } from '../summaries/by-clock.ts';
import type { Surfaces, WaterRow } from './surface-schema.ts';
import { waterRows } from './water-rows.ts';

/** Inspections from which persistent deposits are read: the last four that say whether residue was left (our choice). */
const LAST_SAID = 4;
/** So many of them with residue are persistent. */
const PERSISTENT = 2;

interface Dated {
  inspection: Inspection;
  site: string;
  day: Day;
  /** Calendar days since the last counted chamber cleaning; null before the first. */
  clock: number | null;
}

/**
 * Inspections by days since the last counted chamber cleaning, water beside its limits, and units whose deposits stay after rinsing.
 *
 * An inspection known by its date alone on the day of a cleaning is taken as made before it: a chamber is looked at before it is cleaned (common practice, no source).
 */
export function surfacesOf(
  histories: readonly UnitCourse[],
  site: Site,
  records: { inspections: readonly Inspection[]; water: readonly Water[] },
  until: Day,
): Surfaces {
  const dated = histories.flatMap((history) => datedInspections(history, site, records.inspections, until));
  const clocked = dated.filter((of) => of.clock !== null);
  const water = waterRows(site, records.water, until);
  const by_clock =
    clocked.length === 0
      ? []
      : CLOCK_CLASSES.map((from, index) => classOf(clocked, from, CLOCK_CLASSES[index + 1]));
  return {
    inspections: dated.length,
    inspections_without_clock: dated.length - clocked.length,
    by_clock,
    trend: appearanceTrend(clocked, site.rules.comparison.alpha),
    residue_trend: residueTrend(by_clock),
    water_samples: water.reduce((sum, row) => sum + row.samples, 0),
    water,
    deposits: histories.flatMap((history) => deposits(history, dated, water)),
  };
}

function datedInspections(
  history: UnitCourse,
  site: Site,
  inspections: readonly Inspection[],
  until: Day,
): Dated[] {
  const cleanings = history.chamber_cleanings.filter((cleaning) =>
    countsAsDone(cleaning, site.rules.contradicted_counts_as_done),
  );
  return inspections
    .filter((inspection) => inspection.unit === history.unit)
    .map((inspection) => {
      const day = history.clock.operatingDay(inspection.time);
      const last = cleanings.findLast(
        (cleaning) =>
          cleaning.day < day ||
          (inspection.time_mark !== 'day' &&
            cleaning.time_mark !== 'day' &&
            cleaning.time <= inspection.time),
      );
      return { inspection, site: history.site, day, clock: last ? day - last.day : null };
    })
    .filter(({ day }) => day < until)
    .sort((a, b) => a.day - b.day);
}

function classOf(
  clocked: readonly Dated[],
  from: number,
  next: number | undefined,
): Surfaces['by_clock'][number] {
  const inside = clocked
    .filter(({ clock }) => clock! >= from && (next === undefined || clock! < next))
    .map((of) => of.inspection);
  const said = inside.filter((of) => of.residue_after_rinsing !== undefined);
  return {
    from_day: from,
    to_day: next === undefined ? null : next - 1,
    inspections: inside.length,
    mean: inside.length === 0 ? null : inside.reduce((sum, of) => sum + of.appearance, 0) / inside.length,
    scores: [0, 1, 2, 3, 4].map((score) => inside.filter((of) => of.appearance === score).length),
    residue: said.filter((of) => of.residue_after_rinsing).length,
    residue_said: said.length,
  };
}

function appearanceTrend(clocked: readonly Dated[], alpha: number): Surfaces['trend'] {
  const strata = [...groupBy(clocked, (of) => of.inspection.unit).values()].map((of) => ({
    x: of.map(({ clock }) => clock!),
    y: of.map(({ inspection }) => inspection.appearance),
  }));
  const test = kendallOverStrata(strata);
  if (!test.computable) {
    return {
      answer: 'cannot_tell',
      z: null,
      p: null,
      gamma: null,
      units: 0,
      inspections: 0,
      method: test.method,
      not_computable: test.reason,
    };
  }
  return {
    answer: test.s > 0 && test.pValue <= alpha ? 'rises' : 'not_shown',
    z: test.z,
    p: test.pValue,
    gamma: test.gamma,
    units: test.strataUsed,
    inspections: test.n,
    method: test.method,
    not_computable: null,
  };
}

function residueTrend(by_clock: Surfaces['by_clock']): Surfaces['residue_trend'] {
  const test = cochranArmitageTrend({
    events: by_clock.map((row) => row.residue),
    totals: by_clock.map((row) => row.residue_said),
    scores: by_clock.map((_, index) => index),
  });
  return test.computable
    ? { z: test.z, p: test.pValue, not_computable: null }
    : { z: null, p: null, not_computable: test.reason };
}

/** A unit whose deposits stay after rinsing, with the water that reaches it: more of the same cleaning does not help against what the water brings. */
function deposits(
  history: UnitCourse,
  dated: readonly Dated[],
  water: readonly WaterRow[],
): Surfaces['deposits'] {
  const said = dated
    .filter(
      ({ inspection }) => inspection.unit === history.unit && inspection.residue_after_rinsing !== undefined,
    )
    .slice(-LAST_SAID);
  const residue = said.filter(({ inspection }) => inspection.residue_after_rinsing).length;
  if (residue < PERSISTENT) return [];
  const served = water.filter(
    (row) => row.site === history.site && (row.units.length === 0 || row.units.includes(history.unit)),
  );
  const compared = served.filter((row) => row.last_out !== null);
  const out = compared.filter((row) => row.out > 0);
  return [
    {
      unit: history.unit,
      site: history.site,
      residue,
      of: said.length,
      last_date: formatDay(said.at(-1)!.day),
      water_out: out.map(({ point, determinand, status }) => ({ point, determinand, status: status! })),
      water_within: names(compared.filter((row) => row.out === 0)),
      water_examples: names(served.filter((row) => row.not_compared === 'example_limit')),
      advice: adviceOf(served, compared, out),
    },
  ];
}

const names = (rows: readonly WaterRow[]): string[] => [...new Set(rows.map((row) => row.determinand))];

function adviceOf(
  served: readonly WaterRow[],
  compared: readonly WaterRow[],
  out: readonly WaterRow[],
): Surfaces['deposits'][number]['advice'] {
  if (out.length > 0) return 'water_and_professional';
  if (served.length === 0) return 'sample_water';
  return compared.length === 0 ? 'compare_water' : 'look_again';
}
