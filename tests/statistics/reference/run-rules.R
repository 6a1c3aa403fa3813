# Positions (from 1) at which the run rules fire on two mixed series, straight from their wording. R 4.2.2, base only.
# Western Electric handbook (1956); Nelson, Journal of Quality Technology 16 (1984) 237-239.
kofm <- function(z, k, m, limit) Filter(function(i) any(sapply(c(1, -1), function(s)
  s * z[i] > limit && sum(s * z[max(1, i - m + 1):i] > limit) >= k)), seq_along(z))
window <- function(z, m, test) Filter(function(i) i >= m && test(z[(i - m + 1):i]), seq_along(z))
side <- function(m) function(z) window(z, m, function(w) all(w > 0) || all(w < 0))

we <- c(0.3, -0.8, 1.2, 2.2, -0.4, 2.4, 1.1, 1.3, 1.6, 0.2, 1.2, 0.9, 0.4, -0.2, -1.4, -2.1, -0.6, -2.3, -3.2, 0.5)
cat("Western Electric 1:", kofm(we, 1, 1, 3), "\n2:", kofm(we, 2, 3, 2), "\n3:", kofm(we, 4, 5, 1), "\n4:", side(8)(we), "\n")

ne <- c(0.2, -0.5, 0.1, 0.4, 0.7, 0.9, 1.3, 1.8, 2.1, -0.3, 0.6, -0.2, 0.4, -0.7, 0.3, -0.1, 0.8, -0.6, 0.5, -0.9, 0.2,
  -0.3, 0.1, -0.2)
cat("Nelson 1:", kofm(ne, 1, 1, 3), "\n2:", side(9)(ne),
  "\n3:", window(ne, 6, function(w) all(diff(w) > 0) || all(diff(w) < 0)),
  "\n4:", window(ne, 14, function(w) all(diff(w)[-1] * diff(w)[-13] < 0)),
  "\n5:", kofm(ne, 2, 3, 2), "\n6:", kofm(ne, 4, 5, 1),
  "\n7:", window(ne, 15, function(w) all(abs(w) <= 1)), "\n8:", window(ne, 8, function(w) all(abs(w) > 1)), "\n")
