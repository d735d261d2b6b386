/**
 * Solves a small dense system in place by elimination with row pivots (Golub & Van Loan 2013, §3.4).
 * @param matrix row by row, size × size; destroyed
 * @param right right-hand side; becomes the solution
 * @returns false where the matrix is singular to rounding
 */
export function linearSolve(matrix: Float64Array, right: Float64Array): boolean {
  const n = right.length;
  let largest = 0;
  for (const v of matrix) largest = Math.max(largest, Math.abs(v));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(matrix[i * n + k]!) > Math.abs(matrix[pivot * n + k]!)) pivot = i;
    if (!(Math.abs(matrix[pivot * n + k]!) > 1e-15 * largest)) return false;
    if (pivot !== k) {
      for (let j = k; j < n; j++) {
        const spare = matrix[k * n + j]!;
        matrix[k * n + j] = matrix[pivot * n + j]!;
        matrix[pivot * n + j] = spare;
      }
      const spare = right[k]!;
      right[k] = right[pivot]!;
      right[pivot] = spare;
    }
    for (let i = k + 1; i < n; i++) {
      const factor = matrix[i * n + k]! / matrix[k * n + k]!;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[i * n + j] = matrix[i * n + j]! - factor * matrix[k * n + j]!;
      right[i] = right[i]! - factor * right[k]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i]!;
    for (let j = i + 1; j < n; j++) sum -= matrix[i * n + j]! * right[j]!;
    right[i] = sum / matrix[i * n + i]!;
  }
  return true;
}
