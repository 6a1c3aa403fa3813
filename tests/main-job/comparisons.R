# The family of comparisons, and the verdicts. Needs `site`, `made`, `panel` and the methods of ratios.R and shifts.R.

# ---- Strata ---------------------------------------------------------------------------------------------------------
held <- function(rows, exposure, reading) {
  if (exposure == "strainer_missed") return(as.integer(rows$strainers_missed > 0))
  if (reading == "site") rows$chamber_overdue else rows$chamber_overdue_all_records
}
# One list per stratum: exposure, events and trials of its days in order; days at risk with known exposure only.
stratify <- function(rows, exposure, outcome, reading, beside = NULL) {
  rows$x <- held(rows, exposure, reading)
  rows$split <- if (is.null(beside)) 0 else held(rows, beside, reading)
  rows <- rows[rows$at_risk == 1 & !is.na(rows$x) & !is.na(rows$split), ]
  rows$events <- switch(outcome, failed_test = rows$failed, cleanliness_abort = rows$cleanliness_aborts, unrelated_abort = rows$unrelated_aborts)
  rows$trials <- if (outcome == "failed_test") rep(1L, nrow(rows)) else rows$production_cycles
  unname(lapply(split(rows, paste(rows$unit, rows$era, rows$stratum, rows$split)), function(part) part[order(part$day), c("x", "events", "trials")]))
}
side_of <- function(strata, side) {
  total <- function(f) sum(vapply(strata, function(part) f(part[part$x == side, ]), 0))
  list(days = total(nrow), trials = total(function(part) sum(part$trials)), events = total(function(part) sum(part$events)))
}
# Rows: a exposed events, t1 exposed trials, c unexposed events, t0 unexposed trials.
counts_of <- function(strata) {
  one <- function(part) c(a = sum(part$events[part$x == 1]), t1 = sum(part$trials[part$x == 1]), c = sum(part$events[part$x == 0]), t0 = sum(part$trials[part$x == 0]))
  if (length(strata) == 0) matrix(0, 0, 4, dimnames = list(NULL, c("a", "t1", "c", "t0"))) else t(vapply(strata, one, c(a = 0, t1 = 0, c = 0, t0 = 0)))
}

# ---- The family of comparisons -------------------------------------------------------------------------------------------
exposures <- c("chamber_overdue", "strainer_missed")
outcomes <- c("failed_test", "cleanliness_abort")
id_of <- function(unit, exposure, outcome) paste(ifelse(is.na(unit), "fleet", unit), exposure, outcome, sep = "/")
at_most <- function(p, line) !is.na(p) && p <= line

measure <- function(rows, unit, exposure, outcome, reading) {
  scope <- if (is.na(unit)) "fleet" else "unit"
  strata <- stratify(rows, exposure, outcome, reading)
  control <- stratify(rows, exposure, "unrelated_abort", reading)
  shift <- shift_test(strata, outcome)
  control_shift <- shift_test(control, "unrelated_abort")
  ratio <- ratio_of(strata, outcome, scope)
  at_risk <- sum(rows$at_risk)
  k <- counts_of(strata)
  list(
    id = id_of(unit, exposure, outcome), unit = unit, exposure = exposure, outcome = outcome, exposed = side_of(strata, 1), unexposed = side_of(strata, 0),
    not_at_risk = nrow(rows) - at_risk, exposure_unknown = at_risk - sum(vapply(strata, nrow, 0L)),
    strata = sum(k[, "t1"] > 0 & k[, "t0"] > 0 & k[, "a"] + k[, "c"] > 0),
    kind = ratio$kind, ratio = ratio$ratio, low = ratio$low, high = ratio$high, p_conditional = ratio$p, by_r = ratio$r,
    p = shift$p, p_error = shift$error, drawn = shift$drawn, shifts = shift$shifts, variance_inflation = shift$inflation,
    smallest_detectable_ratio = detectable(strata, outcome, max(1, shift$inflation, na.rm = TRUE)),
    control = c(ratio_of(control, "unrelated_abort", scope)[c("ratio", "low", "high")], list(
      p = control_shift$p, p_error = control_shift$error, moved = at_most(control_shift$p, site$alpha), exposed = side_of(control, 1), unexposed = side_of(control, 0))))
}

without <- function(of) if (at_most(of$smallest_detectable_ratio, site$ratio_of_interest)) "not_shown" else "cannot_tell"
judge <- function(of) {
  if (of$mostly_reactive) return("not_comparable")
  if (of$exposed$days + of$unexposed$days == 0) return("cannot_tell")
  if (of$exposed$days < site$least_days || of$unexposed$days < site$least_days) return("not_comparable")
  if (is.na(of$ratio) || is.na(of$p) || of$ratio <= 1) return(without(of))
  interval <- of$low > 1
  adjusted <- of$adjusted_p <= site$alpha
  step <- if (interval && adjusted) 2 else if (interval || adjusted || of$p <= site$alpha) 1 else 0
  c(without(of), "suggested", "shown")[1 + max(0, step - of$control$moved)]
}
finding <- function(of) {
  if (!is.na(of$low) && of$low > 1 && at_most(of$adjusted_p, site$alpha)) "holds"
  else if (!is.na(of$other_low) && of$other_low > 1) "carried_by_other" else "not_told_apart"
}

family <- function(reading) {
  reactive <- lapply(exposures, function(exposure) site$units[vapply(made, function(unit) unit$reactive[[reading]][[exposure]], NA)])
  names(reactive) <- exposures
  rows_of <- function(unit, exposure) if (is.na(unit)) panel[!(panel$unit %in% reactive[[exposure]]), ] else panel[panel$unit == unit, ]
  asked <- expand.grid(unit = c(NA, site$units), outcome = outcomes, exposure = exposures, stringsAsFactors = FALSE)
  all <- lapply(seq_len(nrow(asked)), function(i) {
    q <- asked[i, ]
    of <- measure(rows_of(q$unit, q$exposure), q$unit, q$exposure, q$outcome, reading)
    of$unit_not_comparable <- if (is.na(q$unit)) sum(panel$unit %in% reactive[[q$exposure]]) else 0
    of$mostly_reactive <- !is.na(q$unit) && q$unit %in% reactive[[q$exposure]]
    of
  })
  names(all) <- vapply(all, `[[`, "", "id")
  p <- vapply(all, `[[`, 0, "p")
  error <- vapply(all, `[[`, 0, "p_error")
  # Adjusted p-values rise with every p, so those of the ends of the p-values' margins of error enclose them.
  adjusted <- p.adjust(p, method = "BH")
  lower <- p.adjust(pmax(0, p - error), method = "BH")
  upper <- p.adjust(pmin(1, p + error), method = "BH")
  for (i in seq_along(all)) {
    all[[i]]$adjusted_p <- adjusted[[i]]
    all[[i]]$adjusted_p_least <- lower[[i]]
    all[[i]]$adjusted_p_most <- upper[[i]]
    all[[i]]$verdict <- judge(all[[i]])
  }
  # Each exposure that speaks is set beside the other, where that speaks in the unit or is shown for the fleet.
  first <- vapply(all, `[[`, "", "verdict")
  speaks <- first %in% c("shown", "suggested")
  names(speaks) <- names(first)
  besides <- list()
  for (of in all) {
    other <- setdiff(exposures, of$exposure)
    if (!speaks[[of$id]] || !(speaks[[id_of(of$unit, other, of$outcome)]] || first[[id_of(NA, other, of$outcome)]] == "shown")) next
    scope <- if (is.na(of$unit)) "fleet" else "unit"
    rows <- rows_of(of$unit, of$exposure)
    own <- ratio_of(stratify(rows, of$exposure, of$outcome, reading, other), of$outcome, scope)
    others <- ratio_of(stratify(rows, other, of$outcome, reading, of$exposure), of$outcome, scope)
    besides[[of$id]] <- list(exposure = other, ratio = own$ratio, low = own$low, high = own$high, p = own$p,
      other_ratio = others$ratio, other_low = others$low, other_high = others$high)
  }
  beside_p <- p.adjust(vapply(besides, `[[`, 0, "p"), method = "holm")
  for (i in seq_along(besides)) {
    besides[[i]]$adjusted_p <- beside_p[[i]]
    besides[[i]]$finding <- finding(besides[[i]])
  }
  found <- besides
  for (id in names(besides)) {
    of <- all[[id]]
    fleet <- found[[id_of(NA, of$exposure, of$outcome)]]
    # What a unit's own days can't tell apart is taken from the fleet's.
    if (besides[[id]]$finding == "not_told_apart" && !is.null(fleet)) besides[[id]]$finding <- fleet$finding
    all[[id]]$beside <- besides[[id]]
    all[[id]]$verdict <- switch(besides[[id]]$finding, holds = of$verdict, carried_by_other = without(of), not_told_apart = "suggested")
  }
  all
}
