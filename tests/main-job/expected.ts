import { readFileSync } from 'node:fs';
import type { Comparison } from '../../pipeline/findings/review-schema.ts';
import type { UnitDay } from '../../pipeline/transform/panel/unit-day.ts';

/** What recompute.R writes: its own reading of the exports, and what R's functions make of it. Not finite is null. */
export interface Expected {
  made_with: { r: string; survival: string };
  settings: { until: string } & Record<string, number | string>;
  /** Arrangements that R drew for each shift test. */
  draws: number;
  units: Record<string, number | string>[];
  comparisons: ExpectedComparison[];
  conditional_logistic: (
    | { unit: string | null; days: number; failed: number; finite: false }
    | ({ unit: string | null; days: number; failed: number; finite: true } & ExpectedFit)
  )[];
  /** Of two exposures each, in the order of `doses`. */
  poisson: {
    ratio: number[];
    wald: { low: number[]; high: number[] };
    p: number[];
    robust: { low: number[]; high: number[] };
    robust_p: number[];
    units: number;
  };
  doses: { exposure: string; days: number[]; failed: number[]; statistic: number; p: number }[];
}

export interface ExpectedFit {
  log_likelihood: number;
  null_log_likelihood: number;
  estimate: number[];
  standard_error: number[];
  p: number[];
  covariance: number;
  likelihood_ratio: { chi_square: number; p: number };
  score: { chi_square: number; p: number };
  wald: { chi_square: number; p: number };
}

export interface ExpectedComparison
  extends Pick<
    Comparison,
    'id' | 'exposed' | 'unexposed' | 'strata' | 'ratio' | 'low' | 'high' | 'p_conditional' | 'p' | 'shifts'
  > {
  not_at_risk: number;
  exposure_unknown: number;
  unit_not_comparable: number;
  kind: 'exact' | 'Mantel-Haenszel' | 'not computable';
  /** By a function of R's own, where there is one. */
  by_r: { by: string; ratio: number | null; low: number | null; high: number | null; p: number } | null;
  drawn: boolean;
  p_error: number;
  variance_inflation: number | null;
  smallest_detectable_ratio: number | null;
  control: Comparison['control'] & { p_error: number };
  adjusted_p: number | null;
  adjusted_p_least: number | null;
  adjusted_p_most: number | null;
  beside?: Comparison['beside'][number];
  verdict: string;
  verdict_all_records?: string;
}

export function readExpected(folder: URL): Expected {
  return JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) as Expected;
}

/** Columns of expected-days.csv, named as those of the panel. */
export const DAY_COLUMNS = [
  'unit',
  'day',
  'era',
  'stratum',
  'test_result',
  'inside_episode',
  'out_of_service',
  'at_risk',
  'failed',
  'production_cycles',
  'cleanliness_aborts',
  'unrelated_aborts',
  'unclassified_aborts',
  'purges',
  'early_stops',
  'chamber_overdue',
  'chamber_days_past_due',
  'chamber_overdue_all_records',
  'strainers_missed',
] as const satisfies (keyof UnitDay)[];

/** Rows of expected-days.csv: one a unit and day of use; blank is null. */
export function readDays(folder: URL): (string | number | null)[][] {
  const [header, ...lines] = readFileSync(new URL('expected-days.csv', folder), 'utf8').trimEnd().split('\n');
  if (header !== DAY_COLUMNS.join(','))
    throw new Error(`expected-days.csv: columns must be ${DAY_COLUMNS.join(',')}`);
  return lines.map((line) =>
    line.split(',').map((text) => (text === '' ? null : /^\d+$/.test(text) ? Number(text) : text)),
  );
}
