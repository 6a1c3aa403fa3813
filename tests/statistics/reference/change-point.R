# Pettitt's K, place and approximate p-value for Page's data, for the tests of change-point/. R 4.2.2, base only.
x <- c(-1.05, 0.96, 1.22, 0.58, -0.98, -0.03, -1.54, -0.71, -0.35, 0.66, 0.44, 0.91, -0.02, -1.42, 1.26, -1.02, -0.81, 1.66, 1.05,
  0.97, 2.14, 1.22, -0.24, 1.60, 0.72, -0.12, 0.44, 0.03, 0.66, 0.56, 1.37, 1.66, 0.10, 0.80, 1.29, 0.49, -0.07, 1.18, 3.29, 1.84)
n <- length(x); U <- sapply(1:(n - 1), function(t) sum(sign(outer(x[1:t], x[(t + 1):n], "-"))))
K <- max(abs(U)); t <- which.max(abs(U))
print(c(K = K, t = t, U = U[t], p = 2 * exp(-6 * K^2 / (n^3 + n^2))), digits = 10); print(c(median(x[1:t]), median(x[-(1:t)])))
# Least absolute line through five points by trying every pair (a best line passes through two points).
tt <- c(0, 1, 2, 4, 7); y <- c(1, 3, 2, 6, 20); p <- combn(5, 2)
cost <- apply(p, 2, function(k) { b <- diff(y[k]) / diff(tt[k]); sum(abs(y - y[k[1]] - b * (tt - tt[k[1]]))) }); print(min(cost))
