/** One point of a grading curve: the share, % by mass, that passes an opening. */
export interface CurvePoint {
  readonly openingMm: number
  readonly passing: number
}

/** Where a share of the sand ends: a size, or the end of the stack it lies beyond, with that end's size. */
export interface CurveSize {
  readonly kind: 'size' | 'finer-than' | 'coarser-than'
  readonly mm: number
}

/**
 * The smallest size that at least `share` % of the sand is finer than, on a curve given coarsest first,
 * straight on the logarithm of size between sieves. Beyond the stack it answers with the stack's end.
 */
export function sizeAtPassing(curve: readonly CurvePoint[], share: number): CurveSize {
  for (let i = curve.length - 1; i >= 0; i--) {
    const point = curve[i] as CurvePoint
    if (point.passing < share) continue
    const finer = curve[i + 1]
    if (finer === undefined)
      return { kind: point.passing === share ? 'size' : 'finer-than', mm: point.openingMm }
    const part = (share - finer.passing) / (point.passing - finer.passing)
    return { kind: 'size', mm: finer.openingMm * (point.openingMm / finer.openingMm) ** part }
  }
  return { kind: 'coarser-than', mm: curve[0]?.openingMm ?? 0 }
}

/**
 * The share that passes an opening, on the same curve, or null where the stack says nothing: above its
 * coarsest sieve unless all passed that, below its finest unless nothing did.
 */
export function passingAt(curve: readonly CurvePoint[], openingMm: number): number | null {
  const coarsest = curve[0]
  const finest = curve[curve.length - 1]
  if (coarsest === undefined || finest === undefined) return null
  if (openingMm > coarsest.openingMm) return coarsest.passing === 100 ? 100 : null
  if (openingMm < finest.openingMm) return finest.passing === 0 ? 0 : null
  for (let i = 0; i < curve.length; i++) {
    const point = curve[i] as CurvePoint
    if (point.openingMm === openingMm) return point.passing
    if (point.openingMm > openingMm) continue
    const above = curve[i - 1] as CurvePoint
    const part = Math.log(openingMm / point.openingMm) / Math.log(above.openingMm / point.openingMm)
    return point.passing + part * (above.passing - point.passing)
  }
  return null
}
