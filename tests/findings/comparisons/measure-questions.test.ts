import { expect, it } from 'vitest';
import type { Reading } from '../../../pipeline/findings/comparisons/exposure.ts';
import { type Asked, measureQuestions } from '../../../pipeline/findings/comparisons/measure-questions.ts';
import { type CountedOutcome, stratify } from '../../../pipeline/findings/comparisons/strata.ts';
import { type Exposure, OUTCOMES } from '../../../pipeline/findings/review-schema.ts';
import { formatDay } from '../../../pipeline/site/day.ts';
import { rulesSchema } from '../../../pipeline/site/rules.ts';
import type { UnitDay } from '../../../pipeline/transform/panel/unit-day.ts';

const rules = rulesSchema.parse({}).comparison;

/** Days of a unit on which both exposures come in spells and the readings of the chamber records differ. */
const daysOf = (unit: string, shift: number): UnitDay[] =>
  Array.from({ length: 150 }, (_, index) => {
    const at = index + shift;
    const failed = (at * 7) % 31 < 3 ? 1 : 0;
    return {
      unit,
      site: 's',
      day: 20_000 + index,
      date: formatDay(20_000 + index),
      era: 0,
      stratum: index < 75 ? 0 : 1,
      test_result: failed ? 'fail' : 'pass',
      test_timing: 'in_time',
      inside_episode: 0,
      out_of_service: 0,
      at_risk: 1,
      failed,
      production_cycles: 3,
      cleanliness_aborts: at % 17 === 0 ? 1 : 0,
      unrelated_aborts: at % 19 === 0 ? 1 : 0,
      unclassified_aborts: 0,
      purges: 0,
      early_stops: 0,
      chamber_overdue: at % 20 < 8 ? 1 : 0,
      chamber_overdue_all_records: at % 20 < 5 ? 1 : 0,
      chamber_days_past_due: 0,
      chamber_clock_days: 1,
      strainers_missed: at % 13 < 4 ? 1 : 0,
      flushes_missed_in_a_row: null,
    };
  });
const rowsOf: Record<string, UnitDay[]> = { A: daysOf('A', 0), B: daysOf('B', 5), C: daysOf('C', 11) };

/** The questions of units and fleet in one reading, and the strata that are asked for. */
function questions(reading: Reading, fleet: string[]): { asked: Asked[]; sorted: string[] } {
  const sorted: string[] = [];
  const exposures: Exposure[] = ['chamber_overdue', 'strainer_missed'];
  const asked = exposures.flatMap((exposure) =>
    OUTCOMES.flatMap((outcome) =>
      [['A'], ['B'], fleet].map((units): Asked => {
        const rows = () => units.flatMap((unit) => rowsOf[unit]!);
        return {
          scope: units.length > 1 ? 'fleet' : 'unit',
          unit: units.length > 1 ? null : units[0]!,
          units,
          exposure,
          outcome,
          rows,
          stratified(of: CountedOutcome) {
            sorted.push(`${units.join()} ${exposure} ${of}`);
            return stratify(rows(), exposure, of, reading);
          },
          unitNotComparableDays: 0,
        };
      }),
    ),
  );
  return { asked, sorted };
}

it('measures nothing twice in one reading', () => {
  const { asked, sorted } = questions('site', ['A', 'B', 'C']);
  measureQuestions(asked, rules);
  expect(sorted).toHaveLength(new Set(sorted).size);
  expect(sorted).toHaveLength(2 * 3 * (OUTCOMES.length + 1));
});

it.each([
  ['the same units', ['A', 'B', 'C'], ['chamber_overdue']],
  ['other units', ['A', 'B'], ['chamber_overdue', 'strainer_missed']],
])('a second reading, fleet of %s, gives what it gives by itself', (_, fleet, exposuresOfFleet) => {
  const first = questions('site', ['A', 'B', 'C']).asked;
  const measured = measureQuestions(first, rules);
  const before = first.map((question, index) => ({ question, measured: measured[index]! }));
  const { asked, sorted } = questions('all_records', fleet);
  expect(measureQuestions(asked, rules, before)).toEqual(
    measureQuestions(questions('all_records', fleet).asked, rules),
  );
  const ofFleet = sorted.filter((of) => of.startsWith(`${fleet.join()} `)).map((of) => of.split(' ')[1]);
  expect([...new Set(ofFleet)]).toEqual(exposuresOfFleet);
  expect(sorted.some((of) => of.startsWith('A strainer_missed'))).toBe(false);
});
