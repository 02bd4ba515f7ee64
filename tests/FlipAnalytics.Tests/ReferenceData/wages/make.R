# Generated logs, and what each flip and each quarter of them paid by the hour.
# Rscript make.R in this folder writes every other file here but README.md (R 4.2.2, base only).
RNGkind(sample.kind = "Rejection")
types <- c("dresser", "desk", "nightstand", "bookcase", "sideboard", "hutch", "vanity", "bench")
colors <- c("white", "sage", "navy", "charcoal", "natural", "blush")
finishes <- c("satin", "matte", "wax")
as_of <- as.Date("2024-12-31")
fee <- 0.08
slowness <- c(white = 0, sage = -.2, navy = .15, charcoal = .05, natural = -.1, blush = .3)
make_log <- function(seed, n) {
  set.seed(seed)
  ut <- setNames(rnorm(8, 0, .28), types); uc <- setNames(rnorm(6, 0, .12), colors)
  d <- data.frame(id = sprintf("P%05d", 1:n), type = sample(types, n, TRUE, c(.28, .2, .18, .12, .1, .06, .04, .02)),
    count = sample(1:3, n, TRUE, c(.85, .1, .05)), width = round(runif(n, 35, 190)), depth = round(runif(n, 28, 65)),
    height = round(runif(n, 40, 200)), condition = sample(1:5, n, TRUE),
    color = sample(colors, n, TRUE, c(.3, .2, .18, .14, .12, .06)), finish = sample(finishes, n, TRUE),
    hours = round(rgamma(n, 4, .5), 2), supplies = round(rgamma(n, 3, .1), 2))
  mu <- 5 + .35 * log(d$width * d$depth * d$height / 1e6) + .06 * d$condition + .012 * d$hours + .4 * log(d$count) + ut[d$type] + uc[d$color]
  price <- exp(mu + rnorm(n, 0, .2)); d$buy_price <- round(price * runif(n, .1, .45), 2)
  ratio <- exp(rnorm(n, .12, .12)); d$asking_price <- round(price * ratio / 5) * 5
  listed <- as_of - sample.int(730L, n, TRUE); eta <- 2.9 + 1.4 * log(ratio) - .05 * d$condition + slowness[d$color]
  t <- pmax(1, ceiling(exp(eta) * (-log(runif(n)))^(1 / 1.2))); sold <- listed + t <= as_of & !(runif(n) < .04)
  d$listed_on <- listed; d$sold_on <- listed + t; d$sold_on[!sold] <- NA
  d$sold_price <- round(pmin(price * exp(rnorm(n, 0, .03)), d$asking_price), 2); d$sold_price[!sold] <- NA
  d[order(d$listed_on, d$id), ]
}
full <- function(x) ifelse(is.na(x), "", sprintf("%.17g", x))
answer <- function(d, name) {
  b <- d[!is.na(d$sold_on), ]
  profit <- b$sold_price * (1 - fee) - b$buy_price - b$supplies
  quarter <- paste0(format(b$sold_on, "%Y"), "-Q", (as.integer(format(b$sold_on, "%m")) + 2) %/% 3)
  write.csv(data.frame(id = b$id, profit = full(profit), wage = full(profit / b$hours)),
    paste0(name, "-by-flip.csv"), row.names = FALSE, quote = FALSE)
  k <- !is.na(b$hours); p <- profit[k]; h <- b$hours[k]; q <- sort(unique(quarter))
  write.csv(data.frame(quarter = q, pieces = as.vector(table(quarter)[q]), profit = full(as.vector(tapply(profit, quarter, sum)[q])),
      wage = full(as.vector(tapply(p, quarter[k], sum)[q] / tapply(h, quarter[k], sum)[q]))),
    paste0(name, "-by-quarter.csv"), row.names = FALSE, quote = FALSE)
  # Least squares of the wage with hours as weights, errors robust to unequal scatter (HC1), by the matrix formula.
  years <- as.numeric(b$sold_on[k]) / 365.25
  robust <- function(f) {
    X <- model.matrix(f); A <- solve(crossprod(X, X * h)); e <- h * residuals(f)
    sqrt(diag(A %*% crossprod(X * e) %*% A) * length(e) / f$df.residual)
  }
  level <- lm(p / h ~ 1, weights = h); slope <- lm(p / h ~ years, weights = h)
  t1 <- qt(.975, length(p) - 1) * robust(level)[1]; t2 <- qt(.975, length(p) - 2) * robust(slope)[2]
  data.frame(log = name, flips = length(p), wage = full(sum(p) / sum(h)), low = full(coef(level)[1] - t1), high = full(coef(level)[1] + t1),
    slope = full(coef(slope)[2]), slope_low = full(coef(slope)[2] - t2), slope_high = full(coef(slope)[2] + t2),
    quartile_1 = full(quantile(p / h, .25)), median = full(median(p / h)), quartile_3 = full(quantile(p / h, .75)))
}
all <- do.call(rbind, lapply(list(c(40601, 60), c(40602, 300), c(40603, 3000)), function(s) {
  name <- paste0("log-", s[2]); d <- make_log(s[1], s[2])
  write.csv(d, paste0(name, ".csv"), row.names = FALSE, quote = FALSE, na = "")
  answer(d, name)
}))
write.csv(all, "wages.csv", row.names = FALSE, quote = FALSE)
