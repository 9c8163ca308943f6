# Smallest yearly change that a straight line through all blocks finds; percent of the mean. Run: Rscript yearlyChange.R
options(digits = 15)
power.of.t <- function(delta, df, confidence) {
  t <- qt(1 - (1 - confidence) / 2, df)
  pt(t, df, delta, lower.tail = FALSE) + pt(-t, df, delta)
}
change <- function(months, n, cv, confidence, power) {
  age <- rep(months / 12, each = n)
  design <- model.matrix(lm(rnorm(length(age)) ~ age))
  se <- sqrt(solve(t(design) %*% design)[2, 2])
  delta <- uniroot(function(d) power.of.t(d, length(age) - 2, confidence) - power, c(0, 50), tol = 1e-13)$root
  cv * delta * se
}
months <- c(0, 3, 6, 12, 24, 36)
set.seed(1)
print(change(months, 12, 10, 0.95, 0.8))
print(change(c(0, 12), 3, 8, 0.95, 0.5))
print(change(c(seq(0, 36, 6), seq(48, 360, 12)), 4, 12, 0.95, 0.9))
# Simulated: how often lm finds the first of them
slope <- change(months, 12, 10, 0.95, 0.8) / 100
age <- rep(months / 12, each = 12)
found <- replicate(20000, {
  strength <- 1 - slope * age + rnorm(length(age), 0, 0.1)
  summary(lm(strength ~ age))$coefficients[2, 4] < 0.05
})
print(mean(found))
