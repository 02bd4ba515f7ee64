# Profile-likelihood limits of standard deviations, for the cases of ../lmm.
#   confint: lme4's confint(profile(.)), which profiles the ordinary likelihood and interpolates it by splines
#   ml, reml: the same limits without interpolation. -2 log-likelihood as a function of (theta, sigma) comes from the pieces
#   of lme4's deviance function; everything but one standard deviation is minimised out, and the limit is where the
#   criterion lies qchisq(level, 1) above its minimum.
source("../lmm/common.R")
suppressPackageStartupMessages(library(lme4))
setwd("../lmm/04_furniture_rare_levels"); rare <- read.csv("input.csv"); setwd("../06_log_60")
log60 <- read.csv("input.csv", na.strings = ""); setwd("../../profile")
log60$log_volume <- log(log60$width * log60$depth * log60$height / 1e6); log60$log_count <- log(log60$count)
log60 <- log60[complete.cases(log60[, c("sold_price", "hours")]), ]
case <- function(name) read.csv(file.path("../lmm", name, "input.csv"))
cases <- list(
  "01_penicillin" = list(diameter ~ 1 + (1 | plate) + (1 | sample), case("01_penicillin")),
  "02_dyestuff" = list(yield ~ 1 + (1 | batch), case("02_dyestuff")),
  "03_dyestuff2_zero" = list(yield ~ 1 + (1 | batch), case("03_dyestuff2_zero")),
  "04_furniture_rare_levels" = list(log(price) ~ log(size) + hours + condition + (1 | type) + (1 | colour), rare),
  "06_log_60" = list(log(sold_price) ~ log_volume + condition + hours + log_count + (1 | type) + (1 | color), log60))
limits <- function(formula, d, groups, REML, level) {
  lf <- lFormula(formula, d, REML = REML); devf <- do.call(mkLmerDevfun, lf); e <- environment(devf)
  n <- nrow(lf$X); df <- if (REML) n - ncol(lf$X) else n
  order_in_theta <- match(groups, names(lf$reTrms$cnms)); k <- length(groups)
  # sds: one a group, then sigma
  f <- function(sds) { s <- sds[k + 1]; th <- numeric(k); th[order_in_theta] <- sds[1:k] / s; devf(th)
    q <- e$resp$wrss() + e$pp$sqrL(1)
    df * log(2 * pi * s^2) + q / s^2 + e$pp$ldL2() + if (REML) e$pp$ldRX2() else 0 }
  best <- function(free, fixed, start) { # minimise over the sds in `free`; residual sd on the log scale
    g <- function(p) { sds <- fixed; sds[free] <- ifelse(free == k + 1, exp(p), p); f(sds) }
    lower <- ifelse(free == k + 1, -Inf, 0); p <- ifelse(free == k + 1, log(start[free]), start[free])
    for (again in 1:4) { o <- nlminb(p, g, lower = lower, control = list(rel.tol = 1e-15, x.tol = 1e-12, abs.tol = 0, eval.max = 5000, iter.max = 5000)); p <- o$par }
    sds <- fixed; sds[free] <- ifelse(free == k + 1, exp(p), p); list(value = o$objective, sds = sds) }
  s0 <- sd(model.response(lf$fr))
  all <- best(1:(k + 1), rep(NA, k + 1), rep(s0 / 2, k + 1))
  cut <- qchisq(level, 1)
  out <- lapply(1:(k + 1), function(j) {
    above <- function(v) { fixed <- rep(NA, k + 1); fixed[j] <- v; free <- setdiff(1:(k + 1), j)
      starts <- list(pmax(all$sds, 1e-3 * s0), rep(s0 / 2, k + 1))
      min(sapply(starts, function(s) best(free, fixed, s)$value)) - all$value - cut }
    est <- all$sds[j]; if (est < 1e-5 * s0) est <- 0
    low <- if (j <= k && above(0) <= 0) 0 else uniroot(above, c(est * 1e-3 + 1e-12, est), tol = 1e-13)$root
    up <- max(est, s0 / 10); while (above(up) < 0) up <- up * 2
    c(est, low, uniroot(above, c(est, up), tol = 1e-13)$root) })
  m <- do.call(rbind, out)
  list(name = c(groups, "Residual"), estimate = arr(m[, 1]), low = arr(m[, 2]), high = arr(m[, 3]))
}
answer <- lapply(cases, function(cs) {
  formula <- cs[[1]]; environment(formula) <- globalenv(); d <- cs[[2]]
  m <- suppressMessages(lmer(formula, d)); groups <- sapply(findbars(formula), function(b) as.character(b[[3]]))
  pr <- suppressWarnings(profile(m, which = "theta_", signames = TRUE))
  ci <- suppressWarnings(confint(pr, level = .95))
  own <- names(getME(m, "cnms")); rows <- c(match(groups, own), length(own) + 1)
  list(confint = list(name = c(groups, "Residual"), low = arr(unname(ci[rows, 1])), high = arr(unname(ci[rows, 2]))),
    ml95 = limits(formula, d, groups, FALSE, .95), reml95 = limits(formula, d, groups, TRUE, .95), reml80 = limits(formula, d, groups, TRUE, .80))
})
write_answer(c(answer, list(versions = versions("lme4"))), "answers.json")
