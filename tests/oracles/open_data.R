# Writes the open data sets as CSV files (one row per record, the class first, "" for missing), and
# trains rpart trees on them.   Usage: Rscript open_data.R OUT-FOLDER
#
# Zoo, Soybean and Vehicle come from the UCI Machine Learning Repository by way of Debian's
# r-cran-mlbench; the penguins from r-cran-palmerpenguins (CC0).  Nothing of them is stored here.
#
# For every set trees are written, "old", "new" and "few", that differ in training part and depth:
#   <set>-rpart-<edition>.csv   node, feature, kind (le, gt, levels), value, child, class
#   <set>-rpart.rds             the models, for predict_rpart.R
suppressPackageStartupMessages({
  library(mlbench)
  library(palmerpenguins)
  library(rpart)
})
out <- commandArgs(trailingOnly = TRUE)[1]
set.seed(20)

as_words <- function(values) {
  if (is.logical(values)) ifelse(values, "present", "absent") else as.character(values)
}

# Measurements in tenths become whole numbers, so that a limit between two of them is exact in
# every library's arithmetic (one of them keeps single precision).
whole <- function(values) {
  if (all(values == round(values), na.rm = TRUE)) values else round(values * 10)
}

# Categorical features become factors of words; numeric ones stay numbers.
tidy <- function(data, class) {
  features <- setdiff(names(data), class)
  tidied <- data.frame(class = factor(as.character(data[[class]])))
  for (feature in features) {
    column <- data[[feature]]
    tidied[[feature]] <- if (is.numeric(column)) whole(column) else factor(as_words(column))
  }
  tidied
}

# One row per lead.
leads_of <- function(tree) {
  frame <- tree$frame
  nodes <- as.integer(rownames(frame))
  levels <- attr(tree, "xlevels")
  classes <- attr(tree, "ylevels")
  rows <- list()
  at <- 1  # row of tree$splits: primary split, then competitors and surrogates
  for (i in seq_along(nodes)) {
    if (frame$var[i] == "<leaf>") next
    feature <- as.character(frame$var[i])
    split <- tree$splits[at, ]
    sides <- c(left = nodes[i] * 2L, right = nodes[i] * 2L + 1L)
    # Rows of csplit are as long as the longest list of levels.
    categorical <- abs(split[["ncat"]]) > 1
    known <- levels[[feature]]
    turns <- if (categorical) tree$csplit[split[["index"]], seq_along(known)]
    for (side in names(sides)) {
      child <- match(sides[[side]], nodes)
      leaf <- frame$var[child] == "<leaf>"
      if (!categorical) {
        below <- (split[["ncat"]] == -1) == (side == "left")  # -1: "x < cut" goes left
        kind <- if (below) "lt" else "ge"
        value <- format(split[["index"]], digits = 17)
      } else {
        kind <- "levels"
        wanted <- if (side == "left") 1 else 3  # of csplit; 2: not seen in this node
        value <- paste(known[turns == wanted], collapse = "|")
      }
      rows[[length(rows) + 1]] <- data.frame(
        node = nodes[i], feature = feature, kind = kind, value = value, child = sides[[side]],
        class = if (leaf) classes[frame$yval[child]] else "")
    }
    if (categorical) {
      # Levels that training never saw here go no further: the node's own class is the answer, as
      # the third lead of the couplet.
      never <- known[turns == 2]
      if (length(never) > 0) {
        rows[[length(rows) + 1]] <- data.frame(
          node = nodes[i], feature = feature, kind = "levels",
          value = paste(never, collapse = "|"), child = 0L, class = classes[frame$yval[i]])
      }
    }
    at <- at + 1 + frame$ncompete[i] + frame$nsurrogate[i]
  }
  do.call(rbind, rows)
}

grow <- function(data, depth, minimum) {
  rpart(class ~ ., data, method = "class",
        control = rpart.control(maxdepth = depth, minsplit = minimum, cp = 0, xval = 0,
                                maxsurrogate = 0, maxcompete = 0, usesurrogate = 0))
}

data(Zoo)
data(Soybean)
data(Vehicle)
sets <- list(zoo = tidy(Zoo, "type"), soybean = tidy(Soybean, "Class"),
             vehicle = tidy(Vehicle, "Class"),
             penguins = tidy(as.data.frame(penguins), "species"))
sets$penguins$year <- NULL  # when, not what
sets$penguins$island <- NULL  # where
for (name in names(sets)) {
  data <- sets[[name]]
  write.csv(data, file.path(out, paste0(name, ".csv")), row.names = FALSE, na = "")
  complete <- data[complete.cases(data), ]
  half <- complete[seq(1, nrow(complete), by = 2), ]
  few <- complete[seq(1, nrow(complete), by = 9), ]  # meets few levels: for strands.py
  models <- list(old = grow(half, 3, 10), new = grow(complete, 8, 4), few = grow(few, 8, 4))
  for (edition in names(models)) {
    write.csv(leads_of(models[[edition]]),
              file.path(out, paste0(name, "-rpart-", edition, ".csv")), row.names = FALSE)
  }
  saveRDS(models, file.path(out, paste0(name, "-rpart.rds")))
}
