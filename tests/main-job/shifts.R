# Circular shifts and power. Needs `site`, counts_of, odds_tables and rate_tables.

# ---- Circular shifts ----------------------------------------------------------------------------------------------------
# Each stratum's exposure is rotated by itself. All combinations where there are no more than the site allows, else the share of
# DRAWS combinations, drawn with R's own generator: what any drawn p comes near to.
DRAWS <- 400000
shift_scores <- function(part, odds) {
  n <- nrow(part)
  m <- sum(part$events)
  all <- sum(part$trials)
  if (m == 0 || length(unique(part$x)) == 1) return(NULL)
  rotated <- vapply(0:(n - 1), function(by) part$x[(seq_len(n) - 1 - by) %% n + 1], integer(n))
  trials <- colSums(rotated * part$trials)
  excess <- colSums(rotated * part$events) - m * trials / all
  share <- trials / all
  variance <- if (odds) m * share * (1 - share) * (all - m) / (all - 1) else m * share * (1 - share)
  list(excess = excess, variance = variance)
}
shift_test <- function(strata, outcome) {
  scores <- Filter(Negate(is.null), lapply(strata, shift_scores, odds = outcome == "failed_test"))
  arrangements <- prod(vapply(scores, function(of) length(of$excess), 0))
  if (arrangements == 1) return(list(p = NA, shifts = 0, inflation = NA, drawn = FALSE, error = 0))
  observed <- sum(vapply(scores, function(of) of$excess[1], 0))
  add <- function(name, at) Reduce(`+`, Map(function(of, i) of[[name]][i], scores, at))
  drawn <- arrangements - 1 > site$shifts
  at <- if (drawn) lapply(scores, function(of) sample.int(length(of$excess), DRAWS, replace = TRUE))
  else lapply(expand.grid(lapply(scores, function(of) seq_along(of$excess))), function(i) i[-1])
  excess <- add("excess", at)
  inflation <- mean((excess - mean(excess))^2) / mean(add("variance", at))
  if (drawn) {
    tail <- min(mean(excess >= observed - 1e-9), mean(excess <= observed + 1e-9))
    # Five standard errors of the pipeline's draws and of these, and the one arrangement that it adds.
    error <- 2 * (5 * sqrt(tail * (1 - tail) * (1 / site$shifts + 1 / DRAWS)) + 2 / site$shifts)
  } else {
    tail <- (1 + min(sum(excess >= observed - 1e-9), sum(excess <= observed + 1e-9))) / arrangements
    error <- 0
  }
  list(p = min(1, 2 * tail), shifts = if (drawn) site$shifts else arrangements - 1, inflation = inflation, drawn = drawn, error = error)
}

# ---- Power: the smallest ratio that the score test had 80 % power for, with exact conditional moments -------------------------
detectable <- function(strata, outcome, inflation) {
  k <- counts_of(strata)
  odds <- outcome == "failed_test"
  k <- if (odds) odds_tables(k) else rate_tables(k)
  if (nrow(k) == 0) return(NA)
  parts <- lapply(seq_len(nrow(k)), function(i) {
    m <- k[i, "a"] + k[i, "c"]
    s <- if (odds) max(0, m - k[i, "t0"]):min(m, k[i, "t1"]) else 0:m
    list(s = s, log_w = if (odds) dhyper(s, k[i, "t1"], k[i, "t0"], m, log = TRUE) else dbinom(s, m, k[i, "t1"] / (k[i, "t1"] + k[i, "t0"]), log = TRUE))
  })
  if (sum(vapply(parts, function(part) part$log_w[length(part$s)], 0)) > log(site$alpha / 2)) return(NA)
  moments <- function(log_ratio) rowSums(vapply(parts, function(part) {
    w <- part$log_w + log_ratio * part$s
    w <- exp(w - max(w)) / sum(exp(w - max(w)))
    c(sum(w * part$s), inflation * (sum(w * part$s^2) - sum(w * part$s)^2))
  }, c(0, 0)))
  null <- moments(0)
  power <- function(log_ratio) {
    there <- moments(log_ratio)
    pnorm((there[1] - null[1] - qnorm(1 - site$alpha / 2) * sqrt(null[2])) / sqrt(there[2]))
  }
  if (power(12) < site$power) return(NA)
  exp(uniroot(function(l) power(l) - site$power, c(1e-9, 12), tol = 1e-12)$root)
}
