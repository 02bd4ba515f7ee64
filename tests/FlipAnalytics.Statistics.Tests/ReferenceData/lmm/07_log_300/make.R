source("../common.R"); source("../lmm.R"); source("../logs.R")
types <- c("dresser", "desk", "nightstand", "bookcase", "sideboard", "hutch", "vanity", "bench"); colors <- c("white", "sage", "navy", "charcoal", "natural", "blush"); as_of <- as.Date("2024-12-31")
d <- make_log(40602, 300, types, colors, c("satin", "matte", "wax"), c(.28, .2, .18, .12, .1, .06, .04, .02), c(.3, .2, .18, .14, .12, .06), as_of, 2, c(white = 0, sage = -.2, navy = .15, charcoal = .05, natural = -.1, blush = .3),
  c(5.0, .35, .06, .012, .4), .28, .12, .2, 1.2, .04)
write_input(d); d <- read_log()
new <- data.frame(type = c("dresser", "desk", "nightstand", "armoire", "hutch"), count = c(1, 1, 2, 1, 1), width = c(120, 110, 50, 100, 90), depth = c(48, 60, 40, 58, 45), height = c(85, 76, 62, 180, 190), condition = c(2, 3, 4, 3, 5),
  color = c("white", "navy", "sage", "charcoal", "mustard"), finish = c("satin", "matte", "wax", "satin", "matte"), hours = c(8, 6, 4, 12, 10), asking_price = c(320, 240, 180, 420, 380))
write_answer(c(list(case = "lmm/07_log_300", source = "synthetic sales log"), price_answer(d, new)))
