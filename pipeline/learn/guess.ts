/**
 * How sure a proposal is. `certain`: the data or the file's own words prove it. `likely`: something speaks for it and nothing against. `open`: nobody
 * can tell from the files; it is asked, and never decided silently.
 */
export type Confidence = 'certain' | 'likely' | 'open';

/** A proposal: its value, what else it could be, and why. */
export interface Guess<Value> {
  value: Value | undefined;
  options: readonly Value[];
  confidence: Confidence;
  why: string;
}

export const certain = <Value>(value: Value, why: string): Guess<Value> => ({
  value,
  options: [value],
  confidence: 'certain',
  why,
});

export const likely = <Value>(
  value: Value,
  why: string,
  options: readonly Value[] = [value],
): Guess<Value> => ({
  value,
  options,
  confidence: 'likely',
  why,
});

export const open = <Value>(options: readonly Value[], why: string): Guess<Value> => ({
  value: undefined,
  options,
  confidence: 'open',
  why,
});

const ORDER: readonly Confidence[] = ['certain', 'likely', 'open'];

/** The least sure of several. */
export const leastSure = (...all: readonly Confidence[]): Confidence =>
  all.reduce((a, b) => (ORDER.indexOf(b) > ORDER.indexOf(a) ? b : a), 'certain');
