# Power-law intensity of recurrent events in cells, gamma frailty integrated out, by general optimisation of the likelihood written out in R 4.2.2:
# a cluster's cells are Poisson given its frailty, so that its marginal likelihood is the integral of their product over a gamma density (done by quadrature here,
# not by its closed form). Data: four units, cleaned every 10 to 20 days, drawn once with the seed below.
set.seed(11)
clusters <- lapply(c(0.4, 0.9, 1.1, 2.2), function(frailty) {
  cells <- data.frame()
  for (spell in 1:12) {
    last <- sample(10:20, 1)
    entry <- 0:(last - 1)
    mean <- frailty * 0.004 * ((entry + 1)^1.8 - entry^1.8)
    cells <- rbind(cells, data.frame(entry = entry, exit = entry + 1, events = rpois(last, mean)))
  }
  aggregate(cbind(weight = 1, events) ~ entry + exit, cells, sum)
})
minus <- function(par, fixed = NULL) {
  shape <- exp(if (is.null(fixed)) par[3] else fixed); rate <- exp(par[1]); a <- 1 / exp(2 * par[2])
  -sum(sapply(clusters, function(cell) {
    mu <- rate * cell$weight * (cell$exit^shape - cell$entry^shape)
    g <- function(u) sapply(u, function(v) sum(dpois(cell$events, exp(v) * mu, log = TRUE)) + dgamma(exp(v), a, a, log = TRUE) + v)
    top <- optimize(g, c(-6, 4), maximum = TRUE)$objective
    log(integrate(function(u) exp(g(u) - top), -8, 5, rel.tol = 1e-10, subdivisions = 2000)$value) + top
  }))
}
control <- list(reltol = 1e-14, maxit = 4000)
fit <- optim(c(-5, -0.5, 0.5), minus, control = control); fit <- optim(fit$par, minus, control = control)
at <- function(log_shape) { f <- optim(fit$par[1:2], minus, fixed = log_shape, control = control); -optim(f$par, minus, fixed = log_shape, control = control)$value }
line <- -fit$value - qchisq(0.95, 1) / 2
low <- uniroot(function(x) at(x) - line, c(0, fit$par[3]), tol = 1e-6)$root
high <- uniroot(function(x) at(x) - line, c(fit$par[3], 1.2), tol = 1e-6)$root
out <- list(list(clusters = clusters, shape = exp(fit$par[3]), rate = exp(fit$par[1]), spread = exp(fit$par[2]), low = exp(low), high = exp(high),
  likelihood_ratio = 2 * (-fit$value - at(0))))
writeLines(jsonlite::toJSON(out, digits = NA, dataframe = "rows", auto_unbox = TRUE), "power-law-intensity.json")
