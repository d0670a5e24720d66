/**
 * Puts the k-th smallest of `values` in its place, smaller ones before it and larger ones after (Hoare's
 * find). d3-array's quickselect compares by a function that allows for any type and takes ten times as
 * long, which is most of a job's time.
 */
export function select(values: Float64Array, k: number, from: number, to: number): void {
  let left = from
  let right = to
  while (left < right) {
    const pivot = values[k] as number
    let i = left
    let j = right
    while (i <= j) {
      while ((values[i] as number) < pivot) i++
      while ((values[j] as number) > pivot) j--
      if (i <= j) {
        const swapped = values[i] as number
        values[i++] = values[j] as number
        values[j--] = swapped
      }
    }
    if (j < k) left = i
    if (k < i) right = j
  }
}
