# The most to pay by quadrature; see README.md. Rewrites answer.json from input.csv.
num <- function(x) sprintf("%.17g", x)
json <- function(x) paste0("{ ", paste0('"', names(x), '": ', vapply(x, function(v) if (is.list(v)) json(v) else num(v), ""), collapse = ", "), " }")
solve_case <- function(g) with(g, {
  net <- function(S) S * (1 - f) - c - w * h
  over_days <- function(fun) integrate(function(u) fun(qweibull(u, shape, scale)), 0, 1, rel.tol = 1e-12, subdivisions = 5000)$value
  ES <- exp(mu + s^2 / 2)
  ED <- scale * gamma(1 + 1 / shape)
  loss <- function(p) over_days(function(d) {
    k <- (c + w * h + p * (1 + r * d)) / (1 - f)
    ifelse(k <= 0, 0, pnorm((log(pmax(k, 1e-300)) - mu) / s))
  })
  set.seed(seed)
  draws <- 1e6
  m <- net(rlnorm(draws, mu, s)) / (1 + r * rweibull(draws, shape, scale))
  list(
    mean_of_ratio = net(ES) * over_days(function(d) 1 / (1 + r * d)),
    prob_loss_at_offer = loss(offer),
    price_with_20pct_loss = uniroot(function(p) loss(p) - .2, c(if (loss(0) > .2) -(c + w * h) * .999 else 0, ES * 5), tol = 1e-12)$root,
    expected_wage_at_offer = (ES * (1 - f) - c - offer * (1 + r * ED)) / h,
    monte_carlo = list(draws = draws, mean_of_ratio = mean(m), mean_of_ratio_se = sd(m) / sqrt(draws)))
})
d <- read.csv("input.csv")
answers <- vapply(seq_len(nrow(d)), function(i) json(solve_case(as.list(d[i, ]))), "")
writeLines(c("{", paste0('  "software": "R ', R.version$major, ".", R.version$minor, '",'), '  "answers": [',
  paste0("    ", answers, c(rep(",", nrow(d) - 1), "")), "  ]", "}"), "answer.json")
