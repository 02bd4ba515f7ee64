# Accelerated failure time answers for every <case>.csv (start, stop, event, design columns) and <case>-new.csv here.
# Run in this folder: Rscript aft.R
suppressPackageStartupMessages(library(survival))
num <- function(x) paste0("[", paste(sprintf("%.17g", x), collapse = ","), "]")
mat <- function(m) paste0("[", paste(apply(as.matrix(m), 1, num), collapse = ","), "]")
answer <- function(coef, log_scale, vcov, loglik, quantiles, more = "")
  sprintf('{"coef": %s, "log_scale": %.17g, "vcov": %s, "loglik": %.17g, "quantiles": %s%s}', num(coef), log_scale, mat(vcov), loglik, mat(quantiles), more)

# No late entry: survreg itself.
whole <- function(d, X, new, dist) {
  formula <- as.formula(paste("Surv(stop, event) ~ 0 +", paste0("`", colnames(X), "`", collapse = " + ")))
  m <- survreg(formula, d, dist = dist, control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
  q <- predict(m, new, type = "quantile", p = c(.1, .5, .9), se.fit = TRUE); lp <- predict(m, new, type = "lp", se.fit = TRUE)
  answer(coef(m), log(m$scale), vcov(m), m$loglik[2], q$fit,
    sprintf(', "linear_predictor": %s, "linear_predictor_se": %s, "quantile_se": %s', num(lp$fit), num(lp$se.fit), mat(q$se.fit)))
}

# Late entry: maximum of the likelihood written out, a row being event log f(stop) + (1 - event) log S(stop) - log S(start).
late <- function(d, X, new, dist) {
  lS <- function(t, eta, s) { z <- (log(t) - eta) / s; r <- switch(dist, weibull = -exp(z), lognormal = pnorm(z, lower.tail = FALSE, log.p = TRUE), loglogistic = -log1p(exp(z))); ifelse(t <= 0, 0, r) }
  lf <- function(t, eta, s) { z <- (log(t) - eta) / s; g <- switch(dist, weibull = z - exp(z), lognormal = dnorm(z, log = TRUE), loglogistic = z - 2 * log1p(exp(z))); g - log(s) - log(t) }
  ll <- function(p) { eta <- drop(X %*% p[-length(p)]); s <- exp(p[length(p)]); sum(d$event * lf(d$stop, eta, s) + (1 - d$event) * lS(d$stop, eta, s) - lS(d$start, eta, s)) }
  m0 <- survreg(Surv(stop, event) ~ X - 1, d, dist = dist); p <- c(coef(m0), log(m0$scale))
  for (r in 1:3) p <- optim(p, function(q) -ll(q), method = "BFGS", control = list(maxit = 5000, reltol = 1e-15))$par
  d12 <- function(z, dens) switch(dist, # first and second derivative in z of log f (dens) or log S
    weibull = if (dens) list(1 - exp(z), -exp(z)) else list(-exp(z), -exp(z)),
    lognormal = if (dens) list(-z, rep(-1, length(z))) else { h <- exp(dnorm(z, log = TRUE) - pnorm(z, lower.tail = FALSE, log.p = TRUE)); list(-h, -h * (h - z)) },
    loglogistic = { q <- plogis(z); if (dens) list(1 - 2 * q, -2 * q * (1 - q)) else list(-q, -q * (1 - q)) })
  gh <- function(p) {
    eta <- drop(X %*% p[-length(p)]); s <- exp(p[length(p)]); ge <- gt <- hee <- het <- htt <- numeric(length(eta))
    add <- function(t, w, dens) { k <- which(t > 0 & w != 0); z <- (log(t[k]) - eta[k]) / s; q <- d12(z, dens); w <- w[k]
      ge[k] <<- ge[k] - w * q[[1]] / s; gt[k] <<- gt[k] - w * (z * q[[1]] + dens); hee[k] <<- hee[k] + w * q[[2]] / s^2
      het[k] <<- het[k] + w * (q[[1]] + z * q[[2]]) / s; htt[k] <<- htt[k] + w * (z * q[[1]] + z^2 * q[[2]]) }
    add(d$stop, d$event, 1); add(d$stop, 1 - d$event, 0); add(d$start, rep(-1, nrow(d)), 0)
    list(g = c(crossprod(X, ge), sum(gt)), H = rbind(cbind(crossprod(X, X * hee), crossprod(X, het)), c(crossprod(X, het), sum(htt)))) }
  for (it in 1:30) { q <- gh(p); st <- solve(q$H, q$g); p <- p - st; if (max(abs(st)) < 1e-13) break }
  w <- switch(dist, weibull = log(-log(1 - c(.1, .5, .9))), lognormal = qnorm(c(.1, .5, .9)), loglogistic = qlogis(c(.1, .5, .9)))
  eta <- drop(as.matrix(new) %*% p[-length(p)]); s <- exp(p[length(p)])
  answer(p[-length(p)], p[length(p)], solve(-gh(p)$H), ll(p), t(sapply(eta, function(e) exp(e + s * w))))
}

read <- function(name) read.csv(paste0(name, ".csv"), check.names = FALSE)
one <- function(name) {
  d <- read(name); X <- as.matrix(d[-(1:3)]); new <- read(paste0(name, "-new")); fit <- if (any(d$start > 0)) late else whole
  dists <- c("weibull", "lognormal", "loglogistic", if (identical(fit, whole)) "exponential")
  sprintf('"%s": {%s}', name, paste(sprintf('"%s": %s', dists, sapply(dists, function(k) fit(d, X, new, k))), collapse = ",\n"))
}
cases <- c("lung", "ovarian", "rats", "relistings", "price-cuts", "log-60", "log-300", "log-3000")
writeLines(c("{", paste0('"software": "', R.version.string, ", survival ", packageVersion("survival"), '",'), paste(sapply(cases, one), collapse = ",\n"), "}"), "answers.json")
