import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/**
 * Inverse of a symmetric positive definite matrix, by Cholesky after scaling to a unit diagonal, so that
 * columns of very different units do no harm. Undefined where the matrix is not positive definite.
 */
export function invertSymmetric(matrix: number[][]): number[][] | undefined {
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i]!));
  if (scale.some((s) => !(s > 0 && s < Number.POSITIVE_INFINITY))) return undefined;
  // From the lower triangle alone, for rounding may have left the two unlike in the last digit.
  const lower = (i: number, j: number) => matrix[Math.max(i, j)]![Math.min(i, j)]! * (scale[i]! * scale[j]!);
  const scaled = new Matrix(matrix.map((row, i) => row.map((_, j) => lower(i, j))));
  const cholesky = new CholeskyDecomposition(scaled);
  if (!cholesky.isPositiveDefinite()) return undefined;
  const inverse = cholesky.solve(Matrix.eye(matrix.length)).to2DArray();
  return inverse.map((row, i) => row.map((x, j) => x * scale[i]! * scale[j]!));
}

export function multiply(matrix: number[][], vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}

export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * b[i]!, 0);
}

/** Zero matrix of this size. */
export function zeros(size: number): number[][] {
  return Array.from({ length: size }, () => new Array<number>(size).fill(0));
}

/** Adds weight times the outer product of `x` with itself to a symmetric matrix. */
export function addOuter(matrix: number[][], x: readonly number[], weight: number): void {
  for (let i = 0; i < x.length; i++) {
    for (let j = 0; j < x.length; j++) matrix[i]![j]! += weight * x[i]! * x[j]!;
  }
}
