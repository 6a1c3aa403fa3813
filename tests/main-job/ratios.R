# Ratios, intervals and p-values of strata, by R's own functions where it has them. Needs `site`.

# ---- Exact conditional ratios -----------------------------------------------------------------------------------------
# Distribution of the exposed total given each stratum's margins, by convolution: M. H. Gart, Biometrika 57 (1970) 471-475 (tables);
# N. E. Breslow & N. E. Day, Statistical Methods in Cancer Research II (1987) section 3.4 (rates). Bounds and estimate by uniroot to 1e-12.
convolve_parts <- function(parts) Reduce(function(one, two) {
  w <- as.numeric(tapply(outer(one$w, two$w), outer(seq_along(one$w), seq_along(two$w), `+`), sum))
  list(low = one$low + two$low, w = w)
}, parts)
exact_ratio <- function(parts, observed) {
  sum_of <- convolve_parts(parts)
  s <- sum_of$low + seq_along(sum_of$w) - 1
  tilted <- function(log_ratio) { e <- log(sum_of$w) + log_ratio * (s - observed); e <- exp(e - max(e)); e / sum(e) }
  root <- function(f) exp(uniroot(f, c(-30, 30), tol = 1e-12)$root)
  alpha <- (1 - site$level) / 2
  lowest <- observed == min(s)
  highest <- observed == max(s)
  p <- tilted(0)
  list(
    ratio = if (lowest) 0 else if (highest) Inf else root(function(l) sum(s * tilted(l)) - observed),
    low = if (lowest) 0 else root(function(l) sum(tilted(l)[s >= observed]) - alpha),
    high = if (highest) Inf else root(function(l) sum(tilted(l)[s <= observed]) - alpha),
    p = min(1, 2 * min(sum(p[s >= observed]), sum(p[s <= observed]))))
}
named <- function(by, ratio, interval, p) list(by = by, ratio = as.numeric(ratio), low = interval[1], high = interval[2], p = min(1, p))

odds_tables <- function(k) k[k[, "t1"] > 0 & k[, "t0"] > 0 & k[, "a"] + k[, "c"] > 0 & k[, "a"] + k[, "c"] < k[, "t1"] + k[, "t0"], , drop = FALSE]
two_by_two <- function(k) array(rbind(k[, "a"], k[, "c"], k[, "t1"] - k[, "a"], k[, "t0"] - k[, "c"]), c(2, 2, nrow(k)))
exact_odds <- function(k) {
  k <- odds_tables(k)
  if (nrow(k) == 0) return(NULL)
  parts <- lapply(seq_len(nrow(k)), function(i) {
    m <- k[i, "a"] + k[i, "c"]
    s <- max(0, m - k[i, "t0"]):min(m, k[i, "t1"])
    list(low = s[1], w = dhyper(s, k[i, "t1"], k[i, "t0"], m))
  })
  tables <- two_by_two(k)
  test <- function(alternative) {
    if (nrow(k) == 1) fisher.test(tables[, , 1], alternative = alternative, conf.level = site$level)
    else mantelhaen.test(tables, exact = TRUE, alternative = alternative, conf.level = site$level)
  }
  both <- test("two.sided")
  by <- if (nrow(k) == 1) "fisher.test" else "mantelhaen.test, exact"
  c(exact_ratio(parts, sum(k[, "a"])), list(kind = "exact", r = named(
    by, both$estimate, both$conf.int, 2 * min(test("greater")$p.value, test("less")$p.value))))
}
rate_tables <- function(k) k[k[, "t1"] > 0 & k[, "t0"] > 0 & k[, "a"] + k[, "c"] > 0, , drop = FALSE]
exact_rate <- function(k) {
  k <- rate_tables(k)
  if (nrow(k) == 0) return(NULL)
  parts <- lapply(seq_len(nrow(k)), function(i) {
    m <- k[i, "a"] + k[i, "c"]
    list(low = 0, w = dbinom(0:m, m, k[i, "t1"] / (k[i, "t1"] + k[i, "t0"])))
  })
  own <- exact_ratio(parts, sum(k[, "a"]))
  if (nrow(k) > 1) return(c(own, list(kind = "exact", r = NULL)))
  test <- function(alternative) poisson.test(k[1, c("a", "c")], k[1, c("t1", "t0")], alternative = alternative, conf.level = site$level)
  c(own, list(kind = "exact", r = named(
    "poisson.test", test("two.sided")$estimate, test("two.sided")$conf.int, 2 * min(test("greater")$p.value, test("less")$p.value))))
}

# ---- Mantel-Haenszel over the fleet -----------------------------------------------------------------------------------
mh_odds <- function(k) {
  k <- odds_tables(k)
  if (nrow(k) == 0) return(NULL)
  d <- k[, "t0"] - k[, "c"]
  b <- k[, "t1"] - k[, "a"]
  # mantelhaen.test takes two strata or more, and an estimate of 0 or Inf has no interval: the exact method then stands in.
  if (nrow(k) < 2 || sum(k[, "a"] * d) == 0 || sum(b * k[, "c"]) == 0) return(NULL)
  test <- mantelhaen.test(two_by_two(k), correct = FALSE, conf.level = site$level)
  list(ratio = as.numeric(test$estimate), low = test$conf.int[1], high = test$conf.int[2], p = test$p.value, kind = "Mantel-Haenszel",
    r = named("mantelhaen.test", test$estimate, test$conf.int, test$p.value))
}
# S. Greenland & J. M. Robins, Biometrics 41 (1985) 55-68; K. J. Rothman, S. Greenland & T. L. Lash, Modern Epidemiology, 3rd ed. (2008) ch. 15.
mh_rate <- function(k) {
  k <- rate_tables(k)
  if (nrow(k) == 0) return(NULL)
  t <- k[, "t1"] + k[, "t0"]
  m <- k[, "a"] + k[, "c"]
  r <- sum(k[, "a"] * k[, "t0"] / t)
  s <- sum(k[, "c"] * k[, "t1"] / t)
  v <- sum(m * k[, "t1"] * k[, "t0"] / t^2)
  if (r == 0 || s == 0) return(NULL)
  z <- qnorm(1 - (1 - site$level) / 2) * sqrt(v / (r * s))
  chi <- (sum(k[, "a"]) - sum(m * k[, "t1"] / t))^2 / v
  list(ratio = r / s, low = r / s * exp(-z), high = r / s * exp(z), p = pchisq(chi, 1, lower.tail = FALSE), kind = "Mantel-Haenszel", r = NULL)
}
# One stratum: the ratio is that of poisson.test, and the score test that of prop.test-like counts; also R's own example of poisson.test.
local({
  one <- mh_rate(rbind(c(a = 11, t1 = 800, c = 23, t0 = 3000)))
  own <- poisson.test(c(11, 23), c(800, 3000))
  score <- prop.test(11, 34, 800 / 3800, correct = FALSE)
  exact <- exact_rate(rbind(c(a = 11, t1 = 800, c = 23, t0 = 3000)))
  stopifnot(all.equal(one$ratio, as.numeric(own$estimate)), all.equal(one$p, score$p.value),
    all.equal(c(exact$ratio, exact$low, exact$high), c(as.numeric(own$estimate), own$conf.int[1:2]), tolerance = 1e-9))
})
ratio_of <- function(strata, outcome, scope) {
  k <- counts_of(strata)
  odds <- outcome == "failed_test"
  found <- if (scope == "fleet") { if (odds) mh_odds(k) else mh_rate(k) }
  if (is.null(found)) found <- if (odds) exact_odds(k) else exact_rate(k)
  if (is.null(found)) found <- list(ratio = NA, low = NA, high = NA, p = NA, kind = "not computable", r = NULL)
  if (!is.null(found$r) && is.finite(found$ratio)) stopifnot(all.equal(found$ratio, found$r$ratio, tolerance = 1e-2))
  found
}
