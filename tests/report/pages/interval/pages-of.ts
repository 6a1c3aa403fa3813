import type { IntervalCase } from '../../../../pipeline/findings/interval/interval-schema.ts';
import { type ReportContext, reportContext } from '../../../../pipeline/report/page-context.ts';
import { intervalPage } from '../../../../pipeline/report/pages/interval/interval-page.ts';
import { en } from '../../../../pipeline/report/words/en.ts';
import type { Inspection, Water } from '../../../../pipeline/site/records.ts';
import { caseOf, every, FIRST_DAY, risingUnits } from '../../../findings/interval/fleet.ts';
import { HOSTILE } from '../../fixtures/hostile.ts';
import { reviewOf } from '../../fixtures/review-of.ts';

const mark = (row: number) => ({
  time_mark: 'day' as const,
  origin: { source: 'hand-made', file: 'f', sheet: null, row },
});
const time = (day: number) => (FIRST_DAY + day) * 86_400_000 + 4 * 3_600_000;
const COSTS =
  'interval: { longest_by_instructions: 42, costs: { labour_hour: 40, repair_per_failure: 400, currency: EUR } }';

const inspections: Inspection[] = every(9, 20, 300).map((day, index) => ({
  unit: 'U1',
  time: time(day),
  appearance: index % 5,
  residue_after_rinsing: index % 2 === 0,
  ...mark(day),
}));
const water: Water[] = ['silicate', 'taste', 'iron'].map((determinand, index) => ({
  point: 'feed water',
  time: time(280),
  determinand,
  value: 2,
  measure: index === 2 ? 'mmol/L' : 'mg/L',
  ...mark(index + 1),
}));

/** Cases of each kind, small: the rise supported, not supported, too few failures, and nothing to say. */
export const CASES: Record<string, IntervalCase> = {
  supported: caseOf(risingUnits(12, 500), COSTS, { inspections, water }).found,
  not_supported: caseOf(
    risingUnits(4, 300).map((unit, index) => ({ ...unit, fails: every(37, 5 + 3 * index, 300) })),
  ).found,
  too_few: caseOf([
    {
      unit: 'U1',
      days: 150,
      fails: [9, 50, 72, 111, 124, 146],
      cleanings: every(28, 2, 150).map((day) => ({ day })),
    },
  ]).found,
  cannot_tell: caseOf([{ unit: 'U1', days: 60 }]).found,
  empty: caseOf([{ unit: 'U1', days: 0 }]).found,
};

/** A case in which every name that an export may hold is hostile. */
export function hostileCase(): IntervalCase {
  const text = JSON.stringify(CASES.supported).replaceAll(
    /"(?:U1|feed water|silicate)"/g,
    JSON.stringify(HOSTILE),
  );
  return JSON.parse(text) as IntervalCase;
}

export function contextOf(found: IntervalCase): ReportContext {
  const context = reportContext(
    reviewOf({ sites: [{ id: 's', name: 'North wing', zone: 'Etc/UTC', day_starts: '04:00' }] }),
    [],
    () => [],
    en,
  );
  return found.record_from === null
    ? context
    : { ...context, span: `${found.record_from} to ${found.record_to}` };
}

export const pageOf = (found: IntervalCase): Promise<string> => intervalPage(contextOf(found), found);
