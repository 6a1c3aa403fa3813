import { groupBy } from '../../group-by.ts';
import { monthOf } from '../../site/day.ts';
import type { AttributeChart } from '../../statistics/control-charts/attribute-chart.ts';
import { pChart } from '../../statistics/control-charts/p-chart.ts';
import { uChart } from '../../statistics/control-charts/u-chart.ts';
import type { Outcome } from '../../statistics/result.ts';
import { applyRules } from '../../statistics/run-rules/apply-rules.ts';
import { beyondThreeSigma } from '../../statistics/run-rules/beyond-three-sigma.ts';
import { eightOnOneSide } from '../../statistics/run-rules/eight-on-one-side.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Rate, Review } from '../review-schema.ts';
import { eventRate, proportion } from './rate.ts';

type Points = Review['charts']['failed_days'];

/** Months that make the baseline, at most; the month under review is never one of them. */
const BASELINE_MONTHS = 12;
/** Fewer expected events a month than this, and three-sigma limits say nothing (rule of thumb); the points stand without limits. */
const LEAST_EXPECTED = 3;

/** p chart of failed day results of days at risk, by month: limits frozen on the first twelve months (else all but the last); exact intervals of each month. */
export function failedDaysChart(rows: readonly UnitDay[], scope: string, level: number): Points {
  const atRisk = rows.filter((row) => row.at_risk === 1);
  return monthly(
    atRisk,
    scope,
    (row) => [row.failed ?? 0, 1],
    pChart,
    (events, of) => proportion(events, of, level),
  );
}

/** u chart of aborts plausibly about cleanliness per production cycle of all days of use, by month. */
export function abortsChart(rows: readonly UnitDay[], scope: string, level: number): Points {
  return monthly(
    rows,
    scope,
    (row) => [row.cleanliness_aborts, row.production_cycles],
    uChart,
    (events, of) => eventRate(events, of, level),
  );
}

function monthly(
  rows: readonly UnitDay[],
  scope: string,
  count: (row: UnitDay) => [number, number],
  chart: typeof pChart | typeof uChart,
  interval: (events: number, of: number) => Rate,
): Points {
  const months = [...groupBy(rows, (row) => monthOf(row.day))].sort(([a], [b]) => (a < b ? -1 : 1));
  if (months.length === 0) return [];
  const sums = months.map(([month, ofMonth]) => {
    const [events, of] = ofMonth.map(count).reduce(([a, b], [c, d]) => [a + c, b + d], [0, 0]);
    return { month, events, of };
  });
  const last = Math.min(BASELINE_MONTHS, sums.length - 1) - 1;
  const limits = last < 1 ? undefined : limitsOf(chart, sums, last);
  const rules = { 'beyond-three-sigma': beyondThreeSigma, 'eight-on-one-side': eightOnOneSide };
  const signals = limits
    ? applyRules(
        limits.points.map((point) => point.z),
        rules,
      )
    : [];
  return sums.map((sum, index) => ({
    scope,
    ...sum,
    value: sum.of === 0 ? null : sum.events / sum.of,
    ...boundsOf(interval(sum.events, sum.of)),
    centre: limits?.centre ?? null,
    lower: limits?.points[index]?.lower ?? null,
    upper: limits?.points[index]?.upper ?? null,
    baseline: index <= last,
    signals: [
      ...new Set(
        signals.filter((signal) => signal.index === index).map((signal) => `${signal.rule} ${signal.side}`),
      ),
    ],
  }));
}

const boundsOf = ({ low, high }: Rate): Pick<Rate, 'low' | 'high'> => ({ low, high });

function limitsOf(
  chart: (input: {
    counts: number[];
    denominators: number[];
    baseline: { first: number; last: number };
  }) => Outcome<AttributeChart>,
  sums: readonly { events: number; of: number }[],
  last: number,
): AttributeChart | undefined {
  const baseline = sums.slice(0, last + 1);
  const expected = baseline.reduce((sum, of) => sum + of.events, 0) / baseline.length;
  if (expected < LEAST_EXPECTED) return undefined;
  const result = chart({
    counts: sums.map((sum) => sum.events),
    denominators: sums.map((sum) => sum.of),
    baseline: { first: 0, last },
  });
  return result.computable ? result : undefined;
}
