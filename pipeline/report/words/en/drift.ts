import type { Cause } from '../../../findings/drift/cause-pattern.ts';
import type { DriftNote, DriftState } from '../../../findings/drift/drift-schema.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

const { count, date, figures } = format;

/** Words about the watch on the empty daily cycles. */
export const drift = {
  heading: 'Units that drift before they fail',
  intro:
    'The warm-up, air-removal test and leak test of a day run empty and are the same each day, so a unit can be compared with itself. What moves all units of a site on a day (steam, water, season) is taken out first. No flag does not mean no fault: sudden faults give no drift.',
  state: {
    steady: 'steady',
    moving: 'moving',
    near_limit: 'near its limit',
    stepped: 'stepped',
    not_enough_data: 'not enough data',
  } satisfies Record<DriftState, string>,
  none: 'Nothing moves: no probe of any unit is moving, near its limit or stepped this month.',
  tableCaption: (to: string) => `Probes that move, are near their limit or stepped, to ${date(to)}`,
  unitCaption: (to: string) => `State of each probe, to ${date(to)}`,
  noteOf: (unit: string, probe: string, notes: string) => `${unit}, ${probe}: ${notes}`,
  siteCaption: 'What moved all units of a site, over the last four weeks',
  siteNote: 'Several units moving together point to steam, water or air supply, not to a strainer.',
  heads: {
    unit: 'Unit',
    probe: 'Probe',
    state: 'State',
    since: 'Since',
    now: 'Now',
    rate: 'Change a week (90% interval)',
    days: 'Days to limit (90% interval)',
    site: 'Site',
    change: 'Change',
  },
  up: 'up',
  down: 'down',
  probe: (probe: keyof typeof terms.probe) => format.sentence(terms.probe[probe]),
  value: (value: number, measure: string) => `${figures(value)} ${measure}`,
  change: (value: number, measure: string) =>
    measure === 'percent' ? `${format.change(value, 2)}%` : `${format.change(value, 2)} ${measure}`,
  usual: (low: number, high: number) => `usual ${figures(low)} to ${figures(high)}`,
  span: (low: number, high: number) => `${figures(low)} to ${figures(high)}`,
  days: (days: number | null) => (days === null ? 'over two years' : format.integer(days)),
  daysSpan: (low: number, high: number | null) =>
    `${format.integer(low)} ${high === null ? 'or more' : `to ${format.integer(high)}`}`,
  daysUnknown: (hasLimit: boolean): string => (hasLimit ? 'can’t be said' : 'no limit known'),
  limit: {
    configured: 'limit',
    alarm_time: 'the unit’s own alarm time',
    failed_before: 'level at which it failed before',
  },
  sawTooth: (task: keyof typeof terms.task, cleanings: number) =>
    `Saw-tooth: falls back at ${terms.task[task].toLowerCase()} (${count(cleanings, 'time', 'times')}), which argues for cleaning and not for a repair.`,
  cause: (causes: readonly Cause[]) =>
    `together fit best: ${causes.map((cause) => terms.cause[cause]).join(' or ')}. A hint, no diagnosis.`,
  note: {
    whole_minutes: 'whole minutes only',
    stuck: 'a stretch stuck at one value is left out',
    measure_changed: 'unit of measure changed; judged from then on',
    missing_values: 'many values missing',
    no_recent_values: 'no recent values',
    after_cleaning: 'leak tests soon after a cleaning left out: a wet chamber reads as a leak',
    controller_replaced: 'controller replaced: new baseline',
    common_movement_not_removed: 'too few units to take out the common movement',
    undecided: 'off its level, not yet clear how',
  } satisfies Record<DriftNote, string>,
  figureTitle: (probe: keyof typeof terms.probe, measure: string, unit: string) =>
    `${format.sentence(terms.probe[probe])} (${measure}) of the ${terms.cyclesOfProbe(probe)}, unit ${unit}`,
  reading:
    'Points: each day’s value. Band: two standard deviations of a usual day around the unit’s own level. Line: the movement. Triangles: cleanings, diamonds: failed tests, vertical lines: repairs and what else resets the baseline.',
  readingWeeks:
    'In this long record, before the last two years: the median of each week, with a line from its lowest to its highest value; the table has every day.',
  weekMedian: (value: string, values: number) =>
    `${value}, median of ${count(values, 'value', 'values')} from this day to the end of the week`,
  describe: (probe: string, state: string, values: number) =>
    `${probe}: ${state}, ${count(values, 'value', 'values')}.`,
  passesCaption: 'Passing tests with a heat-up time outside the unit’s own limits, this month',
  passesNote: 'Slow admission of steam can let a test pass that should have failed.',
  passHeads: { unit: 'Unit', date: 'Day', value: 'Heat-up time, s', limits: 'Own limits, s' },
  measured: {
    heading: 'How good the watch for drift is',
    intro: (version: string, stride: number) =>
      `The watch ran ${stride === 1 ? 'every day' : `every ${format.integer(stride)} days`} for two years at simulated sites (version ${version}), in which it is known what drifts. Sizes are in standard deviations of a single cycle’s value. A false call is a movement called where none was, in any probe of a unit. Lead is the time from the first call to the failure, 0 for drifts that were missed; half of the drifts had more.`,
    caption: 'The watch on simulated sites, with 95% intervals',
    /** What was true of the sites, by scenario; English is what the measurement wrote down. */
    scenario: (_scenario: string, says: string) => says,
    notAsked: 'not asked',
    heads: {
      scenario: 'What was true at the sites',
      falseCalls: 'False calls a unit and year',
      found: 'Drifts found before the failure',
      lead: 'Median lead',
      steps: 'Steps called a movement',
      intervals: '90% intervals of the days to the limit that held',
      teeth: 'Saw-teeth named',
    },
    days: (days: number) => count(Math.round(days), 'day', 'days'),
    share: (share: string) => `${share} of the drift`,
    span: (low: number, high: number) => `${figures(low)} to ${figures(high)}`,
    runLengths: (normal: { low: number; high: number }, heavy: { low: number; high: number }) =>
      `The charts that open the question are set to one false signal in 500 values. Simulated with autocorrelation of 0 to 0.6: ${format.integer(normal.low)} to ${format.integer(normal.high)} values in normal noise, ${format.integer(heavy.low)} to ${format.integer(heavy.high)} in noise with heavy tails.`,
    /** A rate a unit and year as what ten units see, with two figures. */
    calls: (rate: number, low: number, high: number) =>
      `${figures(rate, 2)} (${figures(low, 2)} to ${figures(high, 2)}) times a unit and year${rate > 0 ? `, in ten units about ${10 * rate < 1 ? `once in ${count(Math.round(12 / (10 * rate)), 'month', 'months')}` : `${format.twoFigures(10 * rate)} times a year`}` : ''}`,
    note: ({ calls, found, lead }: { calls: string; found: string; lead: string }) =>
      `On simulated sites without drift a movement is called by mistake ${calls}. Of drifts that end in a failure ${found} were called before it; half of all drifts were called ${lead} or more before.`,
    more: 'How that was measured',
  },
  unitNone: 'No probe of this unit has a value.',
};
export type DriftWords = typeof drift;
