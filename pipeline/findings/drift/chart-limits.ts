/** Limits of the two charts at one autocorrelation. */
export interface ChartLimits {
  autocorrelation: number;
  lambda: number;
  /** L, in standard deviations of the EWMA. */
  ewma: number;
  allowance: number;
  /** h, in standard deviations of a value. */
  cusum: number;
}

/** Mean number of values between two false signals of either chart, in control: about two years of days of use. */
export const IN_CONTROL_RUN_LENGTH = 500;
export const EWMA_LAMBDA = 0.1;
export const CUSUM_ALLOWANCE = 0.25;

/**
 * Limits with this run length at autocorrelations 0, 0.1, ... 0.8, from `ewmaLimitForRunLength` (time-varying limits) and `cusumLimitForRunLength`; kept here since
 * working them out takes seconds each. A test works them out again.
 */
const LIMITS: readonly (readonly [ewma: number, cusum: number])[] = [
  [2.8239, 8.5851],
  [2.8006, 9.9215],
  [2.7757, 11.4995],
  [2.7483, 13.4034],
  [2.7176, 15.7648],
  [2.6817, 18.8021],
  [2.6384, 22.9105],
  [2.5823, 28.8973],
  [2.5021, 38.7624],
];

/** The limits for an autocorrelation, read at the next tenth above it (0.8 at most). */
export function chartLimits(autocorrelation: number): ChartLimits {
  const tenth = Math.min(LIMITS.length - 1, Math.max(0, Math.ceil(autocorrelation * 10 - 1e-9)));
  const [ewma, cusum] = LIMITS[tenth]!;
  return {
    autocorrelation: tenth / 10,
    lambda: EWMA_LAMBDA,
    ewma,
    allowance: CUSUM_ALLOWANCE,
    cusum,
  };
}
