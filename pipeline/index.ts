/**
 * The public library: what the commands do, as functions for programs and notebooks. Each calls what the commands call, so that a notebook's number is
 * the report's number. Names follow semantic versioning; what is not exported here may change at any time.
 *
 * @packageDocumentation
 */
export type { ComparisonFamily } from './findings/comparisons/comparison-family.ts';
export type { Measurement } from './findings/comparisons/measure.ts';
export {
  type Stratified,
  type Stratum,
  stratify,
  stratifyBy,
  sumSide,
} from './findings/comparisons/strata.ts';
export { type StratifiedRatio, stratifiedRatio } from './findings/comparisons/stratified-ratio.ts';
export type { Drift, ProbeDrift } from './findings/drift/drift-schema.ts';
export type { IntervalCase } from './findings/interval/interval-schema.ts';
export type { Comparison, Exposure, OutcomeName, Review, Verdict } from './findings/review-schema.ts';
export type { FileRead, Problem, Reading } from './ingest/reading.ts';
export { type Calibration, calibration } from './library/calibration.ts';
export { compare, compareBy, interval, type Panel, panel, review, watch } from './library/questions.ts';
export { readRecords, readSite } from './library/read.ts';
export type { Records } from './site/records.ts';
export type { Site } from './site/site.ts';
export { clopperPearsonInterval } from './statistics/intervals/clopper-pearson-interval.ts';
export { benjaminiHochberg } from './statistics/multiplicity/benjamini-hochberg.ts';
export { type CircularShiftResult, circularShiftTest } from './statistics/permutation/circular-shift-test.ts';
export type { UnitDay } from './transform/panel/unit-day.ts';
export type { UnitHistory } from './transform/unit-history.ts';
export { UserError } from './user-error.ts';
export { VERSION } from './version.ts';
