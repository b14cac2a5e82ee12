/**
 * A small square system A·x = b, by Gaussian elimination with the largest pivot of each column. Five unknowns at most:
 * two of the axle, one of the blow, two of the floor. The core's mathjs could do it, but is only loaded for its units.
 * Null if no pivot is left: conditions that depend on one another, within the precision of numbers.
 */
export function solveLinear(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  for (let column = 0; column < rows.length; column++) if (!eliminate(rows, column)) return null;
  return rows.map((row, i) => (row[rows.length] ?? 0) / (row[i] ?? 1));
}

/** Clears a column of all rows but its own, which is brought to its place; false without a pivot. */
function eliminate(rows: number[][], column: number): boolean {
  const size = (row: number) => Math.abs(rows[row]?.[column] ?? 0);
  let best = column;
  for (let row = column + 1; row < rows.length; row++) if (size(row) > size(best)) best = row;
  const pivotRow = rows[best];
  const own = rows[column];
  if (!pivotRow || !own || size(best) === 0) return false;
  rows[best] = own;
  rows[column] = pivotRow;
  const pivot = pivotRow[column] ?? 1;
  for (const row of rows) {
    if (row === pivotRow) continue;
    const share = (row[column] ?? 0) / pivot;
    if (share === 0) continue;
    for (let k = column; k < row.length; k++) row[k] = (row[k] ?? 0) - share * (pivotRow[k] ?? 0);
  }
  return true;
}
