# Models with both exposures at once, and the trend over dose. Needs `site` and `panel`, all units.

known_rows <- function() {
  rows <- panel[panel$at_risk == 1 & !is.na(panel$chamber_overdue) & !is.na(panel$strainers_missed), ]
  rows$strainer <- as.integer(rows$strainers_missed > 0)
  rows$within <- paste(rows$unit, rows$era, rows$stratum)
  rows
}

# A failed test on both exposures, the exact conditional likelihood of survival::clogit.
fit_clogit <- function(unit) {
  rows <- known_rows()
  if (!is.na(unit)) rows <- rows[rows$unit == unit, ]
  fit <- tryCatch(
    clogit(failed ~ chamber_overdue + strainer + strata(within), rows, method = "exact"),
    warning = function(of) if (grepl("beta may be infinite", conditionMessage(of))) NULL else stop(of))
  if (is.null(fit)) return(list(unit = unit, days = nrow(rows), failed = sum(rows$failed), finite = FALSE))
  s <- summary(fit)
  test <- function(t) list(chi_square = t[["test"]], p = t[["pvalue"]])
  list(unit = unit, days = nrow(rows), failed = sum(rows$failed), finite = TRUE, log_likelihood = fit$loglik[2], null_log_likelihood = fit$loglik[1],
    estimate = unname(coef(fit)), standard_error = unname(s$coefficients[, "se(coef)"]), p = unname(s$coefficients[, "Pr(>|z|)"]),
    covariance = unname(vcov(fit)[1, 2]), likelihood_ratio = test(s$logtest), score = test(s$sctest), wald = list(chi_square = fit$wald.test, p = pchisq(fit$wald.test, 2, lower.tail = FALSE)))
}

# Aborts on both exposures: stats::glm, one level a stratum, production cycles as offset. Errors robust to clusters (units): K.-Y. Liang & S. L. Zeger,
# Biometrika 73 (1986) 13-22, with the factor G / (G - 1) and Student's t with G - 1 degrees of freedom, written out here.
fit_poisson <- function() {
  rows <- known_rows()
  rows <- rows[rows$production_cycles > 0 & rows$within %in% unique(rows$within[rows$cleanliness_aborts > 0]), ]
  fit <- glm(cleanliness_aborts ~ chamber_overdue + strainer + within, poisson, rows, offset = log(production_cycles),
    control = glm.control(epsilon = 1e-14, maxit = 100))
  x <- model.matrix(fit)
  by_unit <- rowsum(x * (rows$cleanliness_aborts - fitted(fit)), rows$unit)
  g <- nrow(by_unit)
  bread <- solve(t(x) %*% (x * fitted(fit)))
  robust <- sqrt(diag(bread %*% crossprod(by_unit) %*% bread * g / (g - 1)))[2:3]
  beta <- coef(fit)[2:3]
  error <- sqrt(diag(bread))[2:3]
  bounds <- function(error, multiplier) list(low = unname(exp(beta - multiplier * error)), high = unname(exp(beta + multiplier * error)))
  alpha <- 1 - site$level
  list(ratio = unname(exp(beta)), wald = bounds(error, qnorm(1 - alpha / 2)), p = unname(2 * pnorm(-abs(beta / error))),
    robust = bounds(robust, qt(1 - alpha / 2, g - 1)), robust_p = unname(2 * pt(-abs(beta / robust), g - 1)), units = g)
}

# Mantel's extension test is the score test of conditional logistic regression on the score: taken from clogit.
dose_trend <- function(exposure) {
  rows <- panel[panel$at_risk == 1, ]
  amount <- if (exposure == "chamber_overdue") rows$chamber_days_past_due else rows$strainers_missed
  limits <- if (exposure == "chamber_overdue") c(0, 7, 14) else c(0, 1, 2)
  rows$score <- rowSums(outer(amount, limits, `>`))
  rows <- rows[!is.na(rows$score), ]
  rows$within <- paste(rows$unit, rows$era, rows$stratum)
  fit <- clogit(failed ~ score + strata(within), rows, method = "exact")
  test <- summary(fit)$sctest
  list(exposure = exposure, days = as.integer(table(factor(rows$score, 0:3))), failed = as.integer(table(factor(rows$score[rows$failed == 1], 0:3))),
    statistic = unname(sign(coef(fit)) * sqrt(test[["test"]])), p = test[["pvalue"]])
}
