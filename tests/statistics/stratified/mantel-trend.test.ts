import { describe, expect, it } from 'vitest';
import type { DoseTable } from '../../../pipeline/statistics/stratified/dose-table.ts';
import { mantelHaenszelOddsRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { mantelTrend } from '../../../pipeline/statistics/stratified/mantel-trend.ts';
import { cochranArmitageTrend } from '../../../pipeline/statistics/two-groups/cochran-armitage-trend.ts';
import { expectNear, value } from '../computable.ts';
import { readReference } from '../reference/read-reference.ts';
import { penicillin } from './examples.ts';

/** One group per row, in tables by stratum. */
function tablesOf(rows: { stratum: number[]; score: number[]; event: number[] }): DoseTable[] {
  return [...new Set(rows.stratum)].map((stratum) => {
    const own = rows.stratum.flatMap((s, i) => (s === stratum ? [i] : []));
    return {
      events: own.map((i) => rows.event[i]!),
      totals: own.map(() => 1),
      scores: own.map((i) => rows.score[i]!),
    };
  });
}

describe('mantelTrend', () => {
  it('is the score test of the exact conditional likelihood (R survival 3.5-3 clogit; reference/regression.R)', () => {
    const [rows] = readReference<{ stratum: number[]; score: number[]; event: number[]; chi_square: number }>(
      'mantel-trend',
    );
    expectNear(value(mantelTrend(tablesOf(rows!))).chiSquare, rows!.chi_square, 1e-9);
  });
  it('with two scores is the Mantel-Haenszel test of penicillin, 5.657142857 (R 4.2.2)', () => {
    const tables = penicillin.map((t) => ({
      events: [t.unexposedEvents, t.exposedEvents],
      totals: [t.unexposedTotal, t.exposedTotal],
      scores: [0, 1],
    }));
    const result = value(mantelTrend(tables));
    expectNear(result.chiSquare, 5.657142857, 1e-9);
    expectNear(result.chiSquare, value(mantelHaenszelOddsRatio(penicillin)).chiSquare, 1e-12);
    expect(result).toMatchObject({ strataUsed: 3, strataGiven: 5 });
  });
  it('with one stratum is Cochran-Armitage times (N - 1) / N: Agresti prints 6.5699 for maternal alcohol', () => {
    const table = {
      events: [48, 38, 5, 1, 1],
      totals: [17114, 14502, 793, 127, 38],
      scores: [0, 0.5, 1.5, 4, 7],
    };
    const result = value(mantelTrend([table]));
    expect(result.chiSquare).toBeCloseTo(6.5699, 4);
    expectNear(result.chiSquare, (value(cochranArmitageTrend(table)).chiSquare * 32573) / 32574, 1e-12);
  });
  it('scores with another zero in each stratum change nothing', () => {
    const table = { events: [3, 2, 6], totals: [20, 22, 19], scores: [0, 1, 2] };
    const shifted = { ...table, scores: [100, 101, 102] };
    expectNear(value(mantelTrend([table, shifted])).z, value(mantelTrend([shifted, table])).z, 1e-12);
    expectNear(
      value(mantelTrend([table, shifted])).chiSquare,
      2 * value(mantelTrend([table])).chiSquare,
      1e-12,
    );
  });
  it('says why not', () => {
    expect(mantelTrend([])).toMatchObject({
      computable: false,
      reason: expect.stringContaining('No stratum'),
    });
    expect(mantelTrend([{ events: [0, 0], totals: [3, 3], scores: [0, 1] }])).toMatchObject({
      computable: false,
    });
  });
});
