/** Events over exposure time (or over any number of chances to fail) in two groups, within one stratum. */
export interface RateStratum {
  exposedEvents: number;
  exposedTime: number;
  unexposedEvents: number;
  unexposedTime: number;
}

/**
 * @throws RangeError where events are not whole or a number is negative, or events occur in no time: a fault
 * of the caller.
 */
export function checkRateStratum(stratum: RateStratum, caller: string): void {
  for (const name of ['exposedEvents', 'unexposedEvents'] as const) {
    if (!Number.isSafeInteger(stratum[name]) || stratum[name] < 0) {
      throw new RangeError(`${caller}: ${name} must be a whole number of at least 0, found ${stratum[name]}`);
    }
  }
  for (const name of ['exposedTime', 'unexposedTime'] as const) {
    if (!(stratum[name] >= 0 && stratum[name] < Number.POSITIVE_INFINITY)) {
      throw new RangeError(
        `${caller}: ${name} must be a finite number of at least 0, found ${stratum[name]}`,
      );
    }
  }
  if (
    (stratum.exposedTime === 0 && stratum.exposedEvents > 0) ||
    (stratum.unexposedTime === 0 && stratum.unexposedEvents > 0)
  ) {
    throw new RangeError(`${caller}: events must not occur in no time, found ${JSON.stringify(stratum)}`);
  }
}

/** A stratum says something about the rate ratio only if both groups have time and events occur. */
export function isInformative(stratum: RateStratum): boolean {
  return (
    stratum.exposedTime > 0 &&
    stratum.unexposedTime > 0 &&
    stratum.exposedEvents + stratum.unexposedEvents > 0
  );
}
