# Weibull by maximum likelihood with right censoring, left truncation and strata, for the tests of survival/. R 4.2.2, survival 3.5-3 and base.
library(survival); options(digits = 10)
d <- c(54, 187, 216, 240, 244, 335, 361, 373, 375, 386, rep(500, 10)); o <- rep(1:0, each = 10)
fit <- survreg(Surv(d, o) ~ 1, dist = "weibull")
print(c(shape = 1 / fit$scale, scale = unname(exp(coef(fit))), ll = fit$loglik[2])); print(sqrt(diag(vcov(fit))))

# Any likelihood, on log shape and log scales (one per stratum).
negll <- function(par, d, o, e, stratum) { k <- exp(par[1]); s <- exp(par[1 + stratum]); -sum(o * (log(k / s) + (k - 1) * log(d / s)) - (d / s)^k + (e / s)^k) }
ml <- function(d, o, e = rep(0, length(d)), stratum = rep(1, length(d))) {
  f <- optim(c(0, rep(log(mean(d)), max(stratum))), negll, d = d, o = o, e = e, stratum = stratum, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-15, maxit = 2000))
  f <- optim(f$par, negll, d = d, o = o, e = e, stratum = stratum, method = "Nelder-Mead", control = list(reltol = 1e-15, maxit = 5000))
  f <- optim(f$par, negll, d = d, o = o, e = e, stratum = stratum, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-16))
  list(par = exp(f$par), ll = -f$value, se = sqrt(diag(solve(f$hessian))))
}
profile <- function(which, d, o, e = rep(0, length(d)), stratum = rep(1, length(d)), top) {
  f <- ml(d, o, e, stratum); start <- log(f$par)
  pl <- function(v) { inner <- function(p) { q <- start; q[which] <- v; q[-which] <- p; negll(q, d, o, e, stratum) }
    rest <- start[-which]
    -(if (length(rest) == 1) optimize(inner, rest + c(-8, 8), tol = 1e-10)$objective else optim(rest, inner, method = "BFGS", control = list(reltol = 1e-15))$value) }
  g0 <- function(v) f$ll - pl(v) - qchisq(0.95, 1) / 2
  exp(c(uniroot(g0, start[which] + c(-3, 0), tol = 1e-9)$root, uniroot(g0, start[which] + c(0, top), tol = 1e-9)$root))
}
print(profile(1, d, o, top = 3)); print(profile(2, d, o, top = 3))
r <- sum(o) / sum(d); print(c(rate = r, ll = sum(o) * log(r) - r * sum(d)))

# Left truncation: the same kind of data watched from some age on.
dt <- c(40, 75, 88, 120, 150, 150, 61, 93, 110, 150, 130, 57); ot <- c(1, 1, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1); et <- c(0, 30, 50, 0, 90, 100, 20, 60, 45, 70, 80, 0)
print(ml(dt, ot, et)); print(profile(1, dt, ot, et, top = 3)); print(profile(2, dt, ot, et, top = 3))

# Two strata, one shape.
ds <- c(20, 35, 50, 64, 80, 80, 90, 120, 150, 170, 200, 200); os <- c(1, 1, 1, 1, 0, 0, 1, 1, 1, 0, 1, 0); gs <- rep(1:2, each = 6)
print(ml(ds, os, stratum = gs)); print(profile(1, ds, os, stratum = gs, top = 3)); print(profile(2, ds, os, stratum = gs, top = 3)); print(profile(3, ds, os, stratum = gs, top = 3))
fs <- survreg(Surv(ds, os) ~ factor(gs), dist = "weibull"); print(c(1 / fs$scale, exp(cumsum(coef(fs))), fs$loglik[2]))
