# Age replacement by numerical integration and optimisation, for the tests of replacement/. R 4.2.2, base only.
options(digits = 10)
shape <- 2.5; scale <- 1000; cp <- 1; cf <- 5
R <- function(u) exp(-(u / scale)^shape); M <- function(t) integrate(R, 0, t, rel.tol = 1e-12)$value
C <- function(t) (cp * R(t) + cf * (1 - R(t))) / M(t)
h <- function(t) shape / scale * (t / scale)^(shape - 1)
t <- uniroot(function(t) h(t) * M(t) - (1 - R(t)) - cp / (cf - cp), c(1, 5000), tol = 1e-10)$root
print(c(t = t, C = C(t), forever = cf / (scale * gamma(1 + 1 / shape)), R = R(t), check = (cf - cp) * h(t)))
print(c(uniroot(function(x) C(x) - 1.05 * C(t), c(10, t), tol = 1e-10)$root, uniroot(function(x) C(x) - 1.05 * C(t), c(t, 3000), tol = 1e-10)$root))
