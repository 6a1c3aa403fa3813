# Drain flushes once more, from the raw exports and without the pipeline: what fell due on each unit, what became of it, and how many were missed in a row
# when each day began. It walks through the calendar day by day, where the pipeline reckons with intervals. R 4.2.2, no packages.
# Usage: Rscript flushes.R FOLDER, run in this folder by recompute.ts. Writes expected-tasks.csv and expected-missed.csv into FOLDER.
options(warn = 2)
folder <- commandArgs(TRUE)[1]
file_in <- function(name) file.path(folder, name)

# ---- What the site says (the test compares these with the site file) ------------------------------------------------
every <- 7
grace <- 1
liquids <- c("U1", "U2", "U3")
units <- sprintf("U%d", 1:4)
until <- as.integer(as.Date("2025-01-01"))
day_starts_h <- 4

day_of <- function(text) {
  at <- as.numeric(as.POSIXct(strptime(text, "%Y-%m-%d %H:%M", tz = "UTC")))
  as.integer(floor((at - day_starts_h * 3600) / 86400))
}
cycles <- read.csv(file_in("cycles.csv"), colClasses = "character")
cleanings <- read.csv(file_in("cleanings.csv"), colClasses = "character")

walk <- function(unit) {
  used <- sort(unique(day_of(cycles$start[cycles$unit == unit])))
  used <- used[used < until]
  own <- cleanings[cleanings$unit == unit & day_of(cleanings$time) < until, ]
  flushed <- day_of(own$time[own$task == "drain_flush"])
  chamber <- day_of(own$time[own$task == "chamber"])
  by_week <- unit %in% liquids
  tasks <- data.frame(due = integer(0), state = character(0), done = integer(0))
  note <- function(due, state, done = NA) tasks[nrow(tasks) + 1, ] <<- list(due, state, done)

  anchor <- used[1]
  waiting <- NULL
  week_over <- FALSE
  chamber_cleaned <- any(chamber < anchor)
  # What has come due on the day: it takes the place of what waited, which was missed unless both ask for the same work within the grace.
  come_due <- function(day) {
    after_chamber <- chamber_cleaned
    if (!is.null(waiting)) {
      same_work <- waiting$after_chamber != after_chamber && day <= waiting$due + grace
      if (same_work) after_chamber <- TRUE else note(waiting$due, "missed")
    }
    waiting <<- list(due = day, after_chamber = after_chamber)
    week_over <<- FALSE
    chamber_cleaned <<- FALSE
  }
  for (day in min(used, flushed, chamber):(until - 1)) {
    if (by_week && day > anchor && (day - anchor) %% every == 0) week_over <- TRUE
    if (day >= used[1] && day %in% chamber) chamber_cleaned <- TRUE
    if (day %in% used && (week_over || chamber_cleaned)) come_due(day)
    for (flush in flushed[flushed == day]) {
      # Flushed while the unit was idle, after something had made it due: done before the day of use on which it would have been due.
      if (week_over || chamber_cleaned) come_due(c(used[used >= day], Inf)[1])
      if (!is.null(waiting)) note(min(waiting$due, day), if (day > waiting$due + grace) "done_late" else "done", day)
      else if (by_week && 2 * (day - anchor) >= every) note(day, "done", day)
      waiting <- NULL
      anchor <- day
    }
  }
  if (!is.null(waiting)) note(waiting$due, if (until - 1 <= waiting$due + grace) "open" else "missed")

  # How many in a row were missed when a day began: back from the last that was past its grace or done, to the last done.
  missed <- vapply(used, function(day) {
    done <- !is.na(tasks$done) & tasks$done < day
    known <- which(done | tasks$due + grace < day)
    if (length(known) == 0) return(NA_integer_)
    since <- c(0, known[done[known]])
    sum(known > max(since))
  }, 1L)
  list(tasks = data.frame(unit = rep(unit, nrow(tasks)), tasks), missed = data.frame(unit, day = used, flushes_missed_in_a_row = missed))
}
walked <- lapply(units, walk)
write_kept <- function(name, what)
  write.csv(do.call(rbind, lapply(walked, `[[`, what)), file_in(name), row.names = FALSE, quote = FALSE, na = "")
write_kept("expected-tasks.csv", "tasks")
write_kept("expected-missed.csv", "missed")
