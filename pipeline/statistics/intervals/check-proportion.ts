/**
 * @throws RangeError where these are no events out of trials, or the level is outside (0, 1): a fault of the
 * caller.
 */
export function checkProportion(events: number, trials: number, level: number, caller: string): void {
  for (const [name, value] of [
    ['events', events],
    ['trials', trials],
  ] as const) {
    if (!Number.isSafeInteger(value) || value < 0) {
      throw new RangeError(`${caller}: ${name} must be a whole number of at least 0, found ${value}`);
    }
  }
  if (events > trials)
    throw new RangeError(`${caller}: events must not exceed trials, found ${events} of ${trials}`);
  checkLevel(level, caller);
}

/** @throws RangeError where the level is outside (0, 1). */
export function checkLevel(level: number, caller: string): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`${caller}: level must lie in (0, 1), found ${level}`);
}
