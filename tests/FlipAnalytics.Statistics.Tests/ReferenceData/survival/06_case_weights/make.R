# Rscript make.R: Kaplan-Meier curves of weighted spells, survfit(weights = ), errors by Greenwood's formula (robust = FALSE).
# Rows of weight 0 are left out before, since survfit keeps their times as steps at which nothing happens.
source("../../common.R"); source("../../surv.R")
d <- survival::lung[1:120, ]
d <- data.frame(time = d$time, event = as.integer(d$status == 2), sex = ifelse(d$sex == 1, "m", "f"))
i <- seq_len(nrow(d))
d$weight <- c(1, .5, 2, 0, 3, 1.25, .1)[i %% 7 + 1]
d$entered <- ifelse(i %% 3 == 0, pmin(40 * (i %% 5), d$time - 1), 0)
write_input(d)
d <- read_input(factors = "sex"); d <- d[d$weight > 0, ]
curve <- function(formula, d) {
  f <- survfit(formula, d, weights = weight, conf.type = "log-log", robust = FALSE)
  g <- survfit(formula, d, weights = weight, conf.type = "log", robust = FALSE)
  q <- quantile(f, probs = c(.25, .5, .75)); tau <- 400; s <- summary(f, rmean = tau)$table
  list(n = nrow(d), table = list(time = arr(f$time), at_risk = arr(f$n.risk), events = arr(f$n.event), censored = arr(f$n.censor),
      survival = arr(f$surv), greenwood_se = arr(f$surv * f$std.err), loglog_low = arr(f$lower), loglog_high = arr(f$upper),
      log_low = arr(g$lower), log_high = arr(g$upper)),
    quantiles_25_50_75 = list(value = arr(unname(q$quantile)), loglog_low = arr(unname(q$lower)), loglog_high = arr(unname(q$upper))),
    rmst = c(tau = tau, value = unname(s["rmean"]), se = unname(s["se(rmean)"])))
}
all <- Surv(time, event) ~ 1; late <- Surv(entered, time, event) ~ 1
answer <- list(case = "survival/06_case_weights", software = paste0(R.version.string, ", survival ", packageVersion("survival")),
  km_overall = curve(all, d), km_by_sex = list(f = curve(all, d[d$sex == "f", ]), m = curve(all, d[d$sex == "m", ])), km_late = curve(late, d))
write_answer(answer)
