source("../common.R"); source("../lmm.R")
types <- c("dresser", "desk", "nightstand", "bookcase", "sideboard"); cols <- c("white", "sage", "navy", "charcoal", "natural", "blush")
for (seed in 20501:20600) { # first seed whose colour variance lands on 0 under both REML and ML
  set.seed(seed); n <- 90
  d <- data.frame(type = sample(types, n, TRUE), colour = sample(cols, n, TRUE))
  d$size <- round(exp(rnorm(n, -1, .5)), 3); d$hours <- round(rgamma(n, 4, .6), 1); d$condition <- sample(1:5, n, TRUE)
  ut <- setNames(rnorm(5, 0, .30), types)
  d$price <- round(exp(5 + .4 * log(d$size) + .03 * d$hours + .05 * d$condition + ut[d$type] + rnorm(n, 0, .25)), 2)
  f <- fit_polished(log(price) ~ log(size) + hours + condition + (1 | type) + (1 | colour), transform(d, type = factor(type), colour = factor(colour)), TRUE)
  if (f$theta[match("colour", names(getME(f$m, "cnms")))] == 0) break
}
write_input(d); d <- read_input(factors = c("type", "colour"))
new <- data.frame(size = c(.3, .5, .8, .2), hours = c(4, 8, 12, 3), condition = c(2, 3, 4, 5), type = c("dresser", "desk", "armoire", "desk"), colour = c("white", "sage", "navy", "mustard"))
a <- lmm_answer(d, log(price) ~ log(size) + hours + condition + (1 | type) + (1 | colour), ~ log(size) + hours + condition, c("type", "colour"), new)
stopifnot(a$reml$at_zero_boundary["colour"], a$ml$at_zero_boundary["colour"])
write_answer(c(list(case = "lmm/05_furniture_zero_colour", source = paste0("synthetic, set.seed(", seed, "); no colour effect was put in and the estimate is exactly 0"), model = "log(price) ~ log(size) + hours + condition + (1|type) + (1|colour)", versions = versions("lme4", "numDeriv"), tolerance = lmm_tol, note = lmm_note), a))
