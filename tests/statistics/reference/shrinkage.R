# Two-level models from R 4.2.2. Maximum likelihood: MASS::glm.nb, and optim on the beta-binomial likelihood. Posteriors: full two-dimensional quadrature
# over the mean and the spread (flat in the log or logit of the mean and in the spread), exact mixtures of gamma or beta posteriors, no approximation.
write_json <- function(x, file) writeLines(jsonlite::toJSON(x, digits = NA, auto_unbox = TRUE), file)
mixture <- function(weights, cdf, mean, range) {
  q <- function(p) uniroot(function(x) sum(weights * cdf(x)) - p, range, tol = 1e-12)$root
  c(sum(weights * mean), q(0.025), q(0.975))
}
rates <- function(d, e) {
  fit <- MASS::glm.nb(d ~ 1 + offset(log(e)), control = glm.control(epsilon = 1e-14, maxit = 500))
  m <- exp(coef(fit)[[1]])
  s <- (1:400 - 0.5) / 400 * 5; u <- seq(log(m) - 4, log(m) + 4, length.out = 400)
  g <- expand.grid(s = s, u = u); a <- 1 / g$s^2
  l <- rowSums(sapply(seq_along(d), function(i) dnbinom(d[i], size = a, mu = e[i] * exp(g$u), log = TRUE)))
  w <- exp(l - max(l)); w <- w / sum(w); k <- w > 1e-9; w <- w[k] / sum(w[k]); a <- a[k]; mu <- exp(g$u[k])
  post <- t(sapply(seq_along(d), function(i) mixture(w, function(x) pgamma(x, a + d[i], a / mu + e[i]), (a + d[i]) / (a / mu + e[i]), c(1e-12, 50 * max((d + 1) / e)))))
  list(events = d, size = e, mean = m, spread = 1 / sqrt(fit$theta), log_likelihood = as.numeric(logLik(fit)), plug_in = (fit$theta + d) / (fit$theta / m + e),
    estimate = post[, 1], low = post[, 2], high = post[, 3])
}
proportions <- function(x, n) {
  ll <- function(u, s) { k <- (1 - s^2) / s^2; p <- plogis(u); sum(lchoose(n, x) + lbeta(p * k + x, (1 - p) * k + n - x) - lbeta(p * k, (1 - p) * k)) }
  f <- optim(c(qlogis(sum(x) / sum(n)), -2), function(v) -ll(v[1], plogis(v[2])), control = list(reltol = 1e-15, maxit = 5000))
  f <- optim(f$par, function(v) -ll(v[1], plogis(v[2])), control = list(reltol = 1e-16, maxit = 5000))
  m <- plogis(f$par[1]); s0 <- plogis(f$par[2]); k0 <- (1 - s0^2) / s0^2
  s <- (1:800 - 0.5) / 800 * 0.99; u <- seq(f$par[1] - 4, f$par[1] + 4, length.out = 400)
  g <- expand.grid(s = s, u = u); k <- (1 - g$s^2) / g$s^2
  l <- rowSums(sapply(seq_along(x), function(i) { p <- plogis(g$u); lchoose(n[i], x[i]) + lbeta(p * k + x[i], (1 - p) * k + n[i] - x[i]) - lbeta(p * k, (1 - p) * k) }))
  w <- exp(l - max(l)); w <- w / sum(w); keep <- w > 1e-9; w <- w[keep] / sum(w[keep]); k <- k[keep]; p <- plogis(g$u[keep])
  post <- t(sapply(seq_along(x), function(i) mixture(w, function(y) pbeta(y, p * k + x[i], (1 - p) * k + n[i] - x[i]), (p * k + x[i]) / (k + n[i]), c(1e-14, 1 - 1e-14))))
  list(events = x, size = n, mean = m, spread = s0, log_likelihood = -f$value, plug_in = (m * k0 + x) / (k0 + n), estimate = post[, 1], low = post[, 2], high = post[, 3])
}
# Ten pumps: Gaver & O'Muircheartaigh, Technometrics 29 (1987) 1-15.
pumps <- rates(c(5, 1, 5, 14, 3, 19, 1, 1, 4, 22), c(94.3, 15.7, 62.9, 126, 5.24, 31.4, 1.05, 1.05, 2.1, 10.5))
aborts <- rates(c(12, 9, 31, 4, 18, 22, 7, 15), c(900, 1400, 1300, 350, 1500, 1250, 1100, 980))
failures <- proportions(c(3, 1, 0, 9, 2, 4, 11, 1), c(300, 280, 310, 305, 150, 290, 240, 60))
write_json(list(list(pumps = pumps, aborts = aborts, failures = failures)), "shrinkage.json")
