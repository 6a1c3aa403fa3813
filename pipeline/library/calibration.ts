import {
  DRIFT_OPERATING_CHARACTERISTICS,
  type DriftOperatingCharacteristics,
} from '../findings/drift/operating-characteristics.ts';
import { MEASURED, type Measured } from '../findings/interval/measured.ts';
import {
  OPERATING_CHARACTERISTICS,
  type OperatingCharacteristics,
} from '../findings/operating-characteristics.ts';

/** How often the answers of this version were wrong on simulated fleets; null where it was not measured. */
export interface Calibration {
  comparisons: OperatingCharacteristics | null;
  drift: DriftOperatingCharacteristics | null;
  interval: Measured | null;
}

/**
 * The measurements that are kept with this version: verdicts on simulated fleets, the drift watch on simulated sites, the case for an interval on fleets of
 * known shape. Shares have exact 95 % intervals (Clopper-Pearson).
 *
 * @example const { comparisons: errorRates } = calibration();
 */
export function calibration(): Calibration {
  return {
    comparisons: OPERATING_CHARACTERISTICS,
    drift: DRIFT_OPERATING_CHARACTERISTICS,
    interval: MEASURED,
  };
}
