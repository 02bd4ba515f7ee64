# Rscript --vanilla refit_log.R FOLDER
# Fits the four models of a log again from the designs that "flip fit --plain --design" wrote: what an owner with R would run
# for an answer. survreg knows no late entry, so a stretch of days that began at a price change is taken from day 0; that
# spares R work and changes the estimates a little.
suppressPackageStartupMessages({library(lme4); library(survival)})
folder <- commandArgs(TRUE)[1]
quoted <- function(names) sprintf("`%s`", names)
for (model in c("price", "hours", "supplies")) {
  design <- read.csv(file.path(folder, paste0("design-", model, ".csv")), check.names = FALSE)
  groups <- grep("^group:", names(design), value = TRUE)
  columns <- setdiff(names(design), c("response", groups))
  fit <- lmer(
    as.formula(paste("response ~ 0 +", paste(c(quoted(columns), sprintf("(1 | %s)", quoted(groups))), collapse = " + "))),
    design, control = lmerControl(calc.derivs = FALSE))
  cat(model, fixef(fit), sigma(fit), "\n")
}
design <- read.csv(file.path(folder, "design-days.csv"), check.names = FALSE)
columns <- setdiff(names(design), c("start", "stop", "event"))
fit <- survreg(
  as.formula(paste("Surv(stop, event) ~ 0 +", paste(quoted(columns), collapse = " + "))), design, dist = "weibull")
cat("days", coef(fit), fit$scale, "\n")
