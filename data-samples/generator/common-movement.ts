import { stream } from './random.ts';
import { FIRST_DAY, LAST_DAY, type SiteId } from './scenario.ts';

/** What moves all units of a site on a day: factors for evacuation (mains water, warmer in summer) and heat-up (steam). */
export interface CommonMovement {
  evacuation: number;
  heatUp: number;
  exhaust: number;
}

const KEEP = 0.7;
const SPREAD = 0.014;
const SUMMER_PEAK = 214; // Day of the year, early August.

/** One movement for each operating day of a site: a season and an autoregression of order 1 on the log scale. */
export function commonMovement(site: SiteId): (day: number) => CommonMovement {
  const draw = stream(`${site}/common movement`);
  const series: CommonMovement[] = [];
  let water = 0;
  let steam = 0;
  for (let day = FIRST_DAY; day <= LAST_DAY; day++) {
    const fresh = SPREAD * Math.sqrt(1 - KEEP * KEEP);
    water = KEEP * water + fresh * draw.normal();
    steam = KEEP * steam + fresh * draw.normal();
    const season = Math.cos((2 * Math.PI * (dayOfYear(day) - SUMMER_PEAK)) / 365.25);
    series.push({
      evacuation: Math.exp(water + 0.02 * season),
      heatUp: Math.exp(steam - 0.012 * season),
      exhaust: Math.exp(0.4 * water),
    });
  }
  return (day) => series[Math.min(series.length - 1, Math.max(0, day - FIRST_DAY))]!;
}

const dayOfYear = (day: number): number => {
  const date = new Date(day * 86_400_000);
  return (date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 1)) / 86_400_000 + 1;
};
