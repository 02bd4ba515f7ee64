# Day numbers as a column: survreg on the days from 738000, carried back to day numbers by algebra, b0 - 738000 b1.
# survreg on the day numbers themselves is no yardstick: its own digits go. It is printed to show that it answers.
# Run in this folder: Rscript day-number.R
suppressPackageStartupMessages(library(survival))
set.seed(73800)
num <- function(x) paste0("[", paste(sprintf("%.17g", x), collapse = ","), "]")
mat <- function(m) paste0("[", paste(apply(m, 1, num), collapse = ","), "]")
origin <- 738000
one <- function(days, dist) {
  d <- read.csv(sprintf("day-number-%d.csv", days), check.names = FALSE)
  d$from <- d$day - origin
  control <- survreg.control(rel.tolerance = 1e-14, maxiter = 200)
  m <- survreg(Surv(stop, event) ~ from + size, d, dist = dist, control = control)
  raw <- survreg(Surv(stop, event) ~ day + size, d, dist = dist, control = control)
  cat(days, dist, "day numbers as they are less by algebra:", coef(raw)[2] - coef(m)[2], "\n")
  k <- nrow(vcov(m)); back <- diag(k); back[1, 2] <- -origin
  p <- predict(m, data.frame(from = c(0, days, 2 * days), size = c(-1, 0, 2)), type = "lp", se.fit = TRUE)
  sprintf('{"coef": %s, "scale": %.17g, "vcov": %s, "loglik": %.17g, "linear_predictor": %s, "linear_predictor_se": %s}',
    num(c(coef(m)[1] - origin * coef(m)[2], coef(m)[-1])), m$scale, mat(back %*% vcov(m) %*% t(back)), m$loglik[2],
    num(p$fit), num(p$se.fit))
}
out <- c()
for (days in c(5, 30)) {
  n <- 60
  day <- origin + sample(0:days, n, TRUE); size <- round(rnorm(n), 3)
  t <- exp(3 + .03 * (day - origin) + .4 * size + .7 * log(rexp(n))); seen <- runif(n, 5, 80)
  write.csv(data.frame(start = 0, stop = round(pmin(t, seen), 3) + .001, event = as.numeric(t <= seen), "(Intercept)" = 1, day, size,
    check.names = FALSE), sprintf("day-number-%d.csv", days), row.names = FALSE, quote = FALSE)
  for (dist in c("weibull", "lognormal", "loglogistic", "exponential"))
    out <- c(out, sprintf('"%d-%s": %s', days, dist, one(days, dist)))
}
writeLines(c("{", paste0('"software": "', R.version.string, ', survival ', packageVersion("survival"), '",'), paste(out, collapse = ",\n"), "}"), "day-number.json")
