import { groupBy } from '../group-by.ts';
import type { Site } from '../site/site.ts';
import type { UnitDay } from '../transform/panel/unit-day.ts';
import { comparisonFamily } from './comparisons/comparison-family.ts';
import { doses } from './comparisons/dose.ts';
import { jointModels } from './comparisons/joint-model.ts';
import { mostlyReactiveUnits } from './comparisons/mostly-reactive.ts';
import { strataTable } from './comparisons/strata-table.ts';
import type { Review } from './review-schema.ts';
import type { UnitCourse } from './shares/unit-course.ts';
import { byClock } from './summaries/by-clock.ts';
import { ranking } from './summaries/ranking.ts';

/** What a review finds in the panel of all units alone, whatever else their records say. */
export type PanelFindings = Pick<
  Review,
  'comparisons' | 'family_size' | 'strata' | 'doses' | 'joint_models' | 'ranking' | 'by_clock'
>;

/** Puts the questions to the panel that need no more than it and the courses of its units. Plain data, so that another thread may ask them. */
export function panelFindings(
  panel: readonly UnitDay[],
  courses: readonly UnitCourse[],
  { rules }: Pick<Site, 'rules'>,
): PanelFindings {
  const { level } = rules.comparison;
  const reactive = mostlyReactiveUnits(courses, rules, 'site');
  const { comparisons, size } = comparisonFamily(panel, courses, rules);
  return {
    comparisons,
    family_size: size,
    strata: strataTable(panel),
    doses: doses(panel, reactive),
    joint_models: jointModels(panel, rules.comparison, reactive),
    ranking: ranking(panel, level),
    by_clock: [
      ...byClock(panel, 'fleet', level),
      ...[...groupBy(panel, (row) => row.unit)].flatMap(([unit, rows]) => byClock(rows, unit, level)),
    ],
  };
}
