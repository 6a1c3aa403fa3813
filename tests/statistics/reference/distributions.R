# Reference values of distribution tails and quantiles, from R 4.2.2.
# Both tails of each distribution, from the middle out to 1e-12 and beyond, with small and very large parameters.
source("write-json.R")
rows <- list()
add <- function(name, a, b, x, lower, upper) {
  rows[[length(rows) + 1]] <<- data.frame(name, a, b, x, lower, upper)
}
for (z in c(-30, -7.034483825, -3, -1.959963984540054, -0.1, 0, 0.5, 2, 6, 20)) add("normal", 0, 0, z, pnorm(z), pnorm(z, lower.tail = FALSE))
for (shape in c(0.5, 1, 2.5, 20, 171.5, 1e4, 1e6)) {
  for (d in c(-7, -3, -0.3, 0, 0.3, 3, 7, 20)) {
    x <- shape + d * sqrt(shape)
    if (x > 0) add("gamma", shape, 0, x, pgamma(x, shape), pgamma(x, shape, lower.tail = FALSE))
  }
}
for (ab in list(c(0.5, 0.5), c(1, 29), c(20, 5), c(3, 500), c(1e4, 2e4), c(1e6, 2e6))) {
  m <- ab[1] / sum(ab); s <- sqrt(m * (1 - m) / (sum(ab) + 1))
  for (d in c(-7, -2, 0, 2, 7, 12)) {
    x <- m + d * s
    if (x > 0 && x < 1) add("beta", ab[1], ab[2], x, pbeta(x, ab[1], ab[2]), pbeta(x, ab[1], ab[2], lower.tail = FALSE))
  }
}
for (np in list(c(10, 0.1), c(100, 0.5), c(1000, 0.02), c(1e6, 0.001))) {
  m <- np[1] * np[2]; s <- sqrt(m * (1 - np[2]))
  for (k in unique(pmin(np[1], pmax(0, round(m + c(-7, -2, 0, 3, 8) * s))))) {
    add("binomial", np[1], np[2], k, pbinom(k, np[1], np[2]), pbinom(k - 1, np[1], np[2], lower.tail = FALSE))
  }
}
for (m in c(0.2, 5, 300)) for (k in unique(pmax(0, round(m + c(-6, 0, 8) * sqrt(m))))) {
  add("poisson", m, 0, k, ppois(k, m), ppois(k - 1, m, lower.tail = FALSE))
}
for (df in c(1, 4, 30, 1000)) for (t in c(-8, -2, 0, 1, 5)) add("student", df, 0, t, pt(t, df), pt(t, df, lower.tail = FALSE))
write_rows(do.call(rbind, rows), "distributions.json")

rows <- list()
quantile <- function(name, a, b, p, lower, upper) rows[[length(rows) + 1]] <<- data.frame(name, a, b, p, lower, upper)
for (p in c(1e-12, 1e-5, 0.025, 0.5, 0.8)) {
  quantile("normal", 0, 0, p, qnorm(p), qnorm(p, lower.tail = FALSE))
  for (shape in c(0.5, 1, 11, 1e3, 1e6)) quantile("gamma", shape, 0, p, qgamma(p, shape), qgamma(p, shape, lower.tail = FALSE))
  for (ab in list(c(1, 29), c(3, 7), c(82, 182), c(1e4, 2e4))) {
    quantile("beta", ab[1], ab[2], p, qbeta(p, ab[1], ab[2]), qbeta(p, ab[1], ab[2], lower.tail = FALSE))
  }
}
write_rows(do.call(rbind, rows), "quantiles.json")
