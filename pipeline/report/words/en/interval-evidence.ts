import type { Clock, ClockOutcome } from '../../../findings/interval/clocks.ts';
import type { SpellEnd } from '../../../findings/interval/spells.ts';
import { format } from './format.ts';
import { reasonText } from './reasons.ts';

const { integer, figures, list, twoFigures, pValue } = format;

/** Words of the evidence behind the argument. */
export const intervalEvidence = {
  title: (month: string) => `Cleaning interval, ${month}`,
  heading: 'The case for a cleaning interval',
  sections: {
    argument: 'The argument',
    clock: 'Failures and aborts since cleaning',
    shape: 'Does the risk rise with the clock?',
    candidates: 'What each interval would take',
    units: 'Units and sites',
    plan: 'When to clean',
    surfaces: 'Inspections and water',
    inputs: 'Inputs and method',
  },
  clockTitle: {
    calendar_days: 'Days since the last cleaning that starts a clock',
    days_of_use: 'Days of use since the last cleaning that starts a clock',
    cycles: 'Cycles since the last cleaning that starts a clock',
  } satisfies Record<Clock, string>,
  outcome: {
    failed_test: 'Failed tests',
    cleanliness_abort: 'Aborts plausibly about cleanliness',
  } satisfies Record<ClockOutcome, string>,
  clockFailures: 'Failed tests by time since cleaning, all units',
  clockAborts: 'Aborts plausibly about cleanliness by time since cleaning, all units',
  clockReading:
    'Point: the record in this class of the clock, on its exact interval. Short bar: what the fit expects of the same days.',
  clockDescription: (rows: string[], what: string) => `${what}. ${rows.join(' ')}`,
  clockPoint: (name: string, events: number, of: number, fitted: number | null) =>
    `${name}: ${integer(events)} of ${integer(of)}${fitted === null ? '' : `, fit ${twoFigures(fitted)}`}.`,
  failuresAxis: 'Failed tests per 100 test days at risk',
  abortsAxis: 'Aborts per 100 production cycles',
  className: (from: number, to: number | null) =>
    to === null ? `${from} on` : from === to ? `${from}` : `${from} to ${to}`,
  of: (events: number, of: number) => `${integer(events)} of ${integer(of)}`,
  none: 'none at risk',
  p: (p: string) => `p ${p}`,
  /** Spans by scenario of the measurement, as it was written down with it. */
  scenario: (_name: string, says: string) => says,
  scenarioName: (name: string) => name,
  cumulativeTitle: 'Failed tests of a unit since cleaning, summed up',
  cumulativeAxis: 'Failed tests of a unit, sum',
  cumulativeReading:
    'Steps: the record without a model (Nelson-Aalen), with its interval. Line: the fit. A straight line means a constant risk, one that bends upward a rising one.',
  cumulativeDescription: (at: string, observed: string, low: string, high: string, fitted: string | null) =>
    `Up to ${at}: ${observed} failed tests of a unit (${low} to ${high})${fitted === null ? '' : `, by the fit ${fitted}`}.`,
  observedName: 'record',
  fittedName: 'fit',
  fitCheck: (p: number | null, reason: string | null) =>
    p === null
      ? `Fit against classes: not checked. ${reason === null ? '' : reasonText(reason)}`.trim()
      : `Fit against the classes of the clock: chi-square p ${pValue(p)}${p < 0.05 ? '. The fit does not describe the classes well; read them rather than the curve.' : '.'}`,

  clockCaption: 'Failures and aborts by clock, with exact intervals',
  clockHeads: {
    scope: 'Units',
    from: 'Clock',
    failures: 'Failed tests of days at risk',
    fitted: 'By the fit',
    aborts: 'Aborts of production cycles',
    fittedAborts: 'By the fit',
  },
  fleet: 'All units',
  sites: 'By site',
  perUnit: 'Each unit by clock',
  shapesCaption: 'Shape of the risk on each clock',
  shapesHeads: {
    outcome: 'Outcome',
    clock: 'Clock',
    reading: 'Contradicted records',
    events: 'Events',
    chances: 'Days or cycles',
    shape: (level: string) => `Shape (${level} interval)`,
    p: 'p of shape 1',
    detectable: 'Smallest shape it could show',
    spread: 'Spread of units',
  },
  readings: { site: 'by the site’s rule', all_records: 'counted as done' },
  shapesNote:
    'Shape 1: the risk does not depend on the clock. Above 1 it rises. Profile-likelihood intervals and likelihood-ratio test, each unit between repairs with its own level (gamma frailty).',
  robust: (low: string, high: string, drawn: string) =>
    `Bootstrap interval of the shape of failed tests, ${drawn} drawn anew: ${low} to ${high}.`,
  drawn: { unit_eras: 'units between repairs', spells: 'spells inside each unit' },
  spellEnds: (parts: string[]) => `Spells ended by: ${parts.join(', ')}.`,
  spellEnd: {
    routine_cleaning: 'routine cleaning',
    reactive_cleaning: 'reactive cleaning',
    era_end: 'repair or another event that resets the baseline',
    log_gap: 'a gap in the cleaning log',
    record_end: 'the end of the record',
  } satisfies Record<SpellEnd, string>,
  medianLength: (length: string) => `Median time between cleanings: ${length}.`,
  afterFailure: {
    clock_goes_on: (followed: number, of: number) =>
      `After a failed test the clock is taken to go on (${integer(followed)} of ${integer(of)} failures were followed by a reactive cleaning).`,
    cleaned: (followed: number, of: number) =>
      `A failed test is taken to bring a cleaning, which starts the clock anew (${integer(followed)} of ${integer(of)} failures were followed by a reactive cleaning).`,
  },

  curveTitle: { hours: 'Hours out of use a year, by interval', cost: 'Cost a year, by interval' },
  curveAxis: { hours: 'Hours out of use a year', cost: 'Cost a year' },
  curveReading: (best: string, low: string, high: string) =>
    `Line with its bootstrap interval. Lowest at ${best}; the grey stretch from ${low} to ${high} is the range: within 5% of the lowest, or lowest in the middle 90% of the bootstrap samples.`,
  curveDescription: (points: string[]) => `Expected of a year: ${points.join('; ')}.`,
  inForceMark: 'stated',
  candidatesCaption: 'Expected of a year at each interval, units in use together',
  candidateHeads: {
    interval: 'Interval',
    cleanings: 'Cleanings',
    failures: 'Failed tests',
    aborts: 'Aborts',
    hours: 'Hours out of use',
    labour: 'Labour, hours',
    cleaner: 'Cleaner, litres',
    cleanerByDefault: 'Cleaner, litres (by a default dose)',
    cost: 'Cost',
    breakEven: 'A failure must take',
  },
  standing: {
    compared: '',
    beyond_record: 'longer than the record shows',
    beyond_instructions: 'beyond the instructions for use',
    limit_not_given: 'limit by the instructions not given',
  },
  candidatesNote:
    'Estimate and interval of the bootstrap. Hours out of use hold cool-down, work, warm-up and test, the time after failed tests, and the time lost by aborts; cool-down at night counts as well. A failure must take: the hours (cost) of a failed test from which the shorter of this interval and the stated one pays, with its interval.',
  leftOut: (intervals: string, why: string) => `Not compared: ${intervals} (${why}).`,
  measuredCaption: (made: string, version: string) =>
    `How often the case was right on simulated fleets (measured ${made}, version ${version})`,
  measuredHeads: {
    scenario: 'Simulated fleets',
    says: 'What is true of them',
    shape: 'True shape',
    failures: 'Failures in the record',
    supported: 'Rise called supported',
    shapeHeld: 'Interval holds the shape',
    rangeHeld: 'Range holds the best interval',
  },
  notMeasured: 'How often such a case is right has not been measured with this version.',
  noCandidates: 'Nothing can be compared, for the reason named in the argument.',
  sensitivityCaption: 'Best interval when one input alone is changed',
  sensitivityHeads: { input: 'Input', values: 'From and to', best: 'Best interval' },
  sensitivityNote: 'Each input halved and doubled; the shape at the ends of its interval.',

  levelsCaption: 'Units and sites, drawn to the mean',
  levelHeads: {
    scope: 'Unit or site',
    failures: 'Failed tests of days at risk',
    factor: 'Level of failed tests (interval)',
    aborts: 'Aborts of production cycles',
    abortFactor: 'Level of aborts (interval)',
    shape: 'Own shape (interval), adjusted p',
    shrunk: 'Shape drawn to the mean',
    best: 'Best interval',
  },
  levelsNote:
    'Level: failures over what the fit expects at the same clocks, drawn to the mean of all as far as there are few (gamma-Poisson); 1 is the mean. Own shape: from the unit’s failures alone, p adjusted over the units by Benjamini and Hochberg; drawn to the mean on the log scale (normal-normal). The best interval is for the unit’s own level and drawn shape.',

  appearanceTitle: 'Appearance of the chambers by days since cleaning',
  appearanceAxis: 'Inspections',
  appearanceKey: 'Appearance, 0 clean to 4',
  appearanceReading: (mean: string[]) => `Mean appearance by class: ${mean.join(', ')}.`,
  noInspections:
    'No inspection is recorded. Appearance by days since cleaning learns faster than failures do.',
  trend: (gamma: string, p: string, units: number) =>
    `Within units (${integer(units)}): of pairs of inspections that differ in both, the share worse at the later clock less the share better is ${gamma}; Kendall test p ${p}.`,
  residueTrend: (p: number | null, reason: string | null) =>
    p === null
      ? `Residue after rinsing by clock: ${reason === null ? '' : reasonText(reason)}`
      : `Residue after rinsing by clock: Cochran-Armitage p ${pValue(p)}.`,
  waterCaption: 'Water and condensate of the last year beside the limits',
  waterHeads: {
    point: 'Sampling point',
    determinand: 'Determinand',
    last: 'Last value',
    out: 'Out of limits',
    limit: 'Limit',
    edition: 'From',
  },
  /** What was measured, and where its limit comes from, as the table of limits names them. */
  determinand: (name: string) => name,
  edition: (name: string) => name,
  noWater: 'No water sample is recorded in the last year.',
  waterStatus: {
    site: 'limit of the site',
    verified: 'seen in a public reproduction',
    unverified: 'example limit, not checked against the standard: compare with the edition in force',
  },
  notCompared: {
    no_limit: 'no limit',
    other_measure: 'limit is in another unit of measure',
    example_limit: 'example only',
  },
  limit: (low: number | null, high: number | null) =>
    low !== null && high !== null
      ? `${figures(low, 6)} to ${figures(high, 6)}`
      : high !== null
        ? `at most ${figures(high, 6)}`
        : low === null
          ? ''
          : `at least ${figures(low, 6)}`,
  depositsHeading: 'Deposits that rinsing does not take away',
  deposit: (n: { unit: string; residue: number; of: number; date: string }) =>
    `Unit ${n.unit}: residue after rinsing in ${integer(n.residue)} of the last ${integer(n.of)} inspections that say so (last ${n.date}).`,
  depositAdvice: {
    water_and_professional: (out: string) =>
      `Water is out of limits (${out}). More of the same cleaning will not help against what the water brings: have the water analysed and the chamber cleaned professionally.`,
    sample_water:
      'No water sample reaches this unit in the record: have the water sampled before cleaning more often.',
    compare_water:
      'Its water was sampled, but no limit that was checked stands beside the values: compare them with the edition in force before cleaning more often.',
    look_again: (within: string[], examples: string[]) =>
      `The water is within the limits for ${list(within)}${examples.length === 0 ? '' : `; for ${list(examples)} there are example limits only, from which nothing follows`}. Look at rinsing, dose and contact time as the label states them.`,
  },
  noDeposits: 'No unit has residue after rinsing in two or more of its last four inspections.',
};
export type IntervalEvidenceWords = typeof intervalEvidence;
