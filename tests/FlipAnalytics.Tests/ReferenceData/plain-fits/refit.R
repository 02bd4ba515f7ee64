# Refits the designs in this folder with outside software and writes answers.json; see README.md.
suppressPackageStartupMessages({library(lme4); library(survival); library(numDeriv)})
num <- function(x) sprintf("%.17g", x)
quoted <- function(x) paste0('"', x, '"')
list_of <- function(x) paste0("[", paste(num(x), collapse = ", "), "]")
named <- function(x) paste0("{ ", paste0(quoted(names(x)), ": ", num(x), collapse = ", "), " }")
read_design <- function(name) read.csv(paste0(name, ".csv"), check.names = FALSE, stringsAsFactors = FALSE)

# Last polish of lmer's variances: Newton on the analytic score of the restricted likelihood in the log variances,
#   d l / d log v_k = -v_k / 2 [ tr(P Z_k Z_k') - |Z_k' P y|^2 ], from dense matrices.
polish <- function(m, theta) {
  X <- as.matrix(getME(m, "X")); y <- getME(m, "y"); Z <- as.matrix(getME(m, "Z")); gp <- getME(m, "Gp"); n <- nrow(X)
  keep <- which(theta > 1e-3)
  ZZ <- lapply(keep, function(k) tcrossprod(Z[, (gp[k] + 1):gp[k + 1], drop = FALSE]))
  ZZ[[length(ZZ) + 1]] <- diag(n)
  score <- function(lv) {
    V <- Reduce(`+`, Map(`*`, exp(lv), ZZ)); Vi <- chol2inv(chol(V)); ViX <- Vi %*% X
    P <- Vi - ViX %*% solve(crossprod(X, ViX), t(ViX)); Py <- P %*% y
    vapply(seq_along(lv), function(k) -exp(lv[k]) / 2 * (sum(P * ZZ[[k]]) - drop(crossprod(Py, ZZ[[k]] %*% Py))), 0)
  }
  lv <- log(c(theta[keep]^2, 1) * sigma(m)^2)
  for (it in 1:20) {
    s <- score(lv)
    J <- jacobian(score, lv)
    st <- solve(J, s); lv <- lv - st
    if (max(abs(st)) < 1e-12) break
  }
  stopifnot(max(abs(score(lv))) < 1e-7)
  theta[] <- 0
  theta[keep] <- sqrt(exp(lv[seq_along(keep)] - lv[length(lv)]))
  theta
}

mixed <- function(name) {
  d <- read_design(name); g <- grep("^group:", names(d))
  frame <- data.frame(response = d$response)
  frame$X <- as.matrix(d[, setdiff(names(d)[-g], "response")])
  for (k in seq_along(g)) frame[[paste0("g", k)]] <- factor(d[[g[k]]])
  f <- as.formula(paste("response ~ 0 + X +", paste0("(1 | g", seq_along(g), ")", collapse = " + ")))
  lf <- lFormula(f, frame, REML = TRUE); devf <- do.call(mkLmerDevfun, lf)
  opt <- optimizeLmer(devf, control = list(xtol_abs = 1e-12, ftol_abs = 1e-14, maxeval = 20000))
  m <- mkMerMod(environment(devf), opt, lf$reTrms, fr = lf$fr)
  cn <- names(getME(m, "cnms"))
  opt$par <- polish(m, opt$par); opt$fval <- devf(opt$par)
  m <- mkMerMod(environment(devf), opt, lf$reTrms, fr = lf$fr)
  v <- (getME(m, "theta") * sigma(m))^2; names(v) <- sub("^group:", "", names(d)[g][as.integer(sub("g", "", cn))])
  b <- fixef(m); names(b) <- sub("^X", "", names(b)); se <- sqrt(diag(as.matrix(vcov(m)))); names(se) <- names(b)
  re <- ranef(m, condVar = TRUE)
  effects <- vapply(cn, function(k) {
    e <- re[[k]]; paste0(quoted(names(v)[cn == k]), ": { ", paste0(quoted(rownames(e)), ": [", num(e[, 1]), ", ",
      num(sqrt(as.numeric(attr(e, "postVar")))), "]", collapse = ", "), " }") }, "")
  paste0("{ \"n\": ", nrow(d), ", \"estimates\": ", named(b), ", \"standard_errors\": ", named(se), ", \"variances\": ", named(v),
    ", \"residual_variance\": ", num(sigma(m)^2), ", \"log_likelihood\": ", num(as.numeric(logLik(m))),
    ", \"levels\": { ", paste(effects, collapse = ", "), " } }")
}

ols <- function(name) {
  d <- read_design(name); X <- as.matrix(d[, -1]); m <- lm(d$response ~ 0 + X); s <- summary(m)
  b <- coef(m); names(b) <- sub("^X", "", names(b)); se <- s$coefficients[, 2]; names(se) <- names(b)
  paste0("{ \"n\": ", nrow(d), ", \"estimates\": ", named(b), ", \"standard_errors\": ", named(se), ", \"residual_variance\": ",
    num(s$sigma^2), ", \"log_likelihood\": ", num(as.numeric(logLik(m))), ", \"aic\": ", num(AIC(m)), ", \"bic\": ", num(BIC(m)),
    ", \"largest_cooks_distance\": ", num(max(cooks.distance(m), na.rm = TRUE)), " }")
}

# Weibull accelerated failure time with late entry, the likelihood written out. A row (start, stop, event] brings
#   event * log f(stop) + (1 - event) * log S(stop) - log S(start),  log T = x'b + s * e,  S(t) = exp(-exp((log t - x'b) / s)).
weibull <- function(d, X) {
  S <- function(t, eta, s) ifelse(t > 0, -exp((log(t) - eta) / s), 0)
  ll <- function(p) { s <- exp(p[length(p)]); eta <- drop(X %*% p[-length(p)]); z <- (log(d$stop) - eta) / s
    sum(d$event * (z - log(s) - log(d$stop)) + S(d$stop, eta, s) - S(d$start, eta, s)) }
  g <- function(p) { s <- exp(p[length(p)]); eta <- drop(X %*% p[-length(p)]); z <- (log(d$stop) - eta) / s
    h <- exp(z); z0 <- ifelse(d$start > 0, (log(pmax(d$start, 1e-300)) - eta) / s, 0); h0 <- ifelse(d$start > 0, exp(z0), 0)
    c(crossprod(X, (-d$event + h - h0) / s), sum(d$event * (-z - 1) + h * z - h0 * z0)) }
  m0 <- survreg(Surv(d$stop, d$event) ~ 0 + X); p <- c(coef(m0), log(m0$scale))
  for (it in 1:60) { st <- solve(jacobian(g, p), g(p)); while (!is.finite(ll(p - st)) || ll(p - st) < ll(p) - 1e-6) st <- st / 2; p <- p - st; if (max(abs(st)) < 1e-12) break }
  stopifnot(max(abs(g(p))) < 1e-6)
  list(p = p, V = solve(-jacobian(g, p)), ll = ll(p))
}

days <- function(name) {
  d <- read_design(name); X <- as.matrix(d[, -(1:3)]); k <- ncol(X)
  f <- weibull(d, X)
  if (all(d$start == 0)) { # survreg itself knows this case
    m <- survreg(Surv(d$stop, d$event) ~ 0 + X, control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
    stopifnot(max(abs(c(coef(m), log(m$scale)) - f$p)) < 1e-7, abs(m$loglik[2] - f$ll) < 1e-7, max(abs(vcov(m) / f$V - 1)) < 1e-5)
    f <- list(p = c(coef(m), log(m$scale)), V = vcov(m), ll = m$loglik[2])
  }
  se <- sqrt(diag(f$V)); b <- f$p[1:k]; names(b) <- colnames(X); names(se) <- c(colnames(X), "log(scale)")
  paste0("{ \"n\": ", nrow(d), ", \"estimates\": ", named(b), ", \"standard_errors\": ", named(se[1:k]), ", \"scale\": ",
    num(exp(f$p[k + 1])), ", \"log_scale_standard_error\": ", num(unname(se[k + 1])), ", \"log_likelihood\": ", num(f$ll), " }")
}

versions <- c(R = paste(R.version$major, R.version$minor, sep = "."), vapply(c("lme4", "survival", "numDeriv"), function(p) as.character(packageVersion(p)), ""))
fits <- c(
  vapply(c("price", "hours", "supplies"), mixed, ""), vapply(c("price-ols", "hours-ols", "supplies-ols"), ols, ""),
  vapply(c("days", "days-episodes"), days, ""))
writeLines(c("{", paste0("  \"software\": { ", paste0(quoted(names(versions)), ": ", quoted(versions), collapse = ", "), " },"),
  paste0("  ", quoted(names(fits)), ": ", fits, c(rep(",", length(fits) - 1), ""))), "answers.json")
cat("}\n", file = "answers.json", append = TRUE)
