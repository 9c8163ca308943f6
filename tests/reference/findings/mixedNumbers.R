# Variance components of random studies, one JSON object per study and line: Rscript mixedNumbers.R studies.csv
# R 4.2.2 with lme4 1.1 and pbkrtest 0.5 (degrees of freedom by Kenward and Roger, for one slope those of Satterthwaite).
suppressPackageStartupMessages({library(lme4); library(pbkrtest)})
all <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)
show <- function(name, x) sprintf('"%s":[%s]', name, paste(sprintf("%.10g", x), collapse = ","))
tight <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-11, maxfun = 1e5),
                     check.conv.singular = "ignore", calc.derivs = FALSE)
for (d in split(all, all$set)) {
  first <- d[d$age == 0, ]
  first$group <- factor(first$group, unique(first$group))
  m <- suppressMessages(suppressWarnings(lmer(strength ~ 0 + group + (1 | board), first, REML = TRUE, control = tight)))
  v <- as.data.frame(VarCorr(m))$sdcor
  plain <- lm(strength ~ 0 + group, first)
  ratio <- max(0, as.numeric(2 * (logLik(m, REML = TRUE) - logLik(plain, REML = TRUE))))
  d$group <- factor(d$group, unique(d$group)); d$years <- d$age / 12
  s <- suppressMessages(suppressWarnings(lmer(log(strength) ~ 0 + group + years + (0 + years | group), d, REML = TRUE, control = tight)))
  w <- as.data.frame(VarCorr(s))$sdcor
  slopes <- fixef(s)[["years"]] + ranef(s)$group[levels(d$group), "years"]
  cat("{", paste(show("board", v), show("means", fixef(m)), show("errors", sqrt(diag(as.matrix(vcov(m))))),
                 show("ratio", ratio), show("spread", w), show("common", fixef(s)[["years"]]),
                 show("error", sqrt(as.matrix(vcov(s))["years", "years"])), show("slopes", slopes),
                 show("df", get_Lb_ddf(s, as.numeric(names(fixef(s)) == "years"))), sep = ","), "}\n", sep = "")
}
