/** Ratios and bounds without end are null in the data: JSON has no Infinity. */
export const finiteOrNull = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;
