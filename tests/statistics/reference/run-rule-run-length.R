# In-control and shifted run lengths under the four Western Electric rules, by a Markov chain solved as linear equations. R 4.2.2, base only.
# A state holds, per side, beyond-2 of the last two points, beyond-1 of the last four, and the run on one side.
rules <- function(use, shift) {
  p <- diff(pnorm(c(-Inf, -3:3, Inf), shift)); zone <- c(-4:-1, 1:4)
  states <- list(list(z = rep(0, 4), run = 0)); index <- new.env(); index[["0,0,0,0;0"]] <- 1
  rows <- cols <- integer(0); vals <- numeric(0); i <- 1
  while (i <= length(states)) {
    s <- states[[i]]
    for (k in seq_along(zone)) {
      z <- zone[k]; sg <- sign(z); h <- c(z, s$z); run <- if (sign(s$run) == sg) s$run + sg else sg
      fire <- c(abs(z) == 4, abs(z) > 2 && sum(sg * h[1:3] > 2) >= 2, abs(z) > 1 && sum(sg * h > 1) >= 4, abs(run) >= 8)
      if (any(fire[use])) next
      b <- ifelse(abs(h[1:4]) > 2 & 1:4 < 3, 3, ifelse(abs(h[1:4]) > 1, 2, 0)) * sign(h[1:4])
      if (!(4 %in% use)) run <- 0
      key <- paste0(paste(b, collapse = ","), ";", run)
      if (is.null(index[[key]])) { states[[length(states) + 1]] <- list(z = b, run = run); index[[key]] <- length(states) }
      rows <- c(rows, i); cols <- c(cols, index[[key]]); vals <- c(vals, p[k])
    }
    i <- i + 1
  }
  n <- length(states); Q <- matrix(0, n, n)
  for (j in seq_along(rows)) Q[rows[j], cols[j]] <- Q[rows[j], cols[j]] + vals[j]
  solve(diag(n) - Q, rep(1, n))[1]
}
for (use in list(1, 1:2, c(1, 3), c(1, 4), 1:3, c(1, 2, 4), c(1, 3, 4), 1:4)) cat(use, ":", format(rules(use, 0), digits = 8), "\n")
for (d in c(0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.6, 2, 3)) cat("shift", d, ":", format(rules(1:4, d), digits = 8), "\n")
