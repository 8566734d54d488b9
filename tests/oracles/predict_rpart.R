# What the rpart trees answer to complete records, and the node that each record comes to where
# that is no leaf ("": it is one).
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
  asked <- model.frame(delete.response(model$terms), given, na.action = na.pass, xlev = levels)
  came_to <- rpart:::pred.rpart(model, rpart:::rpart.matrix(asked))
  node <- rownames(model$frame)[came_to]
  answers[[paste0(edition, "_stops")]] <- ifelse(model$frame$var[came_to] == "<leaf>", "", node)
}
write.csv(as.data.frame(answers), arguments[3], row.names = FALSE)
