# Reference numbers for random ageing series, one JSON object per series and line: Rscript ageingNumbers.R series.csv
# R 4.2.2 with survival. NaN and NA are written as null.
library(survival)
all <- read.csv(commandArgs(TRUE)[1])
number <- function(x) ifelse(is.finite(x), sprintf("%.11g", x), "null")
field <- function(name, x) sprintf('"%s":[%s]', name, paste(number(x), collapse = ","))
quiet <- function(expression) suppressWarnings(tryCatch(expression, error = function(e) NA))
later <- 120

criterion <- function(m, n) { k <- attr(logLik(m), "df"); AIC(m) + 2 * k * (k + 1) / (n - k - 1) }

line <- function(d, x, at) {
  m <- if (is.null(x)) lm(strength ~ 1, d) else lm(strength ~ x, data.frame(strength = d$strength, x = x))
  s <- summary(m)
  p <- predict(m, data.frame(x = if (is.null(x)) 0 else at), interval = "confidence")
  c(coef(s)[, 1:2], s$sigma, criterion(m, nrow(d)), p)
}

# With wood that held: coefficients, spread, log likelihood.
held <- function(d, x) quiet({
  f <- survreg(Surv(d$strength, 1 - d$held) ~ x, dist = "gaussian", control = survreg.control(rel.tolerance = 1e-12, maxiter = 200))
  c(f$coefficients, f$scale * sqrt(nrow(d) / (nrow(d) - 2)), -2 * f$loglik[2] + 6 + 24 / (nrow(d) - 4))
})

# Exponential approach: the valley of the least squares over the time constant, and from there the curve by nls; none without a valley.
curve_of <- function(d) {
  loss <- function(x) { k <- exp(x); sum(lm.fit(cbind(exp(-d$age / k), 1 - exp(-d$age / k)), d$strength)$residuals^2) }
  at <- seq(log(.3), log(20 * max(d$age)), length.out = 60)
  losses <- sapply(at, loss); best <- which.min(losses)
  if (best == 1 || best == length(at)) return(NA)
  k <- exp(optimize(loss, at[best + c(-1, 1)], tol = 1e-9)$minimum)
  ends <- lm.fit(cbind(exp(-d$age / k), 1 - exp(-d$age / k)), d$strength)$coefficients
  quiet({
    f <- nls(strength ~ a * exp(-age / k) + b * (1 - exp(-age / k)), d, start = list(a = ends[[1]], b = ends[[2]], k = k),
             control = nls.control(maxiter = 200, tol = 1e-8, minFactor = 1e-10))
    c(coef(summary(f))[, 1:2], summary(f)$sigma, criterion(f, nrow(d)))
  })
}

for (set in sort(unique(all$set))) {
  d <- all[all$set == set, ]
  z <- quiet(cor.test(d$age, d$strength, method = "kendall", exact = FALSE)$statistic)
  at <- combn(nrow(d), 2); gap <- d$age[at[2, ]] - d$age[at[1, ]]
  slopes <- (d$strength[at[2, ]] - d$strength[at[1, ]]) / gap
  score <- sum(sign(gap) * sign(d$strength[at[2, ]] - d$strength[at[1, ]]))
  a <- d$strength[d$age == min(d$age)]; b <- d$strength[d$age == max(d$age)]
  v <- (sum((a - mean(a))^2) + sum((b - mean(b))^2)) / (length(a) + length(b) - 2)
  t <- qt(.975, length(a) + length(b) - 2); g <- t^2 * v / length(a) / mean(a)^2; r <- mean(b) / mean(a)
  half <- t * sqrt(v) / mean(a) * sqrt((1 - g) / length(b) + r^2 / length(a))
  cat("{", paste(c(
    field("constant", line(d, NULL)), field("linear", line(d, d$age, later)),
    field("log-time", line(d, log1p(d$age), log1p(later))), field("square-root-time", line(d, sqrt(d$age), sqrt(later))),
    field("exponential-approach", curve_of(d)),
    field("heldLinear", held(d, d$age)), field("heldLogTime", held(d, log1p(d$age))), field("heldSquareRoot", held(d, sqrt(d$age))),
    field("jonckheere", c(z)), field("mannKendall", c(score, z * (score - sign(score)) / score, 12 * median(slopes[gap != 0]))),
    field("retention", c(r, (r - half) / (1 - g), (r + half) / (1 - g)))), collapse = ","), "}\n", sep = "")
}
