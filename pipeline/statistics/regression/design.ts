import { dependentColumn } from './dependent-column.ts';

/** Covariates of a regression. */
export interface Covariates {
  /** One array per row, finite numbers, all of one length. */
  covariates: readonly (readonly number[])[];
  /** One name per covariate, in order; without them "covariate 1" and so on. */
  names?: readonly string[];
  /** Cluster of each row, for robust standard errors. */
  clusters?: ArrayLike<string | number>;
}

/**
 * Names of the covariates, after checking that all arrays fit together. @throws RangeError where they don't
 */
export function checkedNames(design: Covariates, rows: number, caller: string): string[] {
  const width = design.covariates[0]?.length ?? design.names?.length ?? 0;
  if (design.covariates.length !== rows) {
    throw new RangeError(`${caller}: covariates must have ${rows} rows, found ${design.covariates.length}`);
  }
  for (const [i, row] of design.covariates.entries()) {
    if (row.length !== width || row.some((x) => !Number.isFinite(x))) {
      throw new RangeError(
        `${caller}: row ${i} must hold ${width} finite covariates, found [${row.join(', ')}]`,
      );
    }
  }
  if (design.names !== undefined && design.names.length !== width) {
    throw new RangeError(`${caller}: names must have ${width} entries, found ${design.names.length}`);
  }
  if (design.clusters !== undefined && design.clusters.length !== rows) {
    throw new RangeError(`${caller}: clusters must have ${rows} entries, found ${design.clusters.length}`);
  }
  return design.names !== undefined
    ? [...design.names]
    : Array.from({ length: width }, (_, j) => `covariate ${j + 1}`);
}

/**
 * Covariates of one stratum less their means; one row's value is taken off first, so that a covariate that is constant becomes exactly 0. Rows that share their list share it afterwards: of millions of days there
 * are few lists.
 */
export function centred(rows: readonly (readonly number[])[]): number[][] {
  const first = rows[0] ?? [];
  const means = first.map((from, j) => rows.reduce((sum, x) => sum + (x[j]! - from), 0) / rows.length);
  const known = new Map<readonly number[], number[]>();
  return rows.map((x) => {
    const own = known.get(x) ?? x.map((value, j) => value - first[j]! - means[j]!);
    known.set(x, own);
    return own;
  });
}

/** Why these columns can't be told apart, in words; undefined if they can. */
export function collinearity(
  rows: readonly (readonly number[])[],
  names: readonly string[],
): string | undefined {
  const column = dependentColumn(rows);
  if (column === undefined) return undefined;
  return column === 0
    ? `${names[0]} does not vary.`
    : `${names[column]} is a linear combination of ${names.slice(0, column).join(', ')}.`;
}
