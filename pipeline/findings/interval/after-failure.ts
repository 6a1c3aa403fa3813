import type { Site } from '../../site/site.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { IntervalCase } from './interval-schema.ts';

/** Share of failures followed by a cleaning from which the clock is taken to start anew with each failure. */
const CLEANED_SHARE = 0.5;

/** What a failure does to the clock: the site's word, else what the record shows. Followed: a chamber cleaning within the site's days for reactive ones. */
export function afterFailureOf(site: Site, histories: readonly UnitCourse[]): IntervalCase['after_failure'] {
  const within = site.rules.reactive_within_days;
  const episodes = histories.flatMap(({ episodes: of, chamber_cleanings }) =>
    of.map(({ from }) =>
      chamber_cleanings.some(
        (cleaning) =>
          cleaning.done &&
          cleaning.reactive === true &&
          cleaning.day >= from &&
          cleaning.day <= from + within,
      ),
    ),
  );
  const followed = episodes.filter(Boolean).length;
  const own = site.declared.interval.after_failure;
  const shown = episodes.length > 0 && followed >= CLEANED_SHARE * episodes.length;
  return {
    in_force: own === 'from_record' ? (shown ? 'cleaned' : 'clock_goes_on') : own,
    origin: own === 'from_record' ? 'record' : 'site',
    failures: episodes.length,
    followed_by_cleaning: followed,
  };
}
