# Shared by the scripts beside it: writes a data frame as JSON rows with all 17 digits.
# Run each script in this folder, for example: Rscript distributions.R (R 4.2.2)
write_rows <- function(rows, file) {
  writeLines(jsonlite::toJSON(rows, digits = NA, dataframe = "rows", na = "string", auto_unbox = TRUE), file)
}
