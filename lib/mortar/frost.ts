import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'

export interface FrostInput {
  /** Lowest air temperature of each day from the day of the work on, °C; null where it is not known. */
  readonly dailyLowsC: readonly (number | null)[]
  /** Days that the work must be kept from frost. */
  readonly protectDays: Range
  /** Below this the work should not be done or left bare, °C; see {@link COLD_LIMITS}. */
  readonly coldLimitC: number
  /** How much colder the wall may get than the air it was measured in, K; clear nights, high ground. */
  readonly marginK: number
}

/** Limits that a page can offer for {@link FrostInput.coldLimitC}. */
export const COLD_LIMITS = [
  {
    id: 'nps-brief-2',
    celsius: (40 - 32) / 1.8,
    basis: 'read',
    source: 'nps-brief-2, § Budgeting and scheduling',
  },
  { id: 'common', celsius: 5, basis: 'memory' },
] as const

/** `frost`: at or below 0 °C. `near-frost`: above it by less than the margin. `cold`: under the limit. */
export type NightRisk = 'frost' | 'near-frost' | 'cold' | 'none' | 'unknown'

export interface FrostWindow {
  readonly nights: readonly { readonly day: number; readonly lowC: number | null; readonly risk: NightRisk }[]
  /** Within the longest protection, how many nights of each kind. */
  readonly counts: Readonly<Record<NightRisk, number>>
  /** Day of the first night with frost or near frost, counted from 0; null if none is known. */
  readonly firstFrostDay: number | null
  /** Days of protection that the lows do not cover, against the longest protection. */
  readonly daysNotCovered: number
  /** The protection that the first frost falls into: none of it, only the longest, or even the shortest. */
  readonly frostWithin: 'no-protection' | 'longest' | 'typical' | 'shortest' | 'not-known'
}

/**
 * Frost risk of new work from a run of daily lows. It counts nights and gives no safe date: a forecast ends
 * where the protection does not.
 *
 * @returns faults: no lows, temperatures no place on earth has, a protection under a day
 */
export function assessFrost(input: FrostInput): Outcome<FrostWindow> {
  return attempt(() => {
    refuseBadWeather(input)
    const nights = input.dailyLowsC.map((lowC, day) => ({ day, lowC, risk: riskOf(lowC, input) }))
    const longest = Math.ceil(input.protectDays.high)
    const counts: Record<NightRisk, number> = { frost: 0, 'near-frost': 0, cold: 0, none: 0, unknown: 0 }
    for (const night of nights.slice(0, longest)) counts[night.risk] += 1
    const first = nights.find((night) => night.risk === 'frost' || night.risk === 'near-frost')
    const daysNotCovered = Math.max(0, longest - nights.length)
    return {
      nights,
      counts,
      firstFrostDay: first?.day ?? null,
      daysNotCovered,
      frostWithin: within(first?.day, input.protectDays, daysNotCovered > 0 || counts.unknown > 0),
    }
  })
}

function refuseBadWeather(input: FrostInput): void {
  const check = inspect()
  if (input.dailyLowsC.every((low) => low === null)) check.refuse({ field: 'dailyLowsC', code: 'empty' })
  input.dailyLowsC.forEach((low, i) => {
    if (low !== null) check.number(`dailyLowsC.${i}`, low, { min: -90, max: 60, unit: 'C' })
  })
  check.range('protectDays', input.protectDays, { min: 1, max: 3650, unit: 'd' })
  check.number('coldLimitC', input.coldLimitC, { min: -10, max: 20, unit: 'C' })
  check.number('marginK', input.marginK, { min: 0, max: 10, unit: 'K' })
  check.finish()
}

function riskOf(lowC: number | null, input: FrostInput): NightRisk {
  if (lowC === null) return 'unknown'
  if (lowC <= 0) return 'frost'
  if (lowC <= input.marginK) return 'near-frost'
  return lowC < input.coldLimitC ? 'cold' : 'none'
}

function within(day: number | undefined, protect: Range, gaps: boolean): FrostWindow['frostWithin'] {
  if (day !== undefined && day < protect.low) return 'shortest'
  if (day !== undefined && day < protect.typical) return 'typical'
  if (day !== undefined && day < protect.high) return 'longest'
  return gaps ? 'not-known' : 'no-protection'
}
