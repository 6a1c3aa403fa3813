import type { Changes, Previous } from '../../../findings/changes/changes-schema.ts';
import type { AttentionCode } from '../../../findings/review-schema.ts';
import { format } from './format.ts';

const { count, integer } = format;

/** Words about what changed since the review before, and the frame of the page for the meeting. */
export const changes = {
  page: 'For the meeting',
  title: (month: string) => `For the meeting, ${month}`,
  heading: 'What changed since the last review',
  intro: (before: string, now: string) =>
    `Set beside the review of ${before}. Nothing is tested here: both reviews stand on nearly the same record, and counts of two months (${before} and ${now}) differ by chance too.`,
  state: {
    read: (previous: Previous) => `Read: ${previous.file}.`,
    none: (previous: Previous) =>
      previous.file === null
        ? 'No earlier review is at hand, so nothing can be said of changes.'
        : `No earlier review is at hand (looked for ${previous.file}), so nothing can be said of changes.`,
    damaged: (previous: Previous) =>
      `The earlier review ${previous.file} can’t be read: found ${previous.found}. Nothing is said of changes; the rest of this review does not depend on it. Make the earlier month’s review again, or name another file with --previous.`,
    other_format: (previous: Previous) =>
      `The earlier review ${previous.file} was made in another format (“${previous.found}”), by another version of the program. Nothing is said of changes; the rest of this review does not depend on it. Make the earlier month’s review again with this version.`,
    not_earlier: (previous: Previous) =>
      `The review ${previous.file} is of ${previous.found}, which is not before this month. Nothing is said of changes.`,
  } satisfies Record<Previous['state'], (previous: Previous) => string>,
  file: (previous: Previous) =>
    `Read beside the exports: the review before, ${previous.file}, ${format.bytes(previous.bytes ?? 0)}, SHA-256 ${previous.sha256}, fingerprint of its own files ${previous.fingerprint}, version ${previous.version}.`,
  unread: (previous: Previous) =>
    `The review before, ${previous.file}, ${format.bytes(previous.bytes ?? 0)}, SHA-256 ${previous.sha256}, was not used.`,
  nothing: 'No verdict, no state, no reason for attention and no setting is another than in the last review.',
  verdictsHeading: 'Verdicts that moved',
  verdictsSame: (n: number) =>
    n === 0 ? '' : `${count(n, 'other verdict is', 'other verdicts are')} as before.`,
  verdictsCaption: 'Comparisons with another verdict',
  noVerdicts: 'No verdict moved.',
  verdictHeads: {
    unit: 'Unit',
    question: 'Question',
    before: 'Before',
    now: 'Now',
    ratio: 'Ratio before, now',
  },
  ratios: (before: string, now: string) => `${before}, ${now}`,
  noRatio: 'none',
  notMade: 'not made',
  driftHeading: 'Drift states that moved',
  driftSame: (n: number) => (n === 0 ? '' : `${count(n, 'other probe is', 'other probes are')} as before.`),
  driftCaption: 'Probes in another state, each in the era in force',
  noDrift: 'No probe is in another state.',
  driftHeads: { unit: 'Unit', probe: 'Probe', before: 'Before', now: 'Now', note: 'Note' },
  newEra: 'baseline reset between the reviews',
  notWatched: 'not watched',
  attentionHeading: 'Reasons for attention',
  attentionCounts: (fresh: number, gone: number, stays: number) =>
    `${format.sentence(count(fresh, 'reason is', 'reasons are'))} new, ${integer(gone)} gone, ${integer(stays)} stay.`,
  attentionCaption: 'Reasons for attention that came, went or changed their level',
  noAttention: 'No reason for attention came or went.',
  attentionHeads: { unit: 'Unit', reason: 'Reason', change: 'Change' },
  change: {
    new: (level: string) => `new: ${level.toLowerCase()}`,
    gone: (level: string) => `gone (was: ${level.toLowerCase()})`,
    stays: (before: string, now: string) => `from “${before.toLowerCase()}” to “${now.toLowerCase()}”`,
  },
  cleaningHeading: 'Cleaning done and missed',
  cleaningCaption: (before: string, now: string) =>
    `Tasks done and missed of those due, ${before} and ${now}`,
  cleaningMovedCaption: 'Units and tasks of which another share was missed',
  cleaningHeads: {
    task: 'Task',
    unit: 'Unit',
    doneBefore: 'Done before',
    doneNow: 'Done now',
    missedBefore: 'Missed before',
    missedNow: 'Missed now',
    moved: 'Share missed',
  },
  noCleaning: 'Nothing fell due in either month.',
  moved: {
    fewer_missed: 'smaller',
    more_missed: 'larger',
    same: 'as before',
  } satisfies Record<Changes['cleaning'][number]['moved'], string>,
  settingsHeading: 'Settings that were changed',
  settingsNote: 'What moved may have moved by these.',
  settingsCaption: 'Settings changed between the reviews',
  settingHeads: { name: 'Setting', before: 'Before', now: 'Now' },
  noSetting: 'none',
  unitsNew: (units: string) => `New in the records: ${units}.`,
  unitsGone: (units: string) => `No longer in the records: ${units}.`,
  short: (verdicts: number, drift: number, fresh: number, gone: number) =>
    `Since the last review ${count(verdicts, 'verdict', 'verdicts')} and ${count(drift, 'drift state', 'drift states')} moved; ${count(fresh, 'reason', 'reasons')} for attention came, ${integer(gone)} went.`,
  reason: {
    ran_after_failure: 'cycles after a failed test, none passing before them',
    ran_after_failure_perhaps: 'cycles perhaps after a failed test, none passing before them',
    episode_open: 'failed tests, none passing since',
    failed_test: 'failed air-removal test',
    test_missing: 'production with no test',
    test_late: 'test after production had started',
    return_incomplete: 'production before warm-up and passing test after cleaning',
    requalification_incomplete: 'requalification incomplete',
    comparison_shown: 'more failures after missed cleaning: shown',
    /** No reason any more; an earlier review may hold it. */
    comparison_suggested: 'more failures after missed cleaning: suggested',
    chamber_overdue_now: 'chamber cleaning overdue',
    task_outstanding: 'a task outstanding',
    records_contradicted: 'records that the cycle log contradicts',
    leak_over_limit: 'leak rate over its limit',
    leak_near_limit: 'leak rate near its limit',
    drift_near_limit: 'drift near its limit',
    drift_moving: 'drift',
    drift_stepped: 'step in a probe',
    heat_up_out_of_range: 'heat-up time out of range',
    abort_rate_signal: 'abort rate outside its limits',
    early_stops: 'unexplained early stops',
    strainers_missed: 'strainer cleanings missed',
  } satisfies Record<AttentionCode | 'comparison_suggested', string>,
};
export type ChangesWords = typeof changes;
