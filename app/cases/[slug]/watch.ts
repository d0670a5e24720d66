import type { VisitBody } from '#lib/entry/visit.ts'

/** Two people may see a wall differently; within this many days the wall itself has hardly changed. */
export const SAME_STATE_DAYS = 60
/** A silence longer than this is pointed out. */
export const GAP_YEARS = 3

const DAY_MS = 86_400_000
const daysBetween = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / DAY_MS

export interface Disagreement {
  readonly first: VisitBody
  readonly second: VisitBody
  readonly about: readonly ('joint' | 'unit')[]
}

/**
 * Pairs of successive visits so close together that a difference in joint or unit is one of judgement.
 * Damp is left out: rain changes it within days. A baseline after a visit is a repair, not a second look.
 *
 * @param visits of one work, by date
 */
export function disagreements(visits: readonly VisitBody[]): Disagreement[] {
  return visits.slice(1).flatMap((second, index) => {
    const first = visits[index]
    if (!first || second.baseline || daysBetween(first.on, second.on) > SAME_STATE_DAYS) return []
    const about = (['joint', 'unit'] as const).filter((key) => first[key] !== second[key])
    return about.length === 0 ? [] : [{ first, second, about }]
  })
}

/** The same day some years on, as text that sorts by date; 29 February stays as it is. */
const yearsLater = (day: string, years: number) => `${Number(day.slice(0, 4)) + years}${day.slice(4)}`

const wholeYears = (from: string, to: string) =>
  Number(to.slice(0, 4)) - Number(from.slice(0, 4)) - (to.slice(4) < from.slice(4) ? 1 : 0)

/** Stretches of years in which nobody looked, between one visit and the next. */
export function gaps(visits: readonly VisitBody[]): { from: string; to: string; years: number }[] {
  return visits.slice(1).flatMap((visit, index) => {
    const from = visits[index]?.on
    if (from === undefined) return []
    return yearsLater(from, GAP_YEARS) < visit.on
      ? [{ from, to: visit.on, years: wholeYears(from, visit.on) }]
      : []
  })
}
