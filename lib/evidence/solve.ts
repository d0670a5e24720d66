/**
 * The quadratic form of `sums` in the inverse of `covariance`: how far the sums stand from 0, as chi-square
 * with as many degrees of freedom as there are sums. Null where the covariance has no inverse, so that
 * nothing can be compared.
 */
export function quadraticForm(
  covariance: readonly (readonly number[])[],
  sums: readonly number[],
): number | null {
  const n = sums.length
  const rows = covariance.map((row, i) => [...row, sums[i] as number])
  const scale = Math.max(...covariance.flat().map(Math.abs))
  if (!(scale > 0)) return null
  for (let column = 0; column < n; column++) {
    const best = rows
      .slice(column)
      .reduce((top, row) => (Math.abs(at(row, column)) > Math.abs(at(top, column)) ? row : top))
    if (Math.abs(at(best, column)) < 1e-10 * scale) return null
    rows.splice(rows.indexOf(best), 1)
    rows.splice(column, 0, best)
    for (let i = column + 1; i < n; i++) {
      const row = rows[i] as number[]
      const factor = at(row, column) / at(best, column)
      for (let k = column; k <= n; k++) row[k] = at(row, k) - factor * at(best, k)
    }
  }
  const solution = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i] as number[]
    let left = at(row, n)
    for (let k = i + 1; k < n; k++) left -= at(row, k) * at(solution, k)
    solution[i] = left / at(row, i)
  }
  return solution.reduce((sum, x, i) => sum + x * at(sums, i), 0)
}

const at = (row: readonly number[], place: number) => row[place] as number
