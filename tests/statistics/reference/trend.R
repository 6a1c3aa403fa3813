# Kendall's S, its variance with ties on both sides, exact p-values and Sen's interval, for the tests of trend/. R 4.2.2, base only.
options(digits = 10)
y <- c(9, 15, 19, 20, 45, 55, 78); t <- c(1, 2, 3, 4, 10, 12, 18)
print(cor.test(t, y, method = "kendall", exact = TRUE)$p.value)
w <- c(3.1, 2.2, 5.4, 4.1, 6.0, 5.1, 7.3, 6.4); print(cor.test(seq_along(w), w, method = "kendall", exact = TRUE)[c("statistic", "p.value")])
print(cor.test(seq_along(w), w, method = "kendall", exact = TRUE, alternative = "greater")$p.value)

# Ties on both sides: cor.test gives z = S / sqrt(var) without continuity correction; var follows from S.
a <- c(1, 1, 2, 3, 3, 3, 4, 5, 6, 6); b <- c(2, 3, 3, 1, 4, 4, 5, 5, 5, 7)
S <- sum(outer(seq_along(a), seq_along(a), function(i, j) ifelse(i > j, sign(a[i] - a[j]) * sign(b[i] - b[j]), 0)))
z <- suppressWarnings(cor.test(a, b, method = "kendall", exact = FALSE))$statistic
print(c(S = S, variance = (S / z)^2))

little <- c(12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7)
print(cor(seq_along(little), little, method = "kendall"))
slopes <- function(t, y) { p <- combn(seq_along(t), 2); p <- p[, t[p[1, ]] != t[p[2, ]]]; sort((y[p[2, ]] - y[p[1, ]]) / (t[p[2, ]] - t[p[1, ]])) }
interval <- function(s, C) { N <- length(s); r <- c((N - C) / 2, (N + C) / 2 + 1); list(rounded = s[round(r)], interpolated = approx(seq_along(s), s, r)$y) }
print(interval(slopes(t, y), qnorm(0.965) * sqrt(7 * 6 * 19 / 18)))
print(median(slopes(seq_along(little), little))); print(interval(slopes(seq_along(little), little), qnorm(0.975) * sqrt(332.6666666667)))
