# The same work as the benchmark of findings, as quickly as R does it: by its own functions and by whole vectors.
# Rscript findings.R conditions.csv specimens.csv; one JSON object with the seconds of processor of each part, reading not counted.
suppressPackageStartupMessages(library(multcomp))
files <- commandArgs(TRUE)
conditions <- read.csv(files[1]); conditions$group <- factor(conditions$group, unique(conditions$group))
specimens <- read.csv(files[2]); specimens$group <- factor(specimens$group, unique(specimens$group))
draws <- 10000
seconds <- function(expression) sum(system.time(expression)[c("user.self", "sys.self")])

ranks_of <- function(d) {
  drawn <- sapply(split(d$strength, d$group), function(x) {
    n <- length(x)
    mean(x) + rowMeans(matrix(sample((x - mean(x)) * sqrt(n / (n - 1)), n * draws, TRUE), draws)) *
      sqrt((n - 1) / rchisq(draws, n - 1))
  })
  ranks <- t(apply(-drawn, 1, rank, ties.method = "first"))
  rbind(apply(ranks, 2, quantile, c(.025, .975)), colMeans(ranks == 1))
}

pairs_of <- function(d) {
  n <- tabulate(d$group); m <- tapply(d$strength, d$group, mean); v <- tapply(d$strength, d$group, var); k <- length(n)
  at <- combn(k, 2); i <- at[1, ]; j <- at[2, ]
  se2 <- v[i] / n[i] + v[j] / n[j]
  df <- se2^2 / ((v[i] / n[i])^2 / (n[i] - 1) + (v[j] / n[j])^2 / (n[j] - 1))
  q <- abs(m[i] - m[j]) / sqrt(se2 / 2)
  margin <- .1 * m[j]
  r <- rank(d$strength); total <- length(r); ties <- table(d$strength)
  s2 <- total * (total + 1) / 12 - sum(ties^3 - ties) / (12 * (total - 1))
  z <- (tapply(r, d$group, mean)[i] - tapply(r, d$group, mean)[j]) / sqrt(s2 * (1 / n[i] + 1 / n[j]))
  list(ptukey(q, k, df, lower.tail = FALSE), qtukey(.95, k, df) * sqrt(se2 / 2),
       pmax(pt((m[i] - m[j] + margin) / sqrt(se2), df, lower.tail = FALSE), pt((m[i] - m[j] - margin) / sqrt(se2), df)),
       p.adjust(2 * pnorm(-abs(z)), "holm"))
}

shrunken_of <- function(d) {
  n <- tabulate(d$group); m <- tapply(d$strength, d$group, mean); k <- length(m)
  v <- sum((d$strength - ave(d$strength, d$group))^2) / (nrow(d) - k) / n
  excess <- function(a) { w <- 1 / (v + a); sum(w * (m - sum(w * m) / sum(w))^2) - (k - 1) }
  if (excess(0) <= 0) 0 else uniroot(excess, c(0, 1e3 * max(v)), tol = 1e-12)$root
}

compare <- function(d) {
  fitted <- aov(strength ~ group, d)
  against <- glht(fitted, linfct = mcp(group = "Dunnett"))
  list(TukeyHSD(fitted), anova(lm(abs(d$strength - ave(d$strength, d$group, FUN = median)) ~ d$group)),
       anova(lm(abs(d$strength - ave(d$strength, d$group)) ~ d$group)), bartlett.test(strength ~ group, d),
       anova(fitted), oneway.test(strength ~ group, d), kruskal.test(strength ~ group, d),
       summary(against), confint(against), pairs_of(d), shrunken_of(d), ranks_of(d))
}

summarise <- function(d) tapply(d$strength, d$group, function(x) {
  n <- length(x); s <- sd(x)
  c(n, mean(x), s, mean(x) + qt(c(.025, .975), n - 1) * s / sqrt(n), quantile(x, c(0, .25, .5, .75, 1)),
    mean(x) - s * qt(.75, n - 1, qnorm(.95) * sqrt(n)) / sqrt(n), sort(x)[max(1, qbinom(.25, n, .05))])
})

first <- conditions[conditions$condition == conditions$condition[1], ]
invisible(compare(droplevels(first[as.integer(first$group) < 5, ])))
set.seed(1)
cat(sprintf('{"comparisons":%.4f,"summaries":%.4f,"ranks":%.4f}\n',
            seconds(lapply(split(conditions, conditions$condition), compare)),
            median(replicate(3, seconds(suppressWarnings(summarise(specimens))))), median(replicate(3, seconds(ranks_of(first))))))
