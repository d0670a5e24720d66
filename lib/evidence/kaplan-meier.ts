import { LEVEL, limitOf } from './distributions.ts'

/** A wall whose day of change is known (`event`), or that was last seen unchanged on that day. */
export interface Timed {
  readonly time: number
  readonly event: boolean
  /** Walls this stands for, 1 unless said. */
  readonly weight?: number
}

/** The curve from `time` on, until the next step. */
export interface Step {
  readonly time: number
  readonly atRisk: number
  readonly events: number
  readonly survival: number
  /** Greenwood's standard error; null once nothing stands, where it is not defined. */
  readonly error: number | null
  /** Limits on the log-log scale; null where they are not defined. */
  readonly low: number | null
  readonly high: number | null
}

/**
 * Kaplan and Meier's estimate (1958) of the share still standing, a step for each day on which something
 * happened, with Greenwood's error (1926) and limits on the log-log scale. A wall last seen on a day counts as
 * at risk on that day.
 *
 * @throws RangeError for a time that is not 0 or more
 */
export function estimateKaplanMeier(walls: readonly Timed[], level: number = LEVEL): Step[] {
  const z = limitOf(level)
  let survival = 1
  let variance = 0
  return riskTable(walls).flatMap(({ time, atRisk, events }): Step[] => {
    if (events === 0) return []
    survival *= 1 - events / atRisk
    variance += events / (atRisk * (atRisk - events))
    // Steps add rounding; nothing is left when all at risk are gone.
    if (events === atRisk) survival = 0
    const step = { time, atRisk, events, survival }
    if (survival === 0) return [{ ...step, error: null, low: null, high: null }]
    const spread = (z * Math.sqrt(variance)) / Math.abs(Math.log(survival))
    return [
      {
        ...step,
        error: survival * Math.sqrt(variance),
        low: survival ** Math.exp(spread),
        high: survival ** Math.exp(-spread),
      },
    ]
  })
}

/** For each distinct time, earliest first, how many were at risk and to how many it happened. */
export function riskTable(walls: readonly Timed[]): { time: number; atRisk: number; events: number }[] {
  walls.forEach(({ time }, i) => {
    if (!(Number.isFinite(time) && time >= 0))
      throw new RangeError(`walls[${i}].time is ${time}; a day from 0 on will do`)
  })
  const sorted = [...walls].sort((a, b) => b.time - a.time)
  const rows: { time: number; atRisk: number; events: number }[] = []
  let atRisk = 0
  for (const { time, event, weight = 1 } of sorted) {
    atRisk += weight
    const events = event ? weight : 0
    const row = rows.at(-1)
    if (row?.time === time) {
      row.atRisk = atRisk
      row.events += events
    } else rows.push({ time, atRisk, events })
  }
  return rows.reverse()
}
