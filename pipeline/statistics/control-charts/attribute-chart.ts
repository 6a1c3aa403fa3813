import { computed, notComputable, type Outcome } from '../result.ts';
import {
  type BaselineRange,
  type BaselineUsed,
  type ChartPoint,
  D2_OF_TWO,
  meanMovingRange,
  resolveBaseline,
} from './chart-result.ts';

export interface AttributeChart {
  points: ChartPoint[];
  centre: number;
  baseline: BaselineUsed & { events: number; denominator: number };
  /**
   * Laney's charts only: by how much the points spread more (above 1) or less (under 1) than the plain chart
   * allows, with the number of moving ranges it rests on.
   */
  sigmaZ?: number;
  movingRanges?: number;
}

export interface AttributeChartInput {
  counts: readonly number[];
  denominators: readonly number[];
  baseline?: BaselineRange;
}

interface Design {
  caller: string;
  method: string;
  kind: 'proportion' | 'rate';
  widen: 'no' | 'laney';
}

/**
 * The four attribute charts share this: pooled centre, sigma by the binomial or the Poisson law, Laney's
 * factor on request.
 */
export function attributeChart(design: Design, input: AttributeChartInput): Outcome<AttributeChart> {
  const { counts, denominators } = input;
  checkCounts(design, counts, denominators);
  const range = resolveBaseline(design.caller, counts.length, input.baseline);
  const baseline = { ...range, points: 0, events: 0, denominator: 0 };
  for (let i = range.first; i <= range.last; i += 1) {
    if (denominators[i]! === 0) continue;
    baseline.points += 1;
    baseline.events += counts[i]!;
    baseline.denominator += denominators[i]!;
  }
  if (baseline.points < 2) {
    return notComputable(
      design.method,
      `The baseline has ${baseline.points} points with a denominator; a chart needs at least 2.`,
    );
  }
  const centre = baseline.events / baseline.denominator;
  if (centre === 0) {
    return notComputable(design.method, 'No event in the baseline, so the limits would have no width.');
  }
  if (design.kind === 'proportion' && centre === 1) {
    return notComputable(
      design.method,
      'Every case in the baseline is an event, so the limits have no width.',
    );
  }
  const variance = design.kind === 'proportion' ? centre * (1 - centre) : centre;
  const plainSigma = denominators.map((n) => (n === 0 ? null : Math.sqrt(variance / n)));
  const plainZ = plainSigma.map((s, i) => (s === null ? null : (counts[i]! / denominators[i]! - centre) / s));

  let factor = 1;
  let laney: Pick<AttributeChart, 'sigmaZ' | 'movingRanges'> = {};
  if (design.widen === 'laney') {
    const { mean, ranges } = meanMovingRange(plainZ, range.first, range.last);
    if (mean === null) {
      return notComputable(design.method, 'No two neighbouring points of the baseline have a denominator.');
    }
    if (mean === 0) {
      return notComputable(
        design.method,
        'Neighbouring points of the baseline never differ, so sigma_z is 0 and the limits have no width.',
      );
    }
    factor = mean / D2_OF_TWO;
    laney = { sigmaZ: factor, movingRanges: ranges };
  }

  const ceiling = design.kind === 'proportion' ? 1 : Number.POSITIVE_INFINITY;
  const points = counts.map((count, index): ChartPoint => {
    const s = plainSigma[index]!;
    if (s === null) {
      const missing = count > 0 ? 'events but a denominator of 0' : 'denominator is 0';
      return { index, value: null, centre, lower: null, upper: null, sigma: null, z: null, missing };
    }
    const sigma = s * factor;
    return {
      index,
      value: count / denominators[index]!,
      centre,
      lower: Math.max(0, centre - 3 * sigma),
      upper: Math.min(ceiling, centre + 3 * sigma),
      sigma,
      z: plainZ[index]! / factor,
    };
  });
  return computed(design.method, { points, centre, baseline, ...laney });
}

function checkCounts(design: Design, counts: readonly number[], denominators: readonly number[]): void {
  if (counts.length !== denominators.length) {
    throw new RangeError(
      `${design.caller}: counts and denominators must have the same length, found ${counts.length} and ${denominators.length}.`,
    );
  }
  for (const [i, count] of counts.entries()) {
    const n = denominators[i]!;
    if (!Number.isInteger(count) || count < 0) {
      throw new RangeError(
        `${design.caller}: counts[${i}] must be a whole number of 0 or more, found ${count}.`,
      );
    }
    if (!Number.isFinite(n) || n < 0) {
      throw new RangeError(`${design.caller}: denominators[${i}] must be a number of 0 or more, found ${n}.`);
    }
    if (design.kind === 'proportion' && (!Number.isInteger(n) || count > n)) {
      throw new RangeError(
        `${design.caller}: denominators[${i}] must be a whole number not under counts[${i}], found ${n} and ${count}.`,
      );
    }
  }
}
