# EWMA, individuals, g and t charts from their defining formulae, for the tests of control-charts/. R 4.2.2, base only.
options(digits = 10)
flow <- c(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)
mr <- mean(abs(diff(flow))); print(c(mean(flow), mr, mean(flow) + c(-3, 3) * mr / 1.128, 3.267 * mr))

lambda <- 0.3; i <- 1:3; print(50 + 3 * 2.0539 * sqrt(lambda / (2 - lambda) * (1 - (1 - lambda)^(2 * i))))
print(50 + c(-3, 3) * 2.0539 * sqrt(lambda / (2 - lambda)))

# Standard deviation of an EWMA of AR(1) values from the whole covariance matrix (lambda 0.2, phi 0.6), steps 1, 2, 5, 20.
ewmaSd <- function(lambda, phi, i) { w <- lambda * (1 - lambda)^((i - 1):0); sqrt(drop(w %*% phi^abs(outer(1:i, 1:i, "-")) %*% w)) }
print(sapply(c(1, 2, 5, 20), function(i) ewmaSd(0.2, 0.6, i)))

gaps <- c(6, 12, 0, 3, 21, 14, 9, 30, 2, 17, 8, 25); m <- mean(gaps); p <- 1 / (1 + m)
print(c(m, m + 3 * sqrt(m * (m + 1)))); print(qgeom(c(0.00135, 0.99865, 0.02, 0.98), p))
print(qnorm(pgeom(gaps, p) - dgeom(gaps, p) / 2))

# Valve failures, hours between (Montgomery, Introduction to Statistical Quality Control, Example 7.6).
hours <- c(286, 948, 536, 124, 816, 729, 4, 143, 431, 8, 2837, 596, 81, 227, 603, 492, 1199, 1214, 2831, 96)
y <- hours^0.2777; print(y)
y <- hours^(1 / 3.6); s <- mean(abs(diff(y))) / 1.128; print(c(mean(y), s)); print(c(mean(y), mean(y) - 3 * s, mean(y) + 3 * s)); print((mean(y) + 3 * s)^3.6)
