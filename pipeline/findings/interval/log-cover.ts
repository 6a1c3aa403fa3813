import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { cleaningLogs, type LoggedUnit } from '../../transform/cleaning/cleaning-log.ts';

/** Times the distance between two records of a site's cleaning log that nine of ten keep within; more is a gap (our choice). */
const USUAL_GAPS = 2;
const LEAST_REACH = 10;

/**
 * Whether a site's cleaning log was kept on a day: by the rule of the due tasks, or by the log's own usual distance between records. The rule of the due tasks alone would find gaps
 * everywhere in a log of chamber cleanings whose interval no policy states in days.
 */
export function logCover(histories: readonly LoggedUnit[], site: Site): Map<string, (day: Day) => boolean> {
  const logs = cleaningLogs(histories, site.policyOf);
  return new Map(
    [...groupBy(histories, (history) => history.site)].map(([id, of]) => {
      const own = stretchesOf(of);
      const log = logs.get(id);
      return [
        id,
        (day: Day) =>
          (log?.covers('chamber', day) ?? false) ||
          own.some((stretch) => stretch.from <= day && day <= stretch.to),
      ];
    }),
  );
}

function stretchesOf(histories: readonly LoggedUnit[]): { from: Day; to: Day }[] {
  const days = [...new Set(histories.flatMap((history) => history.logged_days))].sort((a, b) => a - b);
  if (days.length < 2) return [];
  const gaps = days
    .slice(1)
    .map((day, index) => day - days[index]!)
    .sort((a, b) => a - b);
  const reach = Math.max(LEAST_REACH, USUAL_GAPS * gaps[Math.floor(0.9 * (gaps.length - 1))]!);
  const stretches = [{ from: days[0]!, to: days[0]! }];
  for (const day of days) {
    const last = stretches.at(-1)!;
    if (day - last.to <= reach) last.to = day;
    else stretches.push({ from: day, to: day });
  }
  stretches.at(-1)!.to += reach;
  return stretches;
}
