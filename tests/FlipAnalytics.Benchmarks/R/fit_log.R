# Rscript --vanilla fit_log.R FILE REPEATS
# Reads the file and fits the three models, each REPEATS times, and prints "key value" lines: wall seconds of the first and
# of the fastest repeat, least seconds of processor time, estimates, and the peak memory of the process. lmer runs without its check of derivatives, which is
# faster than its default and changes no estimate.
args <- commandArgs(TRUE)
repeats <- as.integer(args[2])
say <- function(key, value) cat(sprintf("%s %.17g\n", key, value), sep = "")
timed <- function(name, fit) {
  seconds <- processor <- numeric(repeats)
  for (i in seq_len(repeats)) {
    result <- NULL
    start <- Sys.time() # finer than system.time, which counts whole milliseconds
    time <- system.time(result <- fit(), gcFirst = FALSE)
    seconds[i] <- as.numeric(difftime(Sys.time(), start, units = "secs"))
    processor[i] <- time[["user.self"]] + time[["sys.self"]]
  }
  say(paste0("first.", name), seconds[1])
  say(paste0("fastest.", name), min(seconds))
  say(paste0("processor.", name), min(processor))
  result
}
log <- timed("read", function() read.csv(args[1], stringsAsFactors = TRUE))
say("first.packages", system.time(suppressPackageStartupMessages({library(lme4); library(survival)}))[["elapsed"]])
say("rows", nrow(log))

fit <- timed("lm", function() lm(log_price ~ log_volume + hours + condition + type + color, log, model = FALSE))
say(paste0("lm.", sub("^(type|color)(type|color)", "\\1:\\2", names(coef(fit)))), coef(fit))
say("lm.sigma", summary(fit)$sigma)
rm(fit)

fit <- timed("mixed", function() lmer(
  log_price ~ log_volume + hours + condition + (1 | type) + (1 | color) + (1 | month), log,
  control = lmerControl(calc.derivs = FALSE)))
say(paste0("mixed.", names(fixef(fit))), fixef(fit))
say(paste0("mixed.sd.", names(VarCorr(fit))), sapply(VarCorr(fit), attr, "stddev"))
say("mixed.sd.residual", sigma(fit))
say("mixed.criterion", REMLcrit(fit))
rm(fit)

fit <- timed("weibull", function() survreg(Surv(days, sold) ~ log_ratio + condition + color, log, dist = "weibull"))
say(paste0("weibull.", sub("^(type|color)(type|color)", "\\1:\\2", names(coef(fit)))), coef(fit))
say("weibull.scale", fit$scale)
say("weibull.loglikelihood", fit$loglik[2])
peak <- grep("VmHWM", readLines("/proc/self/status"), value = TRUE)
say("peak.megabytes", as.numeric(gsub("[^0-9]", "", peak)) / 1024)
