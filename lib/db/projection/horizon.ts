import { DAYS_PER_YEAR, type Ending } from '#lib/evidence/index.ts'

/** After how many years states are compared, and how far from the day a visit may lie to tell the state then. */
export const HORIZONS = [
  { years: 0, within: 0 },
  { years: 1, within: 0.5 },
  { years: 2, within: 0.5 },
  { years: 5, within: 1 },
  { years: 10, within: 2 },
  { years: 20, within: 3 },
] as const
export type Horizon = (typeof HORIZONS)[number]['years']

export type EndHow = Exclude<Ending, 'last-seen'>

interface Dated {
  /** Days since the baseline. */
  readonly day: number
}

/**
 * The state of a work so many years after its baseline: what had ended it by then, else the visit nearest to that
 * day, within the horizon's limits; of two as near the later. Null where nobody looked.
 *
 * @param visits the baseline on day 0 and all after it
 */
export function stateAt<V extends Dated>(
  { years, within }: (typeof HORIZONS)[number],
  visits: readonly V[],
  ended: { readonly last: number; readonly how: EndHow } | undefined,
): V | { readonly ended: EndHow } | null {
  const day = years * DAYS_PER_YEAR
  if (ended !== undefined && ended.last <= day && years > 0) return { ended: ended.how }
  let nearest: V | null = null
  for (const visit of visits) {
    const off = Math.abs(visit.day - day)
    if (off <= within * DAYS_PER_YEAR && (nearest === null || off <= Math.abs(nearest.day - day)))
      nearest = visit
  }
  return nearest
}
