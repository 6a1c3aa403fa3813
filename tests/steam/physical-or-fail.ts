import type { SteamOutcome } from '../../pipeline/steam/outcome.ts';

/** The computed quantity, or a failed test that shows the reason. */
export function physicalOrFail<T>(outcome: SteamOutcome<T>): T {
  if (!outcome.computable) throw new Error(`not computable: ${outcome.reason}`);
  return outcome;
}
