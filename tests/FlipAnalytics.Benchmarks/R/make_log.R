# Rscript --vanilla make_log.R ROWS FILE
# A generated log of ROWS pieces with 20 types, 30 colors and 40 months of sale; the same ROWS give the same file.
# log_price has normal effects of type (sd 0.3), color (0.12) and month (0.05) and a residual of 0.2; days on market are
# Weibull with scale 1/1.2, rounded up to whole days and cut off where the piece was still on sale (sold = 0).
args <- commandArgs(TRUE)
rows <- as.integer(args[1])
set.seed(20260101 + rows)
effect <- function(levels, sd) rnorm(length(levels), 0, sd)
types <- sprintf("type%02d", 1:20)
colors <- sprintf("color%02d", 1:30)
months <- sprintf("%d-%02d", 2022 + (0:39) %/% 12, 1 + (0:39) %% 12)
u_type <- effect(types, .3)
u_color <- effect(colors, .12)
u_month <- effect(months, .05)
t <- sample(20, rows, TRUE)
c <- sample(30, rows, TRUE)
m <- sample(40, rows, TRUE)
log_volume <- rnorm(rows, -1, .5)
hours <- round(rgamma(rows, 4, .5), 1)
condition <- sample(1:5, rows, TRUE)
log_price <- 5 + .35 * log_volume + .012 * hours + .06 * condition + u_type[t] + u_color[c] + u_month[m] + rnorm(rows, 0, .2)
log_ratio <- rnorm(rows, 0, .12)
until_sold <- exp(3 + 1.4 * log_ratio + u_color[c]) * rexp(rows)^(1 / 1.2)
until_seen <- runif(rows, 20, 200)
log <- data.frame(
  type = types[t], color = colors[c], month = months[m], log_volume, hours, condition, log_price, log_ratio,
  days = pmax(1, ceiling(pmin(until_sold, until_seen))), sold = as.integer(until_sold <= until_seen))
write.table(log, args[2], sep = ",", row.names = FALSE, quote = FALSE)
