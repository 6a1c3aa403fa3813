# Kaplan-Meier, Nelson-Aalen, log-rank and Cox values, for the tests of survival/. R 4.2.2, survival 3.5-3.
library(survival); options(digits = 10)
t6 <- c(6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35); o6 <- c(1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0)
tp <- c(1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23)
km <- survfit(Surv(t6, o6) ~ 1, conf.type = "log-log"); s <- summary(km)
print(data.frame(s$time, s$n.risk, s$n.event, s$surv, s$std.err, s$lower, s$upper)); print(quantile(km, 0.5))
kp <- survfit(Surv(tp) ~ 1, conf.type = "log-log"); print(quantile(kp, 0.5)); print(data.frame(km$time, km$cumhaz, km$std.chaz)[km$n.event > 0, ])
even <- survfit(Surv(c(1, 2, 3, 4)) ~ 1, conf.type = "log-log"); print(quantile(even, 0.5))

d <- c(t6, tp); o <- c(o6, rep(1, 21)); g <- rep(0:1, each = 21)
f <- survdiff(Surv(d, o) ~ g); print(c(f$obs, f$exp, f$var[1, 1], f$chisq)); print(survdiff(Surv(d, o) ~ g, rho = 1)$chisq, digits = 10)
for (ties in c("breslow", "efron")) { f <- coxph(Surv(d, o) ~ g, ties = ties); s <- summary(f)
  print(c(coef(f), sqrt(vcov(f)), f$loglik, s$logtest[1], s$sctest[1], f$wald.test)) }

# Left truncation, ties, strata, two covariates, three groups.
e <- c(0, 2, 0, 5, 1, 0, 3, 0, 6, 2, 0, 4, 1, 0, 7, 0); dd <- c(5, 8, 8, 9, 4, 12, 8, 3, 12, 10, 7, 9, 5, 14, 12, 6)
oo <- c(1, 1, 0, 1, 1, 1, 1, 0, 1, 0, 1, 1, 1, 0, 1, 1); x <- c(1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 1, 0, 0, 0, 1, 1)
y <- c(2.1, 0.3, 1.7, 3.2, 0.4, 2.2, 1.1, 0.9, 2.8, 1.5, 0.2, 2.7, 1.9, 0.8, 1.2, 2.4); st <- rep(c("a", "b"), 8); gr <- rep(c("p", "q", "r", "q"), 4)
k <- survfit(Surv(e, dd, oo) ~ 1, conf.type = "log-log"); s <- summary(k); print(data.frame(s$time, s$n.risk, s$n.event, s$surv, s$std.err, s$lower, s$upper)); print(quantile(k, 0.5))
f <- coxph(Surv(e, dd, oo) ~ x + y + strata(st)); print(coef(f)); print(sqrt(diag(vcov(f)))); print(c(f$loglik, summary(f)$sctest[1], f$wald.test))
print(survdiff(Surv(dd, oo) ~ gr)); print(survdiff(Surv(dd, oo) ~ gr)$chisq); st2 <- rep(c("a", "a", "a", "b", "b"), length.out = 16); print(survdiff(Surv(dd, oo) ~ gr + strata(st2))$chisq)
# Left-truncated log-rank as the score test of Cox (no ties in the events, so both agree).
e2 <- c(0, 1, 2, 0, 3, 1, 0, 2); d2 <- c(4, 7, 9, 2.5, 8, 6, 11, 5); o2 <- c(1, 1, 0, 1, 1, 1, 1, 0); g2 <- c(0, 0, 0, 0, 1, 1, 1, 1)
print(summary(coxph(Surv(e2, d2, o2) ~ g2))$sctest)
