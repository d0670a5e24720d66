import { fcnnlsVector } from 'ml-fcnnls'

/** Two residuals closer than this are the same answer to a gauge box. */
const GRADIENT_TOLERANCE = 1e-9

/**
 * A faint pull of every share towards nothing. Sands (nearly) alike leave no single answer, and the library
 * has been seen to stop short there; with it they share alike, and a residual moves by less than 1e-9.
 */
const PULL = 1e-6

/**
 * Shares of the sands, what passes and the residual, for one set of plain numbers.
 *
 * The condition on the sum needs no multiplier. With D the sands' curves less the target, the minimum of
 * |D x|² + (Σx − 1)² over x ≥ 0 points the same way as that of |D y|² under Σy = 1, since along each
 * direction the best scale gives |D y|² / (1 + |D y|²), which grows with |D y|².
 */
export function solveBlend(
  sands: number,
  targets: readonly number[],
  x: Readonly<Record<string, number>>,
): Record<string, number> {
  const passing = (s: number, t: number) => x[`passing.${s}.${t}`] ?? 0
  const all = Array.from({ length: sands }, (_, s) => s)
  const rows = targets.map((target, t) => all.map((s) => (passing(s, t) - target) / 100))
  const pulls = all.map((s) => all.map((other) => (other === s ? PULL : 0)))
  const wanted = [...targets.map(() => 0), 1, ...all.map(() => 0)]
  const answer = fcnnlsVector([...rows, all.map(() => 1), ...pulls], wanted, {
    gradientTolerance: GRADIENT_TOLERANCE,
    maxIterations: 20 * sands,
  }).K.to1DArray()
  const whole = answer.reduce((sum, share) => sum + share, 0)
  const out: Record<string, number> = {}
  const volumes = all.map((s) => (answer[s] ?? 0) / whole / (x[`density.${s}`] ?? 1))
  const volume = volumes.reduce((sum, v) => sum + v, 0)
  for (const s of all) {
    out[`share.${s}`] = (answer[s] ?? 0) / whole
    out[`volume.${s}`] = (volumes[s] ?? 0) / volume
  }
  let squares = 0
  targets.forEach((target, t) => {
    const blend = all.reduce((sum, s) => sum + (out[`share.${s}`] ?? 0) * passing(s, t), 0)
    out[`blend.${t}`] = blend
    squares += (blend - target) ** 2
  })
  out.residual = Math.sqrt(squares / targets.length)
  return out
}
