import type { Cause } from '../../../findings/drift/cause-pattern.ts';
import type { Probe } from '../../../findings/drift/probes.ts';
import type { DUE_STATES, Exposure, OutcomeName, Verdict } from '../../../findings/review-schema.ts';
import type { AbortClass, CleaningTask, CycleKind, RecordKind } from '../../../site/vocabulary.ts';

/** Names of things that the data holds as codes. */
export const terms = {
  probe: {
    evacuation_time: 'evacuation time',
    heat_up_time: 'heat-up time',
    exhaust_time: 'exhaust time',
    leak_rate: 'leak rate',
    exposure_spread: 'temperature spread in exposure',
    saturation_residual: 'temperature against saturated steam',
  } satisfies Record<Probe, string>,
  /** Cycles that a probe is measured in. */
  cyclesOfProbe: (probe: Probe): string => (probe === 'leak_rate' ? 'leak tests' : 'empty daily cycles'),
  /** Causes of a drift, by the name that the findings give them. */
  cause: {
    'clogged strainer or drain': 'clogged strainer or drain',
    'door gasket or valve leak': 'door gasket or valve leak',
    'pump or ejector wear, or warm or weak water': 'pump or ejector wear, or warm or weak water',
    'chamber or jacket scale': 'chamber or jacket scale',
    'poor steam (wet or with gases)': 'poor steam (wet or with gases)',
  } satisfies Record<Cause, string>,
  /** One letter for each state of a due task, where a picture has no room for the word; done and what is not due have none. */
  dueLetter: {
    done: '',
    done_late: 'L',
    missed: 'M',
    not_recorded: '?',
    contradicted: 'C',
    open: 'o',
  } satisfies Record<(typeof DUE_STATES)[number], string>,
  task: {
    drain_strainer: 'Drain strainer',
    drain_flush: 'Drain flush',
    chamber: 'Chamber cleaning',
    professional: 'Professional cleaning',
  } satisfies Record<CleaningTask, string>,
  dueState: {
    done: 'done',
    done_late: 'done late',
    missed: 'missed',
    not_recorded: 'not recorded',
    contradicted: 'contradicted',
    open: 'open',
  } satisfies Record<(typeof DUE_STATES)[number], string>,
  dueStateMeans: {
    done: 'done in time',
    done_late: 'done after the day’s first cycle, or past the grace',
    missed: 'due and not done',
    not_recorded: 'due, with no record, and no rule of the site that says how to read a blank',
    contradicted: 'the only record is one that the cycle log contradicts',
    open: 'due at the end of the month and still within its grace',
  } satisfies Record<(typeof DUE_STATES)[number], string>,
  notDue: 'in use, nothing due',
  idle: 'blank: no day of use, so nothing was due',
  verdict: {
    shown: 'shown',
    suggested: 'suggested',
    not_shown: 'not shown',
    cannot_tell: 'cannot tell',
    not_comparable: 'not comparable',
  } satisfies Record<Verdict, string>,
  exposure: {
    chamber_overdue: 'chamber overdue',
    strainer_missed: 'strainer missed',
    flush_missed: 'drain flush missed',
  } satisfies Record<Exposure, string>,
  exposureMeans: {
    chamber_overdue: 'on days that begin with the chamber past due',
    strainer_missed: 'on days after a strainer cleaning was missed in the last days of use',
    flush_missed: 'on days after the last drain flush due was missed',
  } satisfies Record<Exposure, string>,
  otherwise: {
    chamber_overdue: 'chamber not overdue',
    strainer_missed: 'no strainer missed',
    flush_missed: 'no drain flush missed',
  } satisfies Record<Exposure, string>,
  outcome: {
    failed_test: 'failed air-removal test',
    cleanliness_abort: 'abort plausibly about cleanliness',
  } satisfies Record<OutcomeName, string>,
  outcomes: {
    failed_test: 'failed air-removal tests',
    cleanliness_abort: 'aborts plausibly about cleanliness',
  } satisfies Record<OutcomeName, string>,
  trials: {
    failed_test: 'test days',
    cleanliness_abort: 'production cycles',
  } satisfies Record<OutcomeName, string>,
  ratioKind: { odds_ratio: 'odds ratio', rate_ratio: 'rate ratio' },
  cycleKind: {
    warm_up: 'warm-up',
    air_removal_test: 'air-removal test',
    leak_test: 'leak test',
    production: 'production',
    liquids: 'liquids',
    qualification: 'qualification',
    other: 'other',
  } satisfies Record<CycleKind, string>,
  abortClass: {
    slow_evacuation: 'slow evacuation',
    slow_exhaust: 'slow exhaust',
    water_in_chamber: 'water in chamber',
    temperature_low: 'temperature low',
    air_detector: 'air detector',
    come_up_slow: 'come-up slow',
    utility: 'utility (steam, water, air, power)',
    door: 'door',
    operator: 'operator',
    electronics: 'electronics',
    unclassified: 'unclassified',
  } satisfies Record<AbortClass, string>,
  recordKind: {
    cycles: 'cycles',
    air_removal_tests: 'air-removal tests',
    leak_tests: 'leak tests',
    cleanings: 'cleanings',
    service: 'service',
    inspections: 'inspections',
    water: 'water',
    actions: 'actions',
  } satisfies Record<RecordKind, string>,
  era: {
    repair: 'repair',
    controller_replaced: 'controller replaced',
    professional_cleaning: 'professional cleaning',
    maintenance: 'maintenance',
    out_of_service: 'out of service',
  } as Record<string, string>,
  /** Names that the summary table and the axes use. */
  fleet: 'All units',
  fleetInText: 'all units together',
  countedIn: {
    calendar_days: 'calendar days',
    days_of_use: 'days of use',
    cycles: 'cycles',
  } as Record<string, string>,
  rule: {
    'beyond-three-sigma': 'beyond the limits',
    'eight-on-one-side': 'eight in a row on one side',
  } as Record<string, string>,
  side: { high: 'high', low: 'low', both: '' } as Record<string, string>,
  costs: {
    file: 'the file',
    row: 'the row',
    cell: 'one optional cell',
    review: 'its place in the review',
  } as Record<string, string>,
  requalification: {
    complete: 'complete',
    incomplete: 'incomplete',
    no_production_yet: 'no production yet',
    not_judged: 'can’t be judged (date only)',
  } as Record<string, string>,
  standing: {
    completed: 'completed',
    abort: 'aborted',
    purge: 'drain purge',
    early_stop: 'early stop',
    open: 'open',
  } as Record<string, string>,
};
export type Terms = typeof terms;
