// Weeks in remission: Freireich et al., Blood 21 (1963) 699-716; Klein and Moeschberger, Survival Analysis,
// 2nd ed. (2003).
const ended: readonly (0 | 1)[] = [1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0];

export const mercaptopurine = {
  name: '6-MP',
  durations: [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35],
  observed: ended,
};

export const placebo = {
  name: 'placebo',
  durations: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23],
  observed: ended.map((): 0 | 1 => 1),
};

/**
 * Sixteen made-up subjects with late entries, ties and two strata; expected values in reference/survival.R.
 */
export const lateEntries = {
  durations: [5, 8, 8, 9, 4, 12, 8, 3, 12, 10, 7, 9, 5, 14, 12, 6],
  observed: [1, 1, 0, 1, 1, 1, 1, 0, 1, 0, 1, 1, 1, 0, 1, 1] as (0 | 1)[],
  entry: [0, 2, 0, 5, 1, 0, 3, 0, 6, 2, 0, 4, 1, 0, 7, 0],
};
