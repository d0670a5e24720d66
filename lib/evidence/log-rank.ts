import { chiSquareTail } from './distributions.ts'
import { riskTable, type Timed } from './kaplan-meier.ts'
import { quadraticForm } from './solve.ts'

export interface GroupCount {
  readonly group: string
  readonly walls: number
  readonly observed: number
  readonly expected: number
}

export interface LogRank {
  readonly groups: readonly GroupCount[]
  readonly chiSquare: number
  readonly degrees: number
  readonly p: number
}

/**
 * The log-rank test between two or more groups whose days are exact: (O − E)² over its hypergeometric
 * variance (Mantel 1966, Peto and Peto 1972), not the shortcut over E. Null where there is nothing to compare:
 * one group only, or no day on which something happened while two groups were at risk.
 */
export function testLogRank(walls: readonly (Timed & { readonly group: string })[]): LogRank | null {
  const names = [...new Set(walls.map(({ group }) => group))]
  const times = [...new Set(walls.map(({ time }) => time))].sort((a, b) => a - b)
  const tables = names.map((name) => alignTo(times, riskTable(walls.filter(({ group }) => group === name))))
  const observed = names.map(() => 0)
  const expected = names.map(() => 0)
  const covariance = names.map(() => names.map(() => 0))
  times.forEach((_, t) => {
    const atRisk = tables.map((table) => table[t]?.atRisk ?? 0)
    const events = tables.map((table) => table[t]?.events ?? 0)
    const [n, d] = [add(atRisk), add(events)]
    if (d === 0) return
    const factor = n > 1 ? (d * (n - d)) / (n - 1) : 0
    atRisk.forEach((own, g) => {
      observed[g] = (observed[g] as number) + (events[g] as number)
      expected[g] = (expected[g] as number) + (d * own) / n
      atRisk.forEach((other, h) => {
        const row = covariance[g] as number[]
        row[h] = (row[h] as number) + factor * (own / n) * ((g === h ? 1 : 0) - other / n)
      })
    })
  })
  const degrees = names.length - 1
  const sums = observed.map((o, g) => o - (expected[g] as number)).slice(0, degrees)
  const chiSquare = quadraticForm(
    covariance.slice(0, degrees).map((row) => row.slice(0, degrees)),
    sums,
  )
  if (chiSquare === null) return null
  const groups = names.map((group, g) => ({
    group,
    walls: add(walls.filter((wall) => wall.group === group).map(({ weight = 1 }) => weight)),
    observed: observed[g] as number,
    expected: expected[g] as number,
  }))
  return { groups, chiSquare, degrees, p: chiSquareTail(chiSquare, degrees) }
}

/** The group's row at each of all times: at risk are those still to come. */
function alignTo(times: readonly number[], rows: ReturnType<typeof riskTable>) {
  let next = 0
  return times.map((time) => {
    const row = rows[next]
    if (row?.time !== time) return { atRisk: row?.atRisk ?? 0, events: 0 }
    next++
    return row
  })
}

const add = (numbers: readonly number[]) => numbers.reduce((sum, x) => sum + x, 0)
