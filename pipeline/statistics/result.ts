/**
 * Every method returns a whole result or says why it can't: never NaN, never a silent 0.
 *
 * `Computed` results carry the method's name, so that a table can print which convention was used.
 */
export type Outcome<T> = (T & { computable: true; method: string }) | NotComputable;

/** A stated outcome: the method does not apply to these numbers, for this reason (plain words, one sentence). */
export interface NotComputable {
  computable: false;
  method: string;
  reason: string;
}

/** A two-sided interval; `high` may be Infinity and `low` 0 where the data bound only one side. */
export interface Interval {
  low: number;
  high: number;
  level: number;
}

export function computed<T extends object>(
  method: string,
  result: T,
): T & { computable: true; method: string } {
  return { computable: true, method, ...result };
}

export function notComputable(method: string, reason: string): NotComputable {
  return { computable: false, method, reason };
}
