# Dunnett's comparisons of random studies with their first group, one JSON object per study and line: Rscript dunnettNumbers.R studies.csv
# R 4.2.2 with multcomp, whose p values come from an integral by random points: two seconds a study for some five digits.
suppressPackageStartupMessages(library(multcomp))
set.seed(1)
all <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)
show <- function(name, x) sprintf('"%s":[%s]', name, paste(sprintf("%.9g", x), collapse = ","))
for (set in sort(unique(all$set))) {
  d <- all[all$set == set, ]; d$group <- factor(d$group)
  s <- summary(glht(aov(strength ~ group, d), linfct = mcp(group = "Dunnett")), test = adjusted("single-step", abseps = 1e-6, maxpts = 1e6))
  cat("{", show("t", s$test$tstat), ",", show("p", s$test$pvalues), "}\n", sep = "")
}
