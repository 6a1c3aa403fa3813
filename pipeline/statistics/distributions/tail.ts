/**
 * Which tail of a distribution is meant. Each tail is computed by itself, never as 1 minus the other, so that
 * a probability of 1e-12 keeps its digits on either side.
 */
export type Tail = 'lower' | 'upper';
