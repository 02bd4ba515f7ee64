# Left-, right- and interval-censored durations with weights: answers of survreg (R package survival).
# Run in this folder: Rscript interval.R
suppressPackageStartupMessages(library(survival))
set.seed(20260)
n <- 90
width <- round(rnorm(n), 3); painted <- rbinom(n, 1, .4)
t <- exp(2.8 + .4 * width - .3 * painted + .7 * log(rexp(n)))
kind <- sample(c("ended", "running", "before", "between"), n, TRUE, c(.35, .2, .15, .3))
lower <- upper <- round(t, 2) + .01
lower[kind == "running"] <- round(t[kind == "running"] * runif(sum(kind == "running"), .2, 1), 2) + .01; upper[kind == "running"] <- NA
upper[kind == "before"] <- round(t[kind == "before"] * runif(sum(kind == "before"), 1, 3), 2) + .02; lower[kind == "before"] <- NA
b <- kind == "between"; lower[b] <- pmax(.01, floor(t[b] / 7) * 7); upper[b] <- lower[b] + 7
d <- data.frame(kind, lower, upper, width, painted, weight = sample(1:3, n, TRUE))
write.csv(d, "interval.csv", row.names = FALSE, quote = FALSE, na = "")
d <- read.csv("interval.csv")
num <- function(x) paste0("[", paste(sprintf("%.17g", x), collapse = ","), "]")
mat <- function(m) paste0("[", paste(apply(m, 1, num), collapse = ","), "]")
one <- function(dist, weights) {
  m <- survreg(Surv(lower, upper, type = "interval2") ~ width + painted, d, weights = weights, dist = dist,
    control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
  q <- predict(m, data.frame(width = c(-1, 0, 2), painted = c(1, 0, 1)), type = "quantile", p = c(.1, .5, .9), se.fit = TRUE)
  sprintf('{"coef": %s, "scale": %.17g, "vcov": %s, "loglik": %.17g, "quantiles": %s, "quantile_se": %s}',
    num(coef(m)), m$scale, mat(vcov(m)), m$loglik[2], mat(q$fit), mat(q$se.fit))
}
dists <- c("weibull", "lognormal", "loglogistic", "exponential")
out <- c(sapply(dists, function(k) sprintf('"%s": %s', k, one(k, NULL))),
  sapply(dists, function(k) sprintf('"%s_weighted": %s', k, one(k, d$weight))))
writeLines(c("{", paste0('"software": "', R.version.string, ', survival ', packageVersion("survival"), '",'), paste(out, collapse = ",\n"), "}"), "interval.json")
