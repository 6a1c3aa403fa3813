import type { CommonMovement } from './common-movement.ts';
import type { DayValue } from './day-values.ts';
import type { EraSeries } from './era-series.ts';
import { type Residuals, residuals } from './noise.ts';
import { OWN_AFFAIR, PROBE_META } from './probes.ts';
import { findSawTooth, type SawTooth } from './saw-tooth.ts';

/** A day's value freed of the site's movement and the tooth, beside what was measured. */
export interface AdjustedValue extends DayValue {
  measured: number;
}

/** A series freed of what moved the whole site, and of a saw-tooth, with its noise. */
export interface AdjustedSeries {
  of: EraSeries;
  /** Units from which the movement that was taken out was read: none where it could not be taken out. */
  comparedWith: 'several' | 'one' | 'none';
  /** How strongly the unit feels that movement, 1 where as the others do. */
  sensitivity: number;
  sawTooth: SawTooth | null;
  /** Days of the values to which the saw-tooth's lists refer. */
  toothDays: number[];
  /** On the probe's scale, at the level of a usual day of the site and of the middle of a tooth. */
  values: AdjustedValue[];
  /** The finest change that the record can show, on the probe's scale. */
  resolution: number;
  /** Noise over the memory, for pooling and judging. */
  noise: Residuals;
  /** Position of the first value in memory. */
  memory: number;
}

/** Whether season and supply may move a series and could not be taken out of it, as there is no other unit to compare with. */
export const standsAlone = ({ of, comparedWith }: AdjustedSeries): boolean =>
  comparedWith === 'none' && !OWN_AFFAIR.has(of.probe);

/** Below this share of days with a known movement the series stays as it is: half-adjusted series would jump. */
const LEAST_COVERED = 0.7;

/**
 * Takes the site's movement and a saw-tooth out of a series. Values on days whose movement is not known are left out where it is known for at least seven days in ten;
 * elsewhere nothing is taken out, and the note says so.
 *
 * @param memoryDays only so many days before the series' end are judged
 */
export function adjustSeries(
  of: EraSeries,
  common: CommonMovement,
  memoryDays: number,
  sensitivity = 1,
): AdjustedSeries {
  const effects = of.days.map((value) => common.at(value.day));
  let known = 0;
  for (const effect of effects) if (effect !== undefined) known++;
  const commonRemoved = of.days.length > 0 && known >= LEAST_COVERED * of.days.length;
  const adjusted: AdjustedValue[] = [];
  for (const [i, { day, at, y, weight }] of of.days.entries()) {
    const effect = commonRemoved ? effects[i] : 0;
    if (effect !== undefined) adjusted.push({ day, at, y: y - sensitivity * effect, weight, measured: y });
  }
  const sawTooth = findSawTooth(adjusted, of.cleanings);
  const values = sawTooth ? withoutTeeth(adjusted, sawTooth) : adjusted;

  const last = values.at(-1)?.day ?? 0;
  const memory = Math.max(
    0,
    values.findIndex((value) => value.day > last - memoryDays),
  );
  const level = values[0]?.y ?? 0;
  const resolution =
    PROBE_META[of.probe].scale === 'log' ? of.checked.resolution / Math.exp(level) : of.checked.resolution;
  // A value that is rounded to steps varies by a step over the square root of twelve, even where the record shows nothing.
  const floor = Math.max(resolution / Math.sqrt(12), 1e-9);
  return {
    of,
    comparedWith: commonRemoved ? (common.leastUnits > 1 ? 'several' : 'one') : 'none',
    sensitivity,
    sawTooth,
    toothDays: adjusted.map((value) => value.day),
    values,
    resolution,
    noise: residuals(values.slice(memory), floor),
    memory,
  };
}

function withoutTeeth(values: readonly AdjustedValue[], tooth: SawTooth): AdjustedValue[] {
  const heights = toothHeights(tooth);
  return values.flatMap((value, i) => {
    const height = heights[i];
    return height === null || height === undefined
      ? []
      : [{ ...value, y: value.y - height, measured: value.measured - height }];
  });
}

/** Height of the tooth at each value, 0 in its middle. */
function toothHeights({ since, slope }: SawTooth): (number | null)[] {
  const known = since.filter((days) => days !== null);
  const middle = known.reduce((sum, days) => sum + days, 0) / known.length;
  return since.map((days) => (days === null ? null : slope * (days - middle)));
}

/** Height of the tooth by day; empty where there is no saw-tooth. */
export function teethOf({ sawTooth, toothDays }: AdjustedSeries): Map<number, number> {
  const heights = sawTooth ? toothHeights(sawTooth) : [];
  return new Map(heights.flatMap((height, i) => (height === null ? [] : [[toothDays[i]!, height]])));
}
