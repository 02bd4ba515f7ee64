source("../common.R"); source("../lmm.R")
set.seed(20401); n <- 260
types <- c("dresser", "desk", "nightstand", "bookcase", "sideboard", "hutch", "vanity", "bench")
cols <- c("white", "sage", "navy", "charcoal", "natural", "blush", "terracotta", "teal")
d <- data.frame(type = sample(types, n, TRUE, c(.3, .22, .18, .12, .1, .05, .02, .01)), colour = sample(cols, n, TRUE, c(.35, .2, .15, .12, .1, .05, .02, .01)))
d$type[n] <- "bench"; d$colour[n - 1] <- "teal"
d$size <- round(exp(rnorm(n, -1, .5)), 3); d$hours <- round(rgamma(n, 4, .6), 1); d$condition <- sample(1:5, n, TRUE)
ut <- setNames(rnorm(8, 0, .30), types); uc <- setNames(rnorm(8, 0, .15), cols)
d$price <- round(exp(5.2 + .35 * log(d$size) + .02 * d$hours + .06 * d$condition + ut[d$type] + uc[d$colour] + rnorm(n, 0, .22)), 2)
write_input(d); d <- read_input(factors = c("type", "colour"))
new <- data.frame(size = c(.3, .5, .8, .2, .6, .4), hours = c(4, 8, 12, 3, 6, 5), condition = c(2, 3, 4, 5, 1, 3), type = c("dresser", "bench", "armoire", "desk", "armoire", "nightstand"), colour = c("white", "sage", "navy", "mustard", "mustard", "teal"))
a <- lmm_answer(d, log(price) ~ log(size) + hours + condition + (1 | type) + (1 | colour), ~ log(size) + hours + condition, c("type", "colour"), new)
write_answer(c(list(case = "lmm/04_furniture_rare_levels", source = "synthetic, set.seed(20401); some levels seen once or twice", model = "log(price) ~ log(size) + hours + condition + (1|type) + (1|colour)", versions = versions("lme4", "numDeriv"), tolerance = lmm_tol, note = lmm_note), a))
