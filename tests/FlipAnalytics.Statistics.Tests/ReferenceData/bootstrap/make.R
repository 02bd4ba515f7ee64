# replicates.csv holds what the library's own generator gave (seed 7: means of days.csv); the
# limits are those of R's package boot from just these replicates.
suppressPackageStartupMessages(library(boot))
days <- read.csv("days.csv")$days; t <- read.csv("replicates.csv")$mean; n <- length(days)
fake <- list(t0 = mean(days), t = matrix(t), R = length(t), data = days, statistic = function(d, i) mean(d[i]), sim = "ordinary", stype = "i", strata = rep(1, n), weights = rep(1 / n, n), call = quote(boot(days, m, R = 999)))
class(fake) <- "boot"
left <- sapply(1:n, function(i) mean(days[-i])); L <- (n - 1) * (mean(left) - left)
rows <- do.call(rbind, lapply(c(.8, .9, .95), function(level) {
  ci <- boot.ci(fake, conf = level, type = c("perc", "bca"), L = L)
  data.frame(level = level, perc_low = ci$percent[4], perc_high = ci$percent[5], bca_low = ci$bca[4], bca_high = ci$bca[5])
}))
write.csv(format(rows, digits = 17), "limits.csv", row.names = FALSE, quote = FALSE)
