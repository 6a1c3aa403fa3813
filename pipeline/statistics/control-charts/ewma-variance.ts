/**
 * Variance of an EWMA of AR(1) values, exact at each step from its start, in units of the variance of a
 * value.
 *
 * The EWMA starts at the in-control mean with nothing known; values are stationary with correlation
 * `autocorrelation` between neighbours. With Z_i = (1 - lambda) Z_(i-1) + lambda x_i, both Var(Z_i) and
 * Cov(Z_i, x_i) follow a two-line recursion. Without autocorrelation it is lambda/(2 - lambda) [1 - (1 -
 * lambda)^(2i)]; its limit is lambda/(2 - lambda) (1 + phi(1 - lambda))/(1 - phi(1 - lambda)).
 *
 * Source of the limit: Schmid, "On EWMA charts for time series", Frontiers in Statistical Quality Control 5
 * (1997) 115-137.
 */
export class EwmaVariance {
  readonly #lambda: number;
  readonly #autocorrelation: number;
  #variance = 0;
  #covariance = 0;

  constructor(lambda: number, autocorrelation: number) {
    this.#lambda = lambda;
    this.#autocorrelation = autocorrelation;
  }

  /** Variance after one more value. */
  afterValue(): number {
    const keep = 1 - this.#lambda;
    const before = this.#autocorrelation * this.#covariance;
    this.#variance =
      keep * keep * this.#variance + this.#lambda * this.#lambda + 2 * keep * this.#lambda * before;
    this.#covariance = keep * before + this.#lambda;
    return this.#variance;
  }

  /** A missing value: the EWMA holds while its tie to the next value fades. */
  afterGap(): number {
    this.#covariance *= this.#autocorrelation;
    return this.#variance;
  }

  /** Variance after very many values. */
  static limit(lambda: number, autocorrelation: number): number {
    const carried = autocorrelation * (1 - lambda);
    return ((lambda / (2 - lambda)) * (1 + carried)) / (1 - carried);
  }
}
