import { describe, expect, it } from 'vitest';
import { holm } from '../../../pipeline/statistics/multiplicity/holm.ts';

describe('holm', () => {
  // The 15 p-values of Benjamini & Hochberg, JRSS B 57 (1995) section 3.2; adjusted values by R 4.2.2, p.adjust(p, "holm"). Exact decimals, so 1e-12.
  it('agrees with R', () => {
    const p = [
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
      0.759, 1,
    ];
    const expected = [0.0015, 0.0056, 0.0247, 0.114, 0.2211, 0.278, 0.278, 0.278, 0.3213, 1, 1, 1, 1, 1, 1];
    for (const [i, adjusted] of holm(p).adjusted.entries()) expect(adjusted).toBeCloseTo(expected[i]!, 12);
    expect(holm([0.04, 0.01, 0.03, 0.04]).adjusted.map((x) => Number(x.toFixed(12)))).toEqual([
      0.09, 0.04, 0.09, 0.09,
    ]);
  });

  it('takes an empty family, refuses what is no probability', () => {
    expect(holm([]).adjusted).toEqual([]);
    expect(() => holm([0.1, Number.NaN])).toThrow(RangeError);
  });
});
