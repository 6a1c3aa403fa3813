/** Events out of trials in two groups, within one stratum. */
export interface TwoByTwo {
  exposedEvents: number;
  exposedTotal: number;
  unexposedEvents: number;
  unexposedTotal: number;
}

/**
 * @throws RangeError where a number is not whole, is negative, or events exceed their total: a fault of the
 * caller.
 */
export function checkTwoByTwo(table: TwoByTwo, caller: string): void {
  for (const [name, value] of Object.entries(table)) {
    if (!Number.isSafeInteger(value) || value < 0) {
      throw new RangeError(`${caller}: ${name} must be a whole number of at least 0, found ${value}`);
    }
  }
  if (table.exposedEvents > table.exposedTotal || table.unexposedEvents > table.unexposedTotal) {
    throw new RangeError(`${caller}: events must not exceed their total, found ${JSON.stringify(table)}`);
  }
}

/** A table says something about the odds ratio only if both groups, events and non-events all occur in it. */
export function isInformative(table: TwoByTwo): boolean {
  const events = table.exposedEvents + table.unexposedEvents;
  const total = table.exposedTotal + table.unexposedTotal;
  return table.exposedTotal > 0 && table.unexposedTotal > 0 && events > 0 && events < total;
}
