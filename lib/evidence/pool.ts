/**
 * Turns `values[start..end)` into the nearest ones, by weighted squares, that never fall and keep between 0
 * and 1 (pool adjacent violators). In place, in one pass.
 */
export function pool(values: Float64Array, weights: Float64Array, start: number, end: number): void {
  const means = new Float64Array(end - start)
  const sums = new Float64Array(end - start)
  const sizes = new Uint32Array(end - start)
  let blocks = 0
  for (let k = start; k < end; k++) {
    let mean = values[k] as number
    let sum = weights[k] as number
    let size = 1
    while (blocks > 0 && (means[blocks - 1] as number) >= mean) {
      blocks--
      const other = sums[blocks] as number
      mean = (mean * sum + (means[blocks] as number) * other) / (sum + other)
      sum += other
      size += sizes[blocks] as number
    }
    means[blocks] = mean
    sums[blocks] = sum
    sizes[blocks] = size
    blocks++
  }
  let k = start
  for (let block = 0; block < blocks; block++) {
    const mean = Math.min(1, Math.max(0, means[block] as number))
    for (const until = k + (sizes[block] as number); k < until; k++) values[k] = mean
  }
}
