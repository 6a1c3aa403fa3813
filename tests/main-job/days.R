# Raw exports to days: operating days, day results, episodes, days at risk, exposures, eras and strata. Needs `site` and `file_in`.

# ---- Reading -------------------------------------------------------------------------------------------------------
starts_s <- sum(as.integer(strsplit(site$day_starts, ":")[[1]]) * c(3600, 60))
instant <- function(text) {
  dated <- !is.na(text) & nchar(text) == 10
  text[dated] <- paste(text[dated], site$day_starts)
  as.numeric(as.POSIXct(strptime(text, "%Y-%m-%d %H:%M", tz = site$zone)))
}
operating_day <- function(at) {
  wall <- as.POSIXlt(at, origin = "1970-01-01", tz = site$zone)
  seconds <- wall$hour * 3600 + wall$min * 60 + wall$sec
  as.integer(as.Date(sprintf("%04d-%02d-%02d", wall$year + 1900, wall$mon + 1, wall$mday))) - as.integer(seconds < starts_s)
}
until <- as.integer(as.Date(site$until))
read_export <- function(name, time, columns) {
  if (!file.exists(file_in(name))) return(as.data.frame(sapply(c(columns, "day", "dated"), function(x) character(0))))
  rows <- unique(read.csv(file_in(name), colClasses = "character", na.strings = ""))
  stopifnot(identical(sort(names(rows)), sort(columns)))
  rows$dated <- nchar(rows[[time]]) == 10
  for (column in intersect(c("start", "end", "time", "from", "to"), columns)) rows[[column]] <- instant(rows[[column]])
  rows$day <- operating_day(rows[[time]])
  rows <- rows[rows$day < until, ]
  rows[order(rows$unit, rows[[time]]), ]
}
cycles <- read_export("cycles.csv", "start", c("unit", "start", "end", "kind", "outcome", "cycle_number", "abort_text"))
tests <- read_export("air-removal-tests.csv", "time", c("unit", "time", "result", "cycle_number"))
cleanings <- read_export("cleanings.csv", "time", c("unit", "task", "time", "start", "state", "reason"))
service <- read_export("service.csv", "from", c("unit", "kind", "from", "to"))
cleanings$done <- is.na(cleanings$state) | cleanings$state == "done"

# ---- Where the cleaning log was kept: no hole of more than ten days between records of the whole site (the strainer, due daily, is logged) ------
logged <- sort(unique(cleanings$day))
reach <- max(10, 2 * 1)
stretch <- cumsum(c(TRUE, diff(logged) > reach))
log_from <- tapply(logged, stretch, min)
log_to <- tapply(logged, stretch, max)
log_to[length(log_to)] <- log_to[length(log_to)] + reach
log_kept <- function(day) vapply(day, function(d) any(log_from <= d & d <= log_to), NA)

# ---- One unit: its days of use, and what held and happened on them ----------------------------------------------------
has_word <- function(text, words) Reduce(`|`, lapply(words, function(word) grepl(word, text, fixed = TRUE)))
end_of <- function(rows) ifelse(is.na(rows$end), rows$start, rows$end)

class_cycles <- function(own, cleaned) {
  text <- ifelse(is.na(own$abort_text), "", own$abort_text)
  stopped <- own$outcome == "aborted" & (has_word(text, operator_words) | text == "")
  early <- stopped & !is.na(own$end) & own$end - own$start < site$purge_minutes * 60
  wet <- cleaned[cleaned$done & cleaned$task %in% c("chamber", "drain_flush", "professional"), ]
  ran <- own$start[own$outcome == "completed"]
  near <- rep(FALSE, nrow(own))
  for (i in seq_len(nrow(wet))) {
    opens <- if (is.na(wet$start[i])) wet$time[i] else wet$start[i]
    soon <- !wet$dated[i] & own$start <= wet$time[i] + site$purge_hours * 3600
    # Until the next warm-up, or other cycle that ran, on the operating day of the record; on the whole day where it has a date only.
    following <- ran[ran > wet$time[i]]
    cold <- wet$dated[i] | length(following) == 0 | own$start <= min(following, Inf)
    near <- near | (own$start >= opens & (soon | (cold & own$day == wet$day[i])))
  }
  own$purge <- early & near
  own$early_stop <- early & !near
  failed <- own$outcome %in% c("aborted", "failed") & !early
  own$counts <- own$kind %in% c("production", "liquids") & (own$outcome == "completed" | failed)
  own$cleanliness <- own$counts & failed & has_word(text, cleanliness_words)
  own$unrelated <- own$counts & failed & (has_word(text, unrelated_words) | (text == "" & own$outcome == "aborted"))
  own
}

# The first valid test of the day; not those of a qualification cycle (same number), nor those after a repair that ended on that day.
day_results <- function(own, ran, served) {
  qualification <- paste(ran$day, ran$cycle_number)[ran$kind == "qualification" & !is.na(ran$cycle_number)]
  repaired <- served$to[served$kind %in% c("repair", "controller_replaced") & !is.na(served$to)]
  after <- vapply(seq_len(nrow(own)), function(i) any(repaired <= own$time[i] & operating_day(repaired) == own$day[i]), NA)
  valid <- own[own$result %in% c("pass", "fail") & !after & !(paste(own$day, own$cycle_number) %in% qualification), ]
  valid[!duplicated(valid$day), c("day", "result")]
}

inside_episodes <- function(days, results) {
  inside <- rep(FALSE, length(days))
  began <- NA
  for (i in seq_len(nrow(results))) {
    if (results$result[i] == "fail" && is.na(began)) began <- results$day[i]
    if (results$result[i] == "pass" && !is.na(began)) {
      inside <- inside | (days > began & days <= results$day[i])
      began <- NA
    }
  }
  if (!is.na(began)) inside <- inside | days > began
  inside
}

# A chamber record that the cycle log contradicts: a cycle overlaps the stated work, or the chamber was idle for less than the cool-down.
contradicted <- function(own, ran) {
  ran <- ran[!ran$purge, ]
  vapply(seq_len(nrow(own)), function(i) {
    if (own$task[i] != "chamber" || !own$done[i] || own$dated[i]) return(FALSE)
    opens <- if (is.na(own$start[i])) own$time[i] else own$start[i]
    running <- any(ran$start < own$time[i] & end_of(ran) > opens)
    before <- end_of(ran)[end_of(ran) <= opens]
    running || (length(before) > 0 && opens - max(before) < site$cool_down_h * 3600)
  }, NA)
}

# Days past due when the day's first cycle started: 0 where not overdue, NA where the record can't tell.
days_past_due <- function(days, first_cycle, done) {
  vapply(seq_along(days), function(i) {
    day <- days[i]
    over <- done$day < day | (done$day == day & !done$dated & done$time <= first_cycle[i])
    last <- if (any(over)) max(done$day[over]) else NA
    from <- if (is.na(last)) days[1] else last
    due <- from + site$interval
    if (day <= due + site$grace) return(if (is.na(last)) NA_integer_ else 0L)
    comes <- c(done$day[!over], Inf)[1]
    if (all(log_kept(due:day)) || comes <= from + 2 * site$interval) as.integer(day - due) else NA_integer_
  }, 1L)
}

# Strainers missed in the last days of use, this one included: missed before it, and on it what was not done before its first cycle.
strainers_missed <- function(days, first_cycle, own) {
  state <- vapply(seq_along(days), function(i) {
    of_day <- own[own$day == days[i], ]
    done <- of_day[of_day$done, ]
    if (any(done$dated | done$time <= first_cycle[i])) return("done")
    if (nrow(done) > 0) return("late")
    if (any(of_day$state %in% "missed") || log_kept(days[i])) "missed" else "not recorded"
  }, "")
  vapply(seq_along(days), function(i) {
    if (i < site$window) return(NA_integer_)
    last <- state[(i - site$window + 1):i]
    if (any(last == "not recorded")) return(NA_integer_)
    sum(last == "missed") + as.integer(state[i] == "late")
  }, 1L)
}

unit_days <- function(unit) {
  cleaned <- cleanings[cleanings$unit == unit, ]
  served <- service[service$unit == unit, ]
  ran <- class_cycles(cycles[cycles$unit == unit, ], cleaned)
  own_tests <- tests[tests$unit == unit, ]
  used <- ran[!ran$purge, ]
  days <- sort(unique(used$day))
  first_cycle <- as.numeric(tapply(used$start, used$day, min))
  count <- function(flag) as.integer(table(factor(ran$day[flag], levels = days)))

  repairs <- served[served$kind %in% c("repair", "controller_replaced", "out_of_service"), ]
  out <- vapply(seq_along(days), function(i) any(repairs$from <= first_cycle[i] &
    ifelse(is.na(repairs$to), operating_day(repairs$from) == days[i], first_cycle[i] < repairs$to)), NA)
  resets <- c(
    operating_day(ifelse(is.na(served$to), served$from, served$to)[served$kind %in% c("repair", "controller_replaced", "professional_cleaning")]),
    cleaned$day[cleaned$task == "professional" & cleaned$done])
  begins <- c(days[1], sort(unique(resets[resets > days[1]])))
  ends <- c(begins[-1], until)
  era <- findInterval(days, begins) - 1L
  long <- (ends - begins)[era + 1]
  parts <- pmax(1, round(long / site$stratum_days))
  stratum <- pmin(parts - 1, floor((days - begins[era + 1]) * parts / long))

  results <- day_results(own_tests, ran, served)
  result <- results$result[match(days, results$day)]
  inside <- inside_episodes(days, results)
  cleaned$contradicted <- contradicted(cleaned, ran)
  failed_at <- own_tests[own_tests$result == "fail", ]
  cleaned$reactive <- cleaned$done & (cleaned$reason %in% "reactive" | vapply(seq_len(nrow(cleaned)), function(i) {
    since <- cleaned$day[i] - failed_at$day
    after <- failed_at$time <= cleaned$time[i] | (cleaned$dated[i] & since == 0)
    any(after & since <= site$reactive_days)
  }, NA))
  chamber <- cleaned[cleaned$task == "chamber" & cleaned$done, ]
  strainer <- cleaned[cleaned$task == "drain_strainer", ]
  past_due <- days_past_due(days, first_cycle, chamber[!chamber$contradicted, ])
  share <- function(rows) if (nrow(rows) == 0) 0 else mean(rows$reactive)
  list(
    days = data.frame(
      unit = unit, day = days, era = era, stratum = stratum, test_result = result, inside_episode = as.integer(inside),
      out_of_service = as.integer(out), at_risk = as.integer(!is.na(result) & !inside & !out), failed = as.integer(result == "fail"),
      production_cycles = count(ran$counts), cleanliness_aborts = count(ran$cleanliness), unrelated_aborts = count(ran$unrelated),
      unclassified_aborts = count(ran$counts & ran$outcome != "completed" & !ran$cleanliness & !ran$unrelated),
      purges = count(ran$purge), early_stops = count(ran$early_stop),
      chamber_overdue = as.integer(past_due > 0), chamber_days_past_due = past_due,
      chamber_overdue_all_records = as.integer(days_past_due(days, first_cycle, chamber) > 0),
      strainers_missed = strainers_missed(days, first_cycle, strainer)),
    summary = list(
      unit = unit, days_of_use = length(days), eras = length(begins), day_results = sum(!is.na(result)), failed_days = sum(result %in% "fail"),
      purges = sum(ran$purge), early_stops = sum(ran$early_stop), chamber_done = nrow(chamber), chamber_contradicted = sum(chamber$contradicted),
      chamber_reactive = sum(chamber$reactive), strainer_done = sum(strainer$done), strainer_reactive = sum(strainer$reactive)),
    reactive = lapply(list(site = chamber[!chamber$contradicted, ], all_records = chamber), function(counted)
      c(chamber_overdue = share(counted), strainer_missed = share(strainer[strainer$done, ])) >= site$reactive_share))
}
made <- lapply(site$units, unit_days)
names(made) <- site$units
panel <- do.call(rbind, lapply(made, `[[`, "days"))
rownames(panel) <- NULL
