# Writes the input.json and answer.json of every folder here. Base R only.
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
# money is integer cents throughout; rh = round half away from zero, exact for integer ratios
rdiv <- function(a, b) { s <- sign(a) * sign(b); a <- abs(a); b <- abs(b); s * ((2 * a + b) %/% (2 * b)) }
fifo <- function(ev) { # ev: list(kind, qty, cents) ; purchase: cents is the total of that lot; issue: cost out, layers oldest first
  lay <- list(); out <- list()                                  # a layer keeps quantity left and cents left
  for (e in ev) {
    if (e$kind == "buy") lay[[length(lay) + 1]] <- list(q = e$qty, c = e$cents)
    else { need <- e$qty; cost <- 0
      while (need > 0) { L <- lay[[1]]; if (L$q <= need) { cost <- cost + L$c; need <- need - L$q; lay <- lay[-1] } else { part <- rdiv(L$c * need, L$q); cost <- cost + part; lay[[1]] <- list(q = L$q - need, c = L$c - part); need <- 0 } }
      out[[length(out) + 1]] <- cost } }
  list(issue_cents = arr(unlist(out)), left_qty = sum(unlist(lapply(lay, `[[`, "q"))), left_cents = sum(unlist(lapply(lay, `[[`, "c")))) }
moving_average <- function(ev) { Q <- 0; C <- 0; out <- c(); bal <- c()
  for (e in ev) { if (e$kind == "buy") { Q <- Q + e$qty; C <- C + e$cents } else { k <- if (e$qty == Q) C else rdiv(C * e$qty, Q); out <- c(out, k); Q <- Q - e$qty; C <- C - k }; bal <- c(bal, C) }
  list(issue_cents = arr(out), balance_cents_after_each_event = arr(bal), left_qty = Q, left_cents = C) }
periodic_average <- function(ev) { b <- Filter(function(e) e$kind == "buy", ev); i <- Filter(function(e) e$kind == "issue", ev); Q <- sum(sapply(b, `[[`, "qty")); C <- sum(sapply(b, `[[`, "cents")); q <- sum(sapply(i, `[[`, "qty"))
  left <- rdiv(C * (Q - q), Q); list(left_cents = left, issued_cents = C - left) }
largest_remainder <- function(total, w) { # whole cents; leftover cents to the largest remainders, ties to the earlier item; weights are integers
  s <- sum(w); fl <- (total * w) %/% s; rem <- (total * w) %% s; k <- total - sum(fl); if (k > 0) { o <- order(-rem, seq_along(w)); fl[o[seq_len(k)]] <- fl[o[seq_len(k)]] + 1 }; fl }
by_use <- function(cost, salvage, life, used) { # cumulative: total to date is rounded, each period is the difference; never under salvage
  cum <- pmin(cumsum(used), life); t <- rdiv((cost - salvage) * cum, life); diff(c(0, t)) }
B <- function(q, cents) list(kind = "buy", qty = q, cents = cents); I <- function(q) list(kind = "issue", qty = q)
put <- function(name, source, rule, given, answer, tol = "exact (integer cents)") { dir.create(name, showWarnings = FALSE); writeLines(js(list(case = paste0("cost/", name), given = given)), file.path(name, "input.json")); writeLines(js(list(case = paste0("cost/", name), source = source, rule = rule, tolerance = tol, R = as.character(getRversion()), answer = answer)), file.path(name, "answer.json")) }
evj <- function(ev) data.frame(kind = sapply(ev, `[[`, "kind"), qty = sapply(ev, `[[`, "qty"), cents = sapply(ev, function(e) if (is.null(e$cents)) NA else e$cents))

book <- "numbers of 'Accounting Principles: A Business Perspective' (open textbook, CC BY 3.0), chapter 7/10 exhibits"
ev <- list(B(10, 8000), B(10, 8500), I(10), B(20, 16800), I(20), B(10, 9000), I(10), B(20, 17600), I(20), B(10, 9100))
r <- moving_average(ev); stopifnot(r$issue_cents == c(8250, 16700, 8675, 17517), r$left_cents == 17858)   # printed in the exhibit
put("01_moving_average_perpetual", book, "each issue at the average in force; issue rounded to a cent, the rest stays in the balance (printed: 82.50, 167.00, 86.75, 175.17; left 178.58)", list(events = evj(ev)), r)
f <- fifo(ev); stopifnot(f$left_cents == 17900, sum(f$issue_cents) == 51100)                              # printed: 179 and 511
put("02_fifo", book, "oldest layer first (printed for the year: left 179, issued 511)", list(events = evj(ev)), f)
a <- periodic_average(ev); put("03_periodic_average", paste(book, "(same purchases; periodic average computed here)"), "one average for the whole period: goods available 690.00 over 80 units; left rounded, the rest is issued", list(events = evj(ev)), a)
put("04_specific_lots", book, "the lots left on hand are named: 10 of 12 August at 9.00 and 10 of 21 December at 9.10 (printed: left 181, issued 509)", list(events = evj(ev), left_lots = list(list(qty = 10, unit_cents = 900), list(qty = 10, unit_cents = 910))), c(left_cents = 18100, issued_cents = 69000 - 18100))
pv <- list(B(946, 3499), I(180), I(245), B(946, 3725), I(520), I(90), B(3785, 11999), I(1200), I(33), I(7))
put("05_paint_ml_fifo", "own numbers", "quantities are whole millilitres; a partly used layer gives up round_half_away(cents left * qty / qty left)", list(events = evj(pv)), fifo(pv))
put("06_paint_ml_moving_average", "own numbers", "as 01", list(events = evj(pv)), moving_average(pv))
stopifnot(rdiv((5400000 - 400000), 10) == 500000)
put("07_straight_line", book, "(54,000 - 4,000) / 10 years = 5,000 a year; second part: 1,299.00 tool, 150.00 salvage, 36 months, cumulative rounding (printed for the first: 5,000)", list(cost_cents = 5400000, salvage_cents = 400000, years = 10, tool = list(cost_cents = 129900, salvage_cents = 15000, months = 36)),
  list(per_year_cents = arr(by_use(5400000, 400000, 10, rep(1, 10))), tool_per_month_cents = arr(by_use(129900, 15000, 36, rep(1, 36)))))
put("08_units_of_production", book, "(54,000 - 4,000) / 50,000 units: 1,000 units -> 1,000; 2,500 -> 2,500 (printed); second part: 189.00 sander, 20.00 salvage, 900 hours of life counted in quarter hours, total to date rounded, each job is the difference", list(cost_cents = 5400000, salvage_cents = 400000, life_units = 50000, used = arr(c(1000, 2500)), sander = list(cost_cents = 18900, salvage_cents = 2000, life_quarter_hours = 3600, used_quarter_hours = arr(c(7, 13, 22, 5, 41)))),
  list(cents = arr(by_use(5400000, 400000, 50000, c(1000, 2500))), sander_cents = arr(by_use(18900, 2000, 3600, c(7, 13, 22, 5, 41)))))
put("10_joint_cost_by_sales_value", "numbers of a published textbook exercise (sales values 80,000 70,000 50,000; joint cost 80,000): 32,000 28,000 20,000; second part own numbers", "in proportion to sales value; whole cents by largest remainder, ties to the earlier item", list(joint_cents = 8000000, sales_value_cents = arr(c(8000000, 7000000, 5000000)), lot = list(paid_cents = 10000, expected_price_cents = arr(c(15000, 15000, 15000))), lot2 = list(paid_cents = 7777, expected_price_cents = arr(c(12000, 4500, 30000, 800, 0)))),
  list(joint = arr(largest_remainder(8000000, c(80000, 70000, 50000))), lot = arr(largest_remainder(10000, c(1, 1, 1))), lot2 = arr(largest_remainder(7777, c(12000, 4500, 30000, 800, 0)))))
put("11_break_even", "20 price, 12 variable, 30,000 fixed -> 3,750 units is a published exercise; 400/250/20,000 figures from an open textbook page on break-even (only the three numbers are used); third: own", "units = fixed / (price - variable), whole units rounded up; contribution ratio; sales for a target profit", list(cases = data.frame(price = c(20, 400, 185), variable = c(12, 250, 97.5), fixed = c(30000, 20000, 2310), target = c(8000, 15000, 1500))),
  { d <- data.frame(p = c(20, 400, 185), v = c(12, 250, 97.5), f = c(30000, 20000, 2310), t = c(8000, 15000, 1500)); list(unit_contribution = arr(d$p - d$v), ratio = arr((d$p - d$v) / d$p), break_even_units = arr(d$f / (d$p - d$v)), break_even_whole_units = arr(ceiling(d$f / (d$p - d$v))), break_even_sales = arr(d$f / ((d$p - d$v) / d$p)), units_for_target = arr((d$f + d$t) / (d$p - d$v))) }, "rel 1e-12")
put("12_stock_ratios", "gross margin 129,500 over average stock 83,000 -> 1.56 is a published example; the rest own numbers; formulas: GMROI = gross margin / average stock at cost, turnover = cost of goods sold / average stock, days = 365 / turnover", "average stock = mean of opening and closing, or of all month ends where given", list(a = c(gross_margin = 129500, average_stock = 83000), b = c(sales = 18450.75, cost_of_goods_sold = 7320.4, opening_stock = 1895, closing_stock = 2410.6, days = 365), c = list(sales = 9600, cost_of_goods_sold = 4100, month_end_stock = arr(c(900, 1250, 1100, 1400)), days = 91)),
  { av <- (1895 + 2410.6) / 2; m <- mean(c(900, 1250, 1100, 1400)); list(a_gmroi = 129500 / 83000, b = c(average_stock = av, gross_margin = 18450.75 - 7320.4, gmroi = (18450.75 - 7320.4) / av, turnover = 7320.4 / av, days_in_stock = 365 * av / 7320.4), c = c(average_stock = m, gmroi = 5500 / m, gmroi_yearly = 5500 / m * 365 / 91, turnover = 4100 / m, days_in_stock = 91 * m / 4100)) }, "rel 1e-12")
tr <- largest_remainder(rdiv(437 * 67, 10), c(3, 1, 2)); put("13_trip_shared", "67 cents a mile is the 2024 business rate (IRS)", "43.7 miles at 67 cents = round_half_away; shared over three pieces by volume 3:1:2, largest remainder; a piece not bought bears nothing", list(tenths_of_mile = 437, cents_per_mile = 67, weights = arr(c(3, 1, 2))), list(trip_cents = rdiv(437 * 67, 10), share_cents = arr(tr)))
g <- c(price = 24500, fee_bp = 1290, fixed_fee = 30, bought = 4200, supplies = 1873, trip = 976, wear = 112, minutes = 410)
fee <- rdiv(g["price"] * g["fee_bp"], 10000) + g["fixed_fee"]; prof <- g["price"] - fee - g["bought"] - g["supplies"] - g["trip"] - g["wear"]
put("14_one_flip", "own numbers", "fee = round(price * basis points / 10000) + fixed; profit before labour; wage an hour = profit * 60 / minutes, unrounded and in whole cents (half away)", as.list(g), list(fee_cents = unname(fee), profit_cents = unname(prof), wage_cents_per_hour = unname(prof * 60 / g["minutes"]), wage_whole_cents = unname(rdiv(prof * 60, g["minutes"]))), "cents exact; unrounded wage rel 1e-12")
