/**
 * A physical quantity, or a stated reason why there is none: never NaN. Same shape as the outcome of the
 * statistics, which this earlier stage doesn't import.
 */
export type SteamOutcome<T> = (T & { computable: true; method: string }) | OutsideValidity;

export interface OutsideValidity {
  computable: false;
  method: string;
  reason: string;
}
