# Functions the reference cases have in common (plain R, no package needed for this file).
invisible(Sys.setlocale("LC_COLLATE", "C"))
# num(): shortest of %.15g/%.16g/%.17g that reads back to the same double.
num <- function(x) {
  out <- character(length(x))
  for (i in seq_along(x)) {
    v <- x[i]
    if (is.na(v)) { out[i] <- "null"; next }
    if (is.infinite(v)) { out[i] <- if (v > 0) "\"Infinity\"" else "\"-Infinity\""; next }
    for (d in 15:17) { s <- sprintf(paste0("%.", d, "g"), v); if (as.numeric(s) == v) break }
    out[i] <- s
  }
  out
}
qs <- function(s) paste0("\"", gsub("\n", "\\\\n", gsub("\"", "\\\\\"", gsub("\\\\", "\\\\\\\\", s))), "\"")
# arr(): force an array even when length is 1
arr <- function(x) { attr(x, "force_array") <- TRUE; x }
js <- function(x, ind = 0) {
  pad <- strrep("  ", ind + 1); end <- strrep("  ", ind)
  if (is.null(x)) return("null")
  if (is.factor(x)) x <- as.character(x)
  if (is.matrix(x)) { # row-major array of arrays, names given beside it
    rows <- apply(x, 1, function(r) paste0("[", paste(num(as.numeric(r)), collapse = ", "), "]"))
    return(paste0("[\n", pad, paste(rows, collapse = paste0(",\n", pad)), "\n", end, "]"))
  }
  if (is.data.frame(x)) x <- lapply(as.list(x), function(col) arr(if (is.factor(col)) as.character(col) else col))
  if (is.list(x)) {
    if (length(x) == 0) return(if (is.null(names(x))) "[]" else "{}")
    if (is.null(names(x))) return(paste0("[\n", pad, paste(vapply(x, js, "", ind = ind + 1), collapse = paste0(",\n", pad)), "\n", end, "]"))
    parts <- vapply(names(x), function(n) paste0(qs(n), ": ", js(x[[n]], ind + 1)), "")
    return(paste0("{\n", pad, paste(parts, collapse = paste0(",\n", pad)), "\n", end, "}"))
  }
  fa <- isTRUE(attr(x, "force_array"))
  nm <- names(x)
  s <- if (is.character(x)) ifelse(is.na(x), "null", qs(x)) else if (is.logical(x)) ifelse(is.na(x), "null", ifelse(x, "true", "false")) else num(as.numeric(x))
  if (!is.null(nm) && !fa) return(paste0("{\n", pad, paste(paste0(qs(nm), ": ", s), collapse = paste0(",\n", pad)), "\n", end, "}"))
  if (length(s) == 1 && !fa) return(s)
  paste0("[", paste(s, collapse = ", "), "]")
}
write_answer <- function(answer, file = "answer.json") writeLines(js(answer), file)
write_input <- function(df, file = "input.csv") {
  out <- as.data.frame(lapply(df, function(col) {
    if (is.factor(col)) as.character(col)
    else if (inherits(col, "Date")) ifelse(is.na(col), "", format(col))
    else if (is.numeric(col)) ifelse(is.na(col), "", num(col))
    else ifelse(is.na(col), "", as.character(col))
  }), stringsAsFactors = FALSE, check.names = FALSE)
  write.table(out, file, sep = ",", row.names = FALSE, col.names = TRUE, quote = FALSE)
}
# read back exactly what a reader of the CSV gets, so the answer belongs to the CSV
read_input <- function(file = "input.csv", factors = character()) {
  d <- read.csv(file, stringsAsFactors = FALSE, na.strings = "", check.names = FALSE)
  for (f in factors) d[[f]] <- factor(d[[f]])
  d
}
versions <- function(...) c(R = paste(R.version$major, R.version$minor, sep = "."),
  vapply(c(...), function(p) as.character(packageVersion(p)), ""))

# ---------- ordinary / weighted least squares ----------
ols_answer <- function(df, formula, newrows, weights = NULL, log_response = FALSE) {
  w <- if (is.null(weights)) NULL else df[[weights]]
  environment(formula) <- environment()
  m <- if (is.null(w)) lm(formula, data = df) else lm(formula, data = df, weights = w)
  s <- summary(m); al <- is.na(coef(m))
  X <- model.matrix(m)[, !al, drop = FALSE]
  ww <- if (is.null(w)) rep(1, nrow(X)) else w
  e <- residuals(m); h <- hatvalues(m)
  Xw <- X * sqrt(ww); ew <- e * sqrt(ww)
  # inverse through QR of the design
  R <- qr.R(qr(Xw, LAPACK = FALSE)); piv <- qr(Xw)$pivot
  XtXi <- chol2inv(R); XtXi[piv, piv] <- XtXi
  meat <- function(a) crossprod(Xw * a)
  hc0 <- XtXi %*% meat(ew) %*% XtXi
  hc3 <- XtXi %*% meat(ew / (1 - h)) %*% XtXi
  n <- nrow(X); p <- ncol(X)
  hc1 <- hc0 * n / (n - p)
  # Breusch-Pagan on the same regressors (unweighted only)
  bp <- NULL
  if (is.null(w)) {
    g <- lm.fit(X, e^2); r2 <- 1 - sum(g$residuals^2) / sum((e^2 - mean(e^2))^2)
    u <- e^2 / mean(e^2); gu <- lm.fit(X, u)
    ess <- sum((gu$fitted.values - mean(u))^2)
    bp <- list(koenker_studentized = c(statistic = n * r2, df = p - 1, p = pchisq(n * r2, p - 1, lower.tail = FALSE)),
               original = c(statistic = ess / 2, df = p - 1, p = pchisq(ess / 2, p - 1, lower.tail = FALSE)))
  }
  vif <- NULL
  if (ncol(X) > 2 && colnames(X)[1] == "(Intercept)" && is.null(w)) {
    Rm <- cor(X[, -1, drop = FALSE]); vif <- diag(solve(Rm)); names(vif) <- colnames(X)[-1]
  }
  pr <- lapply(c(.80, .95), function(l) predict(m, newrows, interval = "prediction", level = l))
  pc <- predict(m, newrows, interval = "confidence", level = .95)
  se <- predict(m, newrows, se.fit = TRUE)
  sm <- if (log_response) mean(exp(e)) else NULL
  f <- s$fstatistic
  a <- list(
    n = n, df_residual = df.residual(m), design_columns = arr(colnames(model.matrix(m))),
    aliased = arr(names(coef(m))[al]),
    factor_levels_base_first = lapply(m$xlevels, arr),
    coefficients = coef(m), standard_errors = s$coefficients[, 2], t = s$coefficients[, 3], p = s$coefficients[, 4],
    sigma = s$sigma, r2 = s$r.squared, adj_r2 = s$adj.r.squared,
    f = c(value = unname(f[1]), df1 = unname(f[2]), df2 = unname(f[3]), p = unname(pf(f[1], f[2], f[3], lower.tail = FALSE))),
    rss = deviance(m), log_lik = as.numeric(logLik(m)), aic = AIC(m), bic = BIC(m),
    vcov = unname(vcov(m)[!al, !al, drop = FALSE]),
    hc1_se = sqrt(diag(hc1)), hc3_se = sqrt(diag(hc3)),
    vif_per_design_column = vif, breusch_pagan = bp,
    fitted = arr(unname(fitted(m))), residuals = arr(unname(e)), leverage = arr(unname(h)),
    cooks_distance = arr(unname(cooks.distance(m))), rstandard = arr(unname(rstandard(m))), rstudent = arr(unname(rstudent(m))),
    loo_residuals = arr(unname(e / (1 - h))), press = sum((e / (1 - h))^2),
    new_rows = newrows,
    prediction = list(fit = arr(unname(se$fit)), se_fit = arr(unname(se$se.fit)),
      pi80_low = arr(unname(pr[[1]][, 2])), pi80_high = arr(unname(pr[[1]][, 3])),
      pi95_low = arr(unname(pr[[2]][, 2])), pi95_high = arr(unname(pr[[2]][, 3])),
      ci95_low = arr(unname(pc[, 2])), ci95_high = arr(unname(pc[, 3]))))
  if (log_response) {
    a$duan_smearing_factor <- sm
    a$prediction$price_smearing <- arr(unname(exp(se$fit) * sm))
    a$prediction$price_median <- arr(unname(exp(se$fit)))
    a$prediction$price_lognormal_mean <- arr(unname(exp(se$fit + s$sigma^2 / 2)))
  }
  list(model = m, answer = a)
}
