import { bestScale, powerSum, type WeibullStratum } from './weibull-likelihood.ts';

/**
 * Standard errors of log shape and of each log scale from the observed information at the maximum.
 *
 * The information has an arrow form: the scales of different strata meet only through the shape, so it is
 * inverted by hand. A stratum without events has no scale and no part in it.
 */
export function weibullErrors(
  strata: readonly WeibullStratum[],
  shape: number,
): { logShape: number; logScale: (number | null)[] } {
  const parts = strata.map((stratum) => {
    const scale = bestScale(stratum, shape);
    if (scale === null) return null;
    const log = Math.log(scale / stratum.longest);
    // At the best scale the sum of (t/scale)^k - (entry/scale)^k is the weighted number of events.
    const d = stratum.weight;
    const factor = Math.exp(-shape * log);
    const first = powerSum(stratum, shape, 1) * factor;
    const second = powerSum(stratum, shape, 2) * factor;
    const centredFirst = first - log * d;
    const centredSecond = second - 2 * log * first + log * log * d;
    return {
      scaleScale: shape * shape * d,
      shapeScale: -shape * shape * centredFirst,
      shapeShape: shape * shape * centredSecond + shape * centredFirst - shape * (stratum.logTimes - log * d),
    };
  });
  let schur = 0;
  for (const part of parts) if (part) schur += part.shapeShape - part.shapeScale ** 2 / part.scaleScale;
  const shapeVariance = 1 / schur;
  return {
    logShape: Math.sqrt(shapeVariance),
    logScale: parts.map(
      (part) =>
        part && Math.sqrt(1 / part.scaleScale + (part.shapeScale / part.scaleScale) ** 2 * shapeVariance),
    ),
  };
}
