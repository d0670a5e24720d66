import { LEVEL, limitOf } from './distributions.ts'
import { riskTable } from './kaplan-meier.ts'

/** A wall on the day something ended its watch, with what it was; null: last seen standing. */
export interface Ended {
  readonly time: number
  readonly cause: string | null
  readonly weight?: number
}

export interface IncidenceStep {
  readonly time: number
  /** Share of the walls that `cause` has come to by then. */
  readonly share: number
  readonly error: number
  /** Limits on the log-log scale of the share; null where they are not defined. */
  readonly low: number | null
  readonly high: number | null
}

/**
 * Aalen and Johansen's cumulative incidence (1978) of one cause among several, where days are exact, with the
 * variance that follows from the delta method. With one cause alone it is 1 minus Kaplan and Meier's curve, and
 * its error Greenwood's.
 */
export function estimateExactIncidence(
  walls: readonly Ended[],
  cause: string,
  level: number = LEVEL,
): IncidenceStep[] {
  const z = limitOf(level)
  const any = riskTable(walls.map(({ cause: c, ...wall }) => ({ ...wall, event: c !== null })))
  const own = riskTable(walls.map(({ cause: c, ...wall }) => ({ ...wall, event: c === cause })))
  const steps: { time: number; share: number; n: number; d: number; k: number; before: number }[] = []
  let standing = 1
  let share = 0
  any.forEach(({ time, atRisk: n, events: d }, i) => {
    if (d === 0) return
    const k = own[i]?.events ?? 0
    share += (standing * k) / n
    steps.push({ time, share, n, d, k, before: standing })
    standing *= 1 - d / n
  })
  return steps.flatMap(({ time, share: reached, k }, i) => {
    if (k === 0) return []
    const variance = steps.slice(0, i + 1).reduce((sum, step) => sum + termOf(step, reached), 0)
    const error = Math.sqrt(Math.max(0, variance))
    return [{ time, share: reached, error, ...limits(reached, error, z) }]
  })
}

/** What one earlier day adds to the variance of the share reached. */
function termOf(
  { share, n, d, k, before }: { share: number; n: number; d: number; k: number; before: number },
  reached: number,
): number {
  const since = reached - share
  const left = n > d ? (since * since * d) / (n * (n - d)) : 0
  return left + (before * before * k * (n - k)) / n ** 3 - (2 * since * before * k) / (n * n)
}

function limits(share: number, error: number, z: number): Pick<IncidenceStep, 'low' | 'high'> {
  if (share <= 0 || share >= 1) return { low: null, high: null }
  const spread = (z * error) / (share * Math.abs(Math.log(share)))
  return { low: share ** Math.exp(spread), high: share ** Math.exp(-spread) }
}
