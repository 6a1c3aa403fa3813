# Attribute charts from their defining formulae, for the tests of control-charts/. R 4.2.2, base only.
cans <- c(12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6)
p <- function(r, n) { c <- sum(r) / sum(n); s <- sqrt(c * (1 - c) / n); list(centre = c, s = s, z = (r / n - c) / s) }
show <- function(...) cat(format(c(...), digits = 10), "\n")
a <- p(cans, rep(50, 30)); show(a$centre, a$centre - 3 * a$s[1], a$centre + 3 * a$s[1])
b <- p(cans[-c(15, 23)], rep(50, 28)); show(b$centre, b$centre - 3 * b$s[1], b$centre + 3 * b$s[1])

defects <- c(14, 12, 20, 11, 7, 10, 21, 16, 19, 23); units <- c(10, 8, 13, 10, 9.5, 10, 12, 10.5, 12, 12.5)
u <- sum(defects) / sum(units); show(u); show(u + 3 * sqrt(u / units)); show(u - 3 * sqrt(u / units))

r <- c(266501, 264225, 276532, 281461, 269071, 261215, 270409, 279778, 270483, 270320, 267923, 271478, 255353, 256820,
  261835, 259144, 255910, 260863, 264465, 260989)
n <- c(280443, 276823, 291681, 296155, 282343, 275888, 283867, 295251, 284468, 282529, 279618, 283932, 266629, 268091,
  276803, 271578, 266005, 273520, 278574, 273772)
l <- p(r, n); sz <- mean(abs(diff(l$z))) / 1.128
show(l$centre, sz, l$z[c(1, 17)]); show(l$centre + c(-3, 3) * l$s[1])
show(l$centre + c(-3, 3) * l$s[1] * sz); show(l$centre + c(-3, 3) * l$s[17] * sz)
