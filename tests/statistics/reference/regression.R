# Reference fits from R 4.2.2: glm, survival 3.5-3 (clogit, exact), sandwich 3.0-2 (vcovCL), and the conditional likelihood by full enumeration.
library(survival)
write_json <- function(x, file) writeLines(jsonlite::toJSON(x, digits = NA, auto_unbox = TRUE), file)
set.seed(71)

# 1. Conditional logistic with many cases per stratum: infert by education, exact method.
fit <- clogit(case ~ spontaneous + induced + age + strata(education), data = infert, method = "exact")
s <- summary(fit)
many <- list(
  data = list(cases = infert$case, strata = as.character(infert$education), covariates = unname(as.matrix(infert[, c("spontaneous", "induced", "age")]))),
  estimate = unname(coef(fit)), standard_error = unname(sqrt(diag(vcov(fit)))), log_likelihood = fit$loglik[2], null_log_likelihood = fit$loglik[1],
  score = unname(s$sctest[1]), wald = unname(s$waldtest[1]), likelihood_ratio = unname(s$logtest[1])
)

# 2. The same likelihood by enumeration of all sets (combn), with clusters of two strata each: estimate, model and cluster-robust errors.
n <- 9; strata <- 8
small <- do.call(rbind, lapply(1:strata, function(j) {
  x1 <- rbinom(n, 1, 0.4); x2 <- round(rnorm(n), 2)
  data.frame(stratum = j, cluster = (j + 1) %/% 2, x1, x2, case = sample(rep(c(1, 0), c(2 + j %% 3, n - 2 - j %% 3)), n, prob = exp(0.8 * x1 + 0.3 * x2)))
}))
parts <- lapply(split(small, small$stratum), function(d) {
  x <- as.matrix(d[, c("x1", "x2")]); sets <- combn(n, sum(d$case))
  list(observed = colSums(x[d$case == 1, ]), sums = t(apply(sets, 2, function(i) colSums(x[i, ]))))
})
pieces <- function(b) lapply(parts, function(p) {
  eta <- p$sums %*% b; w <- exp(eta - max(eta)); total <- sum(w); w <- as.vector(w / total); m <- colSums(w * p$sums)
  list(l = sum(p$observed * b) - log(total) - max(eta), u = p$observed - m, i = crossprod(p$sums * sqrt(w)) - tcrossprod(m))
})
b <- c(0, 0)
for (k in 1:50) { q <- pieces(b); b <- b + solve(Reduce(`+`, lapply(q, `[[`, "i")), Reduce(`+`, lapply(q, `[[`, "u"))) }
q <- pieces(b); V <- solve(Reduce(`+`, lapply(q, `[[`, "i")))
U <- t(sapply(q, `[[`, "u")); cl <- tapply(small$cluster, small$stratum, unique)
S <- rowsum(U, cl); G <- nrow(S)
enumerated <- list(
  data = list(cases = small$case, strata = small$stratum, clusters = small$cluster, covariates = unname(as.matrix(small[, c("x1", "x2")]))),
  estimate = unname(b), standard_error = unname(sqrt(diag(V))), log_likelihood = sum(sapply(q, `[[`, "l")),
  robust = unname(sqrt(diag(V %*% crossprod(S) %*% V * G / (G - 1)))), clusters = G
)

# 3. Logistic and Poisson with clusters.
g <- 14; d <- data.frame(cluster = rep(1:g, each = 12)); d$x1 <- rbinom(nrow(d), 1, 0.3); d$x2 <- round(rnorm(nrow(d)), 2)
u <- rnorm(g, 0, 0.6)[d$cluster]; d$trials <- sample(0:9, nrow(d), TRUE)
d$events <- rbinom(nrow(d), d$trials, plogis(-1.5 + 0.5 * d$x1 + u))
d$exposure <- round(runif(nrow(d), 5, 90), 1); d$count <- rpois(nrow(d), d$exposure * exp(-3 + 0.4 * d$x1 + u))
used <- d[d$trials > 0, ]
lo <- glm(cbind(events, trials - events) ~ x1 + x2, binomial, used, control = list(epsilon = 1e-14, maxit = 100))
# Two strata of six rows in each cluster, as indicators; errors robust to clusters by hand, as sandwich's vcovCL with cadjust gives them.
d$stratum <- factor(rep(1:(nrow(d) / 6), each = 6))
po <- glm(count ~ x1 + x2 + stratum + offset(log(exposure)), poisson, d, control = list(epsilon = 1e-14, maxit = 100))
x <- model.matrix(po); bread <- solve(t(x) %*% (x * fitted(po))); by_cluster <- rowsum(x * (d$count - fitted(po)), d$cluster)
robust <- function(fit, cluster) unname(sqrt(diag(sandwich::vcovCL(fit, cluster = cluster, type = "HC0", cadjust = TRUE))))
clustered <- list(
  data = list(clusters = d$cluster, covariates = unname(as.matrix(d[, c("x1", "x2")])), trials = d$trials, events = d$events, exposure = d$exposure, count = d$count),
  logistic = list(estimate = unname(coef(lo)), standard_error = unname(sqrt(diag(vcov(lo)))), robust = robust(lo, used$cluster)),
  conditional_poisson = list(estimate = unname(coef(po)[2:3]), standard_error = unname(sqrt(diag(vcov(po)))[2:3]),
    robust = unname(sqrt(diag(bread %*% crossprod(by_cluster) %*% bread * g / (g - 1)))[2:3]))
)
write_json(list(list(many = many, enumerated = enumerated, clustered = clustered)), "regression.json")

# 4. Trend within strata: the score test of the exact conditional likelihood is Mantel's extension test.
dose <- do.call(rbind, lapply(1:5, function(j) {
  n <- sample(20:50, 1); x <- sample(c(0, 0, 1, 2, 4), n, TRUE)
  data.frame(stratum = j, score = x, event = rbinom(n, 1, plogis(-2 + 0.25 * x)))
}))
trend <- clogit(event ~ score + strata(stratum), data = dose, method = "exact")
write_json(list(list(stratum = dose$stratum, score = dose$score, event = dose$event, chi_square = unname(summary(trend)$sctest[1]))), "mantel-trend.json")
