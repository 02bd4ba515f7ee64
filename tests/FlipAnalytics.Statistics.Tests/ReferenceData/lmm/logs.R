# Synthetic sales logs and the mixed model of their log sale prices.
make_log <- function(seed, n, types, colors, finishes, p_type, p_color, as_of, years, aft_color, beta, sd_type, sd_color, sd_res, shape, unsold_cut) {
  set.seed(seed); RNGkind(sample.kind = "Rejection")
  nt <- length(types); nc <- length(colors)
  ut <- setNames(rnorm(nt, 0, sd_type), types); uc <- setNames(rnorm(nc, 0, sd_color), colors)
  d <- data.frame(id = sprintf("P%05d", 1:n), type = sample(types, n, TRUE, p_type), count = sample(1:3, n, TRUE, c(.85, .1, .05)),
    width = round(runif(n, 35, 190)), depth = round(runif(n, 28, 65)), height = round(runif(n, 40, 200)), condition = sample(1:5, n, TRUE),
    color = sample(colors, n, TRUE, p_color), finish = sample(finishes, n, TRUE), hours = round(rgamma(n, 4, .5), 2), supplies = round(rgamma(n, 3, .1), 2))
  mu <- beta[1] + beta[2] * log(d$width * d$depth * d$height / 1e6) + beta[3] * d$condition + beta[4] * d$hours + beta[5] * log(d$count) + ut[d$type] + uc[d$color]
  price <- exp(mu + rnorm(n, 0, sd_res)); d$buy_price <- round(price * runif(n, .1, .45), 2)
  ratio <- exp(rnorm(n, .12, .12)); d$asking_price <- round(price * ratio / 5) * 5
  listed <- as_of - sample.int(as.integer(365 * years), n, TRUE); eta <- 2.9 + 1.4 * log(ratio) - .05 * d$condition + aft_color[d$color]
  t <- pmax(1, ceiling(exp(eta) * (-log(runif(n)))^(1 / shape))); sold <- listed + t <= as_of & !(runif(n) < unsold_cut)
  # a piece withdrawn from sale stays unsold up to as_of
  d$listed_on <- listed; d$sold_on <- listed + t; d$sold_on[!sold] <- NA
  d$sold_price <- round(pmin(price * exp(rnorm(n, 0, .03)), d$asking_price), 2); d$sold_price[!sold] <- NA
  d[order(d$listed_on, d$id), ]
}
read_log <- function() { d <- read.csv("input.csv", stringsAsFactors = FALSE, na.strings = ""); d$listed_on <- as.Date(d$listed_on); d$sold_on <- as.Date(d$sold_on); d }
price_answer <- function(d, new) {
  d$log_volume <- log(d$width * d$depth * d$height / 1e6); d$log_count <- log(d$count)
  for (f in c("type", "color")) d[[f]] <- factor(d[[f]], levels = sort(unique(d[[f]]), method = "radix"))
  s <- d[!is.na(d$sold_on), ]; s$type <- droplevels(s$type); s$color <- droplevels(s$color); s$log_price <- log(s$sold_price)
  s <- s[complete.cases(s[, c("log_price", "log_volume", "condition", "hours", "log_count")]), ]
  new$log_volume <- log(new$width * new$depth * new$height / 1e6); new$log_count <- log(new$count); new$log_asking <- log(new$asking_price)
  c(list(model = "log(sold_price) ~ log_volume + condition + hours + log(count) + (1|type) + (1|color)"),
    lmm_answer(s, log_price ~ log_volume + condition + hours + log_count + (1 | type) + (1 | color), ~ log_volume + condition + hours + log_count, c("type", "color"), new))
}
