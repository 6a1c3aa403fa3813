import { format } from './format.ts';

const { integer, count, list } = format;

/** Words about failures and aborts over time and by days since cleaning. */
export const series = {
  testsHeading: 'Failed air-removal tests over time',
  abortsHeading: 'Aborts over time',
  clockHeading: 'Failures by days since cleaning',
  testsIntro:
    'The first valid test of an operating day is its result. Points are failed day results per 100 test days at risk (with a result, not inside a failure episode, not out of service), so that an episode counts once; the band holds the limits within which months differ by chance alone (three sigma, p chart), frozen on the first months of the record.',
  abortsIntro:
    'Aborts of a class to which a dirty strainer, drain or chamber plausibly contributes, per 100 production cycles; the band holds the limits of a u chart, frozen on the first months of the record.',
  clockIntro:
    'Days at risk by calendar days since the last chamber cleaning that counts, each class with its exact interval. Classes with few days have wide intervals.',
  testsLeftOut: (n: {
    retests: number;
    afterRepair: number;
    qualification: number;
    invalid: number;
    notAtRisk: number;
    span: string;
  }) =>
    `Left out, ${n.span}: ${count(n.retests, 'retest', 'retests')}, ${count(n.afterRepair, 'test after a repair', 'tests after a repair')}, ${count(n.qualification, 'qualification run', 'qualification runs')}, ${count(n.invalid, 'invalid test', 'invalid tests')}; from the chart also ${count(n.notAtRisk, 'test day', 'test days')} inside a failure episode or out of service.`,
  abortsLeftOut: (n: {
    purges: number;
    earlyStops: number;
    open: number;
    testAborts: number;
    unrelated: number;
    unclassified: number;
    span: string;
  }) =>
    `Left out, ${n.span}: ${count(n.purges, 'drain purge', 'drain purges')} (stopped by the operator soon after a cleaning, to empty rinse water), ${count(n.earlyStops, 'unexplained early stop', 'unexplained early stops')}, ${count(n.open, 'cycle', 'cycles')} never seen complete, ${count(n.testAborts, 'abort', 'aborts')} of test and warm-up cycles; from the chart also ${count(n.unrelated, 'abort', 'aborts')} of unrelated causes and ${integer(n.unclassified)} unclassified.`,
  clockLeftOut: (n: { before: number; notAtRisk: number; span: string }) =>
    `Left out, ${n.span}: ${count(n.before, 'test day', 'test days')} before the first cleaning that counts, ${integer(n.notAtRisk)} inside an episode or out of service.`,
  failedTitle: (scope: string) => `Failed day results per 100 test days, ${scope}, by month`,
  abortsTitle: (scope: string) =>
    `Aborts plausibly about cleanliness per 100 production cycles, ${scope}, by month`,
  byUnit: 'each unit on one scale',
  clockFailedTitle: (scope: string) => `Failed day results by days since chamber cleaning, ${scope}`,
  clockAbortsTitle: (scope: string) =>
    `Aborts plausibly about cleanliness by days since chamber cleaning, ${scope}`,
  allUnits: 'all units',
  unit: (unit: string) => `unit ${unit}`,
  describe: (scope: string, what: string, points: string[], limits: string) =>
    `${scope}: ${what}. ${points.join('; ')}. ${limits}`,
  point: (month: string, events: number, of: number, noun: string) =>
    `${month} ${integer(events)} of ${integer(of)} ${noun}`,
  noEvents: (what: string, span: string) =>
    `No ${what} in ${span}. There is nothing to draw; the counts are in the table.`,
  noPoints: 'No month of the record has a day at risk.',
  noClock: 'No chamber cleaning that counts is on record, so there are no days since one.',
  limits: (from: string, to: string) =>
    `Limits come from ${from} to ${to} (pale band) and are carried forward.`,
  noLimits: 'Too few events for limits: fewer than three expected a month, so the points stand alone.',
  noLimitsUnits: (units: string[]) =>
    `Without a band: ${list(units)}, with fewer than three events expected a month.`,
  newestMonths: (months: number) =>
    `Shown are the newest ${months} months; the table has every month of the record.`,
  signals: (texts: string[]) => `Signals: ${list(texts)}.`,
  noSignals: 'No month lies outside the limits and there is no run of eight on one side.',
  signal: (scope: string, month: string, rule: string, side: string) =>
    `${scope}, ${month} (${rule}${side === '' ? '' : `, ${side}`})`,
  firstOfEpisode: (month: string, counted: number, failed: number) =>
    `Counted is the first failed day of each episode: in ${month} ${integer(counted)} of ${count(failed, 'failed day', 'failed days')} in all.`,
  readingMonth: 'Large dark point: the month under review.',
  readingInterval: (level: string) =>
    `Bars behind the points: each month’s exact ${level} interval, cut where the picture ends.`,
  readingSignal: 'Ring: a month that signals.',
  countTitle: (what: string, scope: string) => `${format.sentence(what)}, ${scope}, by month`,
  countReading: (level: string) =>
    `Counts, as there are too few events a month for a rate with limits (fewer than three expected). Dark bar: the month under review. Line on each bar: the month’s exact ${level} interval, as a count.`,
  countNumbers: 'Numbers above: the events of each month.',

  testsCaption: (month: string, span: string) => `Air-removal tests, ${month} and ${span}`,
  cyclesCaption: (month: string, span: string) => `Production cycles and aborts, ${month} and ${span}`,
  clockCaption: 'Failures and aborts by days since chamber cleaning, all units',
  ranking: {
    title: (span: string) => `Failed day results by unit, highest first, ${span}`,
    reading:
      'Ring: as counted. Point and line: drawn toward all units together, as far as the unit has few days, with its interval. Bands: 95% (darker) and 99.8% (paler) of units that are like all others lie inside.',
    describe: (unit: string, counts: string, shrunken: number) =>
      `${unit}: ${counts} test days, drawn toward all units ${format.twoFigures(shrunken)} per 100.`,
  },
  heads: {
    unit: 'Unit',
    failedMonth: 'Failed day results, month',
    failedRecord: 'Failed day results, record',
    interval: (level: string) => `${level} interval`,
    episodes: 'Episodes begun, month',
    retests: 'Retests, month',
    missing: 'Days with test missing, month',
    late: 'Days with test late, month',
    abortsMonth: 'Aborts, month',
    abortsRecord: 'Aborts, record',
    classes: 'Aborts by class, month',
    purges: 'Purges, month',
    earlyStops: 'Early stops, month',
    days: 'Days since cleaning',
    failed: 'Failed day results',
    aborts: 'Aborts, cleanliness',
  },
  noneAtRisk: 'no test day',
};
export type SeriesWords = typeof series;
