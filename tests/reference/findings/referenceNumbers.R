# Reference numbers for random studies, one JSON object per study and line: Rscript referenceNumbers.R studies.csv
# R 4.2.2 with survival. NaN and NA are written as null.
library(survival)
all <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)
number <- function(x) ifelse(is.finite(x), sprintf("%.11g", x), "null")
field <- function(name, x) sprintf('"%s":[%s]', name, paste(number(x), collapse = ","))
quiet <- function(expression) suppressWarnings(tryCatch(expression, error = function(e) NA))

fit <- function(d, dist) {
  f <- quiet(survreg(Surv(strength, 1 - held) ~ 1, d, dist = dist, control = survreg.control(rel.tolerance = 1e-12, maxiter = 200)))
  if (identical(f, NA)) return(NA)
  c(f$loglik[2], f$coefficients[[1]], log(f$scale), sqrt(diag(f$var)))
}

study <- function(d) {
  d$group <- factor(d$group)
  one <- d[d$group == levels(d$group)[1], ]
  x <- one$strength
  middle <- ave(d$strength, d$group, FUN = median)
  mean_ <- ave(d$strength, d$group)
  f_of <- function(y) quiet({ a <- anova(lm(y ~ d$group)); c(a$`F value`[1], a$`Pr(>F)`[1]) })
  welch <- quiet(oneway.test(strength ~ group, d))
  kw <- quiet(kruskal.test(strength ~ group, d))
  bart <- quiet(bartlett.test(strength ~ group, d))
  tukey <- quiet(TukeyHSD(aov(strength ~ group, d))$group)
  r <- rank(d$strength); n <- nrow(d); t <- table(d$strength); pairs <- combn(levels(d$group), 2)
  v <- n * (n + 1) / 12 - sum(t^3 - t) / (12 * (n - 1))
  z <- apply(pairs, 2, function(p) { a <- r[d$group == p[1]]; b <- r[d$group == p[2]]
    (mean(a) - mean(b)) / sqrt(v * (1 / length(a) + 1 / length(b))) })
  a <- d$strength[d$group == levels(d$group)[1]]; b <- d$strength[d$group == levels(d$group)[2]]
  m <- 0.15 * mean(b)
  tost <- quiet(c(t.test(a, b, mu = -m, alternative = "greater")$p.value, t.test(a, b, mu = m, alternative = "less")$p.value))
  welchPair <- quiet({ w <- t.test(a, b); c(w$conf.int[1:2], w$parameter, w$p.value) })
  pooledPair <- quiet({ w <- t.test(a, b, var.equal = TRUE); c(w$conf.int[1:2], w$p.value) })
  grubbs <- quiet({ g <- max(abs(x - mean(x))) / sd(x); k <- length(x); q <- qt(.05 / (2 * k), k - 2)^2
    critical <- (k - 1) / sqrt(k) * sqrt(q / (k - 2 + q)); if (g > critical) c(g, critical) else c(NA, NA) })
  km <- survfit(Surv(strength, 1 - held) ~ 1, one)
  at <- km$n.event > 0
  linear <- quiet(c(coef(summary(lm(strength ~ age, d)))[, 1:2]))
  held <- quiet({ f <- survreg(Surv(strength, 1 - held) ~ sqrt(age), d, dist = "gaussian",
    control = survreg.control(rel.tolerance = 1e-12, maxiter = 200)); c(f$coefficients, f$scale, f$loglik[2]) })
  kendall <- quiet(cor.test(d$age, d$strength, method = "kendall", exact = FALSE)$statistic)
  cat("{", paste(c(
    field("summary", c(mean(x), sd(x), quiet(t.test(x)$conf.int[1:2]), quantile(x, c(.25, .5, .75)))),
    field("brownForsythe", f_of(abs(d$strength - middle))), field("levene", f_of(abs(d$strength - mean_))),
    field("bartlett", if (identical(bart, NA)) NA else c(bart$statistic, bart$p.value)),
    field("oneWay", f_of(d$strength)),
    field("welch", if (identical(welch, NA)) NA else c(welch$statistic, welch$parameter[2], welch$p.value)),
    field("kruskalWallis", if (identical(kw, NA)) NA else c(kw$statistic, kw$p.value)),
    field("tukeyP", if (identical(tukey, NA)) NA else tukey[, "p adj"]),
    field("welchPair", welchPair), field("pooledPair", pooledPair),
    field("grubbs", grubbs),
    field("dunnZ", z), field("dunnP", p.adjust(2 * pnorm(-abs(z)), "holm")),
    field("equivalence", tost),
    field("weibull", fit(one, "weibull")), field("lognormal", fit(one, "lognormal")), field("normal", fit(one, "gaussian")),
    field("survival", km$surv[at]), field("survivalSE", (km$std.err * km$surv)[at]),
    field("linear", linear), field("squareRootHeld", held), field("kendallZ", kendall)), collapse = ","), "}\n", sep = "")
}
for (set in sort(unique(all$set))) study(all[all$set == set, ])
