# The main job once more, from the raw exports and without the pipeline: R 4.2.2, packages stats and survival (3.5-3).
# Usage: Rscript recompute.R FOLDER, run in this folder by recompute.ts. Writes expected.json and expected-days.csv into FOLDER.
#
# R's own functions do the statistics where they have them: fisher.test, mantelhaen.test, poisson.test, p.adjust, survival::clogit. R has no
# stratified exact rate ratio and no Mantel-Haenszel rate ratio: ratios.R writes those from the published definitions, and checks them
# against poisson.test for one stratum.
suppressPackageStartupMessages(library(survival))
options(warn = 2, digits = 15)
folder <- commandArgs(TRUE)[1]
file_in <- function(name) file.path(folder, name)

# ---- What the site says (the tests compare these with the site file) ------------------------------------------------
fleets <- list(
  "fleet-a" = list(zone = "Etc/UTC", day_starts = "04:00", until = "2025-02-04", units = sprintf("U%02d", 1:4), interval = 28, grace = 0),
  "fleet-b" = list(zone = "Europe/Berlin", day_starts = "03:00", until = "2025-01-31", units = sprintf("U%02d", 1:5), interval = 28, grace = 2)
)
site <- c(fleets[[basename(folder)]], list(
  stratum_days = 180, window = 7, level = 0.95, alpha = 0.05, power = 0.8, ratio_of_interest = 2, shifts = 9999, least_days = 10,
  reactive_share = 0.5, reactive_days = 2, cool_down_h = 4, purge_minutes = 5, purge_hours = 4))
# Words of the abort texts in these exports that speak of cleanliness, and of causes that cleaning can't move; other texts are in no class.
cleanliness_words <- c("evacuation", "temperature low")
unrelated_words <- c("door", "steam supply", "operator")
operator_words <- "operator"

source("days.R")
source("ratios.R")
source("shifts.R")
source("comparisons.R")
source("models.R")

set.seed(20240101)
all <- family("site")
second <- family("all_records")
for (id in names(all)) if (all[[id]]$exposure == "chamber_overdue") all[[id]]$verdict_all_records <- second[[id]]$verdict

# ---- Writing -----------------------------------------------------------------------------------------------------------------
json <- function(x) {
  if (is.null(x)) return("null")
  if (is.list(x)) {
    if (is.null(names(x))) return(paste0("[", paste(vapply(x, json, ""), collapse = ",\n"), "]"))
    return(paste0("{", paste(sprintf("\"%s\": %s", names(x), vapply(x, json, "")), collapse = ", "), "}"))
  }
  text <- if (is.character(x)) sprintf("\"%s\"", x) else if (is.logical(x)) tolower(as.character(x)) else sprintf("%.15g", x)
  text[is.na(x) | (is.numeric(x) & !is.finite(x))] <- "null"
  if (length(x) == 1) text else paste0("[", paste(text, collapse = ", "), "]")
}
expected <- list(
  made_with = list(r = R.version.string, survival = as.character(packageVersion("survival"))),
  settings = site[setdiff(names(site), "units")], draws = DRAWS,
  units = unname(lapply(made, `[[`, "summary")), comparisons = unname(all),
  conditional_logistic = lapply(c(NA, site$units), fit_clogit), poisson = fit_poisson(), doses = lapply(exposures, dose_trend))
writeLines(json(expected), file_in("expected.json"))
write.csv(panel, file_in("expected-days.csv"), row.names = FALSE, quote = FALSE, na = "")
