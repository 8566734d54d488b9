# What both rpart trees answer to complete records.
# Usage: Rscript predict_rpart.R MODELS.rds RECORDS.csv ANSWERS.csv
suppressPackageStartupMessages(library(rpart))
arguments <- commandArgs(trailingOnly = TRUE)
models <- readRDS(arguments[1])
records <- read.csv(arguments[2], check.names = FALSE, stringsAsFactors = FALSE)
answers <- list()
for (edition in names(models)) {
  model <- models[[edition]]
  levels <- attr(model, "xlevels")
  given <- records
  for (feature in names(levels)) {
    given[[feature]] <- factor(as.character(given[[feature]]), levels = levels[[feature]])
  }
  answers[[edition]] <- as.character(predict(model, given, type = "class"))
}
write.csv(as.data.frame(answers), arguments[3], row.names = FALSE)
