/** Order of texts by their code units: the same on each machine, in whatever language. */
export const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
