/** The words that records and results may hold. Each list is closed; a raw word is mapped onto one of them or is a problem. */

export const RECORD_KINDS = [
  'cycles',
  'air_removal_tests',
  'leak_tests',
  'cleanings',
  'service',
  'inspections',
  'water',
  'actions',
] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

export const CYCLE_KINDS = [
  'warm_up',
  'air_removal_test',
  'leak_test',
  'production',
  'liquids',
  'qualification',
  'other',
] as const;
export type CycleKind = (typeof CYCLE_KINDS)[number];

/** `failed`: ran to its end but the control reports it as not in order; counted with the aborts. `running`: not over when exported. */
export const CYCLE_OUTCOMES = ['completed', 'aborted', 'failed', 'running'] as const;
export type CycleOutcome = (typeof CYCLE_OUTCOMES)[number];

/** `invalid`: the test itself was not in order (wrong pack, not read in time); it is kept, shown and not counted. */
export const TEST_RESULTS = ['pass', 'fail', 'invalid'] as const;
export type TestResult = (typeof TEST_RESULTS)[number];

export const CLEANING_TASKS = ['drain_strainer', 'drain_flush', 'chamber', 'professional'] as const;
export type CleaningTask = (typeof CLEANING_TASKS)[number];

/** What a cleaning record says of itself. Blank is none of these. */
export const CLEANING_STATES = ['done', 'missed', 'not_due'] as const;
export type CleaningState = (typeof CLEANING_STATES)[number];

export const CLEANING_REASONS = ['routine', 'reactive'] as const;
export type CleaningReason = (typeof CLEANING_REASONS)[number];

export const SERVICE_KINDS = [
  'repair',
  'controller_replaced',
  'professional_cleaning',
  'out_of_service',
  'maintenance',
] as const;
export type ServiceKind = (typeof SERVICE_KINDS)[number];

/** What the list of actions says of one. Blank: done where it has a day on which it was done, else open. */
export const ACTION_STATES = ['open', 'done', 'dropped'] as const;

export const ABORT_CLASSES = [
  'slow_evacuation',
  'slow_exhaust',
  'water_in_chamber',
  'temperature_low',
  'air_detector',
  'come_up_slow',
  'utility',
  'door',
  'operator',
  'electronics',
  'unclassified',
] as const;
export type AbortClass = (typeof ABORT_CLASSES)[number];

/** Abort classes to which a dirty strainer, drain or chamber plausibly contributes (common practice and physics, no single source). */
export const CLEANLINESS_CLASSES: readonly AbortClass[] = [
  'slow_evacuation',
  'slow_exhaust',
  'water_in_chamber',
  'temperature_low',
  'air_detector',
  'come_up_slow',
];

/** Abort classes that cleaning can't move: the control outcome of the comparisons. */
export const UNRELATED_CLASSES: readonly AbortClass[] = ['utility', 'door', 'operator', 'electronics'];
