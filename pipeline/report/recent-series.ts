import type { ProbeDrift } from '../findings/drift/drift-schema.ts';
import type { Review } from '../findings/review-schema.ts';
import { formatDay, parseDay } from '../site/day.ts';

/** Days of a series that a large review's data hold. */
const DAYS = 731;

/**
 * The review with the last two years of each drift series, for the data of very many units: with all days they would be larger than a text that can be read again the next month. The
 * table of drift has every day.
 */
export function withRecentSeries(review: Review): Review {
  const { drift, period } = review;
  const first = parseDay(period.to)! - DAYS + 1;
  return { ...review, drift: { ...drift, probes: drift.probes.map((probe) => recent(probe, first)) } };
}

function recent(probe: ProbeDrift, first: number): ProbeDrift {
  const { series } = probe;
  const from = parseDay(series.from)!;
  const cut = Math.max(0, first - from);
  if (cut === 0) return probe;
  const begin = series.day.findIndex((day) => day >= cut);
  const kept = begin < 0 ? series.day.length : begin;
  return {
    ...probe,
    series: {
      from: formatDay(from + cut),
      day: series.day.slice(kept).map((day) => day - cut),
      value: series.value.slice(kept),
      adjusted: series.adjusted.slice(kept),
      left_out: series.left_out.filter(({ day }) => day >= cut).map((of) => ({ ...of, day: of.day - cut })),
    },
  };
}
