# Exact common odds and rate ratios over strata, from R 4.2.2: a direct route that shares no method with the pipeline.
# The conditional distribution of the exposed total is built by convolving dhyper (dbinom) on the plain scale, tilted by ratio^s and
# inverted with uniroot at 1e-12 on the log ratio. One-sided p-values of mantelhaen.test(exact = TRUE) are kept beside them.
source("write-json.R")
set.seed(20240101)
invert <- function(s, w, obs, alpha) {
  tilt <- function(l) { e <- log(w) + l * (s - obs); p <- exp(e - max(e)); p / sum(p) }
  tail <- function(l, upper) { p <- tilt(l); if (upper) sum(p[s >= obs]) else sum(p[s <= obs]) }
  mean_at <- function(l) sum(s * tilt(l))
  root <- function(f) exp(uniroot(f, c(-25, 25), tol = 1e-13)$root)
  low <- if (obs == min(s)) 0 else root(function(l) tail(l, TRUE) - alpha)
  high <- if (obs == max(s)) Inf else root(function(l) tail(l, FALSE) - alpha)
  estimate <- if (obs == min(s)) 0 else if (obs == max(s)) Inf else root(function(l) mean_at(l) - obs)
  p <- w / sum(w)
  list(estimate = estimate, low = low, high = high, p_greater = sum(p[s >= obs]), p_less = sum(p[s <= obs]))
}
combine <- function(parts) {
  s <- 0; w <- 1
  for (part in parts) {
    new <- rep(0, length(w) + length(part$w) - 1)
    for (i in seq_along(w)) new[i + seq_along(part$w) - 1] <- new[i + seq_along(part$w) - 1] + w[i] * part$w
    s <- s[1] + part$s[1] + seq_along(new) - 1; w <- new
  }
  list(s = s, w = w)
}
odds <- lapply(1:12, function(i) {
  k <- sample(1:6, 1)
  x1 <- sample(2:60, k, TRUE); x0 <- sample(2:90, k, TRUE)
  a <- rbinom(k, x1, c(0.05, 0.3)[1 + i %% 2]); c <- rbinom(k, x0, 0.1)
  if (i == 12) a <- a * 0
  parts <- lapply(1:k, function(j) { m <- a[j] + c[j]; s <- max(0, m - x0[j]):min(m, x1[j]); list(s = s, w = dhyper(s, x1[j], x0[j], m)) })
  sum <- combine(parts)
  r <- invert(sum$s, sum$w, sum(a), 0.025)
  t <- array(rbind(a, c, x1 - a, x0 - c), c(2, 2, k))
  keep <- apply(t, 3, function(m) min(rowSums(m), colSums(m)) > 0)
  mh <- if (sum(keep) > 1) sapply(c("greater", "less"), function(alt) mantelhaen.test(t[, , keep], exact = TRUE, alternative = alt)$p.value) else c(r$p_greater, r$p_less)
  c(list(exposed_events = I(a), exposed_total = I(x1), unexposed_events = I(c), unexposed_total = I(x0)), r, list(mantelhaen_greater = mh[[1]], mantelhaen_less = mh[[2]]))
})
rates <- lapply(1:10, function(i) {
  k <- sample(1:6, 1)
  t1 <- round(runif(k, 10, 500), 2); t0 <- round(runif(k, 10, 900), 2)
  a <- rpois(k, t1 * c(0.005, 0.03)[1 + i %% 2]); c <- rpois(k, t0 * 0.01)
  if (i == 10) c <- c * 0
  if (sum(a + c) == 0) a[1] <- 1
  parts <- lapply(1:k, function(j) { s <- 0:(a[j] + c[j]); list(s = s, w = dbinom(s, a[j] + c[j], t1[j] / (t1[j] + t0[j]))) })
  sum <- combine(parts)
  c(list(exposed_events = I(a), exposed_time = I(t1), unexposed_events = I(c), unexposed_time = I(t0)), invert(sum$s, sum$w, sum(a), 0.025))
})
write_cases <- function(cases, file) writeLines(jsonlite::toJSON(cases, digits = NA, auto_unbox = TRUE, pretty = FALSE), file)
write_cases(odds, "exact-odds-strata.json")
write_cases(rates, "exact-rate-strata.json")
