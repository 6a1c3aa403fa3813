# Two-group exact p-values from R 4.2.2: fisher.test and poisson.test (minimum likelihood; and both one-sided), small to very large counts.
source("write-json.R")
fisher <- do.call(rbind, lapply(list(c(3, 4, 1, 4), c(2, 17, 10, 13), c(7, 34, 1, 34), c(0, 12, 5, 20), c(9, 9, 4, 9), c(12, 300, 30, 1500), c(160, 20000, 90, 21000)), function(t) {
  m <- matrix(c(t[1], t[3], t[2] - t[1], t[4] - t[3]), 2)
  data.frame(exposed_events = t[1], exposed_total = t[2], unexposed_events = t[3], unexposed_total = t[4],
    minimum_likelihood = fisher.test(m)$p.value, greater = fisher.test(m, alternative = "greater")$p.value, less = fisher.test(m, alternative = "less")$p.value)
}))
write_rows(fisher, "fisher.json")
rate <- do.call(rbind, lapply(list(c(41, 28010, 15, 19017), c(0, 100, 6, 250), c(7, 30.5, 0, 41), c(11, 800, 23, 1024), c(410000, 28010, 279000, 19017)), function(t) {
  p <- function(alt) poisson.test(t[c(1, 3)], t[c(2, 4)], alternative = alt)$p.value
  ci <- poisson.test(t[c(1, 3)], t[c(2, 4)])$conf.int
  data.frame(exposed_events = t[1], exposed_time = t[2], unexposed_events = t[3], unexposed_time = t[4],
    minimum_likelihood = p("two.sided"), greater = p("greater"), less = p("less"), low = ci[1], high = if (is.finite(ci[2])) ci[2] else -1)
}))
write_rows(rate, "poisson-rate.json")
