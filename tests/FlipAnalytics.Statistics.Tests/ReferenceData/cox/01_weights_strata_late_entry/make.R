source("../../common.R"); suppressPackageStartupMessages(library(survival))
set.seed(60601); n <- 160
d <- data.frame(entered = round(ifelse(runif(n) < .5, 0, runif(n, 1, 15))), size = round(rnorm(n), 2), sage = as.integer(runif(n) < .3), place = sample(c("barn", "shed", "yard"), n, TRUE), weight = round(runif(n, .3, 3), 2))
t <- d$entered + rexp(n) * 20 * exp(-.4 * d$size - .5 * d$sage); cens <- d$entered + runif(n, 5, 60)
d$exit <- pmax(d$entered + 1, ceiling(pmin(t, cens))); d$ended <- as.integer(t <= cens)
write_input(d); d <- read_input()
one <- function(ties) {
  m <- coxph(Surv(entered, exit, ended) ~ size + sage + strata(place), d, weights = d$weight, ties = ties, robust = FALSE, control = coxph.control(eps = 1e-13, iter.max = 60, toler.chol = 1e-14))
  b <- basehaz(m, centered = FALSE); r <- residuals(m, "schoenfeld"); z <- cox.zph(m)$table; con <- concordance(m)
  list(coef = coef(m), se = sqrt(diag(m$var)), vcov = unname(m$var), loglik_null = m$loglik[1], loglik = m$loglik[2], score_test = m$score, wald_test = m$wald.test, lr_test = 2 * diff(m$loglik),
    concordance = unname(summary(m)$concordance[1]), concordance_se = unname(summary(m)$concordance[2]), concordant = sum(con$count[, 1]), discordant = sum(con$count[, 2]), tied_score = sum(con$count[, 3]),
    baseline_cumhaz_at_x_zero = list(hazard = arr(b$hazard), time = arr(b$time), stratum = arr(as.character(b$strata))),
    schoenfeld = unname(r), schoenfeld_time = arr(as.numeric(rownames(r))), ph_test_zph_km = list(term = rownames(z), chisq = unname(z[, 1]), df = unname(z[, 2]), p = unname(z[, 3])))
}
write_answer(list(case = "cox/01_weights_strata_late_entry", source = "synthetic, set.seed(60601)", versions = versions("survival"), efron = one("efron"), breslow = one("breslow")))
