import { termLine } from '#lib/content/term-tree.ts'
import { DRIVING_RAIN, FROST, type Use, type WallType } from '#lib/entry/terms.ts'

/**
 * How like two walls are, part by part. Each part is a share from 0 to 1 of its weight, alike in both directions;
 * weights and scales are our own judgement (practice), stated here and on the page.
 */
export const WEIGHTS = { unit: 30, wall: 15, use: 20, exposure: 15, climate: 10, salts: 10 } as const
export type LikePart = keyof typeof WEIGHTS

/** A wall as it is described; every answer may be left out. `salts: []` says that none were seen. */
export interface WallAsked {
  readonly unit?: readonly string[]
  readonly wall?: WallType
  readonly use?: Use
  /** Further works than one, where a case is the wall. */
  readonly uses?: readonly Use[]
  readonly exposure?: { readonly rain?: string; readonly frost?: string }
  readonly place?: { readonly country?: string; readonly latitude?: number; readonly longitude?: number }
  readonly salts?: readonly string[]
}

/**
 * How near two kinds of unit stand in the vocabulary: twice the depth of what both are kinds of, over the sum of
 * their own depths (Wu and Palmer 1994, “Verb semantics and lexical selection”, section 4). 1 for the same, 0 for
 * nothing in common.
 */
export function unitNearness(a: string, b: string): number {
  const [lineA, lineB] = [termLine('units', a), termLine('units', b)]
  const shared = lineA.find((term) => lineB.includes(term))
  if (shared === undefined) return 0
  return (2 * termLine('units', shared).length) / (lineA.length + lineB.length)
}

/** Two walls' units: each unit's nearest in the other wall, in the mean, both ways. */
export function unitsNearness(a: readonly string[], b: readonly string[]): number {
  if (a.length === 0 || b.length === 0) return 0
  const oneWay = (from: readonly string[], to: readonly string[]) =>
    from.reduce((sum, one) => sum + Math.max(...to.map((other) => unitNearness(one, other))), 0) / from.length
  return (oneWay(a, b) + oneWay(b, a)) / 2
}

const WALL_GROUPS: readonly (readonly WallType[])[] = [
  ['rubble-random', 'rubble-coursed', 'squared-rubble', 'dry-stone-pointed'],
  ['ashlar', 'rubble-core-ashlar-face'],
  ['brick-solid', 'brick-faced-rubble'],
  ['earth-solid', 'earth-block', 'framed-infill'],
]

/** The same way of building is 1, one of the same group a half. */
export function wallNearness(a: string, b: string): number {
  if (a === b) return 1
  return WALL_GROUPS.some((group) => [a, b].every((one) => group.some((wall) => wall === one))) ? 0.5 : 0
}

/** The share of the shorter list that is in the other too. */
export function usesNearness(a: readonly string[], b: readonly string[]): number {
  const least = Math.min(a.length, b.length)
  return least === 0 ? 0 : a.filter((one) => b.includes(one)).length / least
}

/** The share of all salts of both that both have; two walls without salts are alike. */
export function saltsNearness(a: readonly string[], b: readonly string[]): number {
  const all = new Set([...a, ...b])
  return all.size === 0 ? 1 : a.filter((one) => b.includes(one)).length / all.size
}

/** Steps of a scale apart, of the most there are; nothing is known of what was not recorded. */
export function scaleNearness(scale: readonly string[], a: string, b: string): number {
  const steps = scale.filter((step) => step !== 'not-recorded')
  const [one, other] = [steps.indexOf(a), steps.indexOf(b)]
  return one < 0 || other < 0 ? 0 : 1 - Math.abs(one - other) / (steps.length - 1)
}

export const rainNearness = (a: string, b: string): number => scaleNearness(DRIVING_RAIN, a, b)
export const frostNearness = (a: string, b: string): number => scaleNearness(FROST, a, b)

/** Degrees of distance from the equator apart at which climates are taken to have nothing in common. */
const FAR_DEGREES = 15

/** How near two latitudes are to being equally far from the equator. */
export const latitudeNearness = (a: number, b: number): number =>
  Math.max(0, 1 - Math.abs(Math.abs(a) - Math.abs(b)) / FAR_DEGREES)

/**
 * Climate as far as a place tells it: where both positions are known, how near they are to being equally far from
 * the equator; else whether it is one country.
 */
export function climateNearness(
  a: NonNullable<WallAsked['place']>,
  b: NonNullable<WallAsked['place']>,
): number {
  if (a.latitude !== undefined && b.latitude !== undefined) return latitudeNearness(a.latitude, b.latitude)
  return a.country !== undefined && a.country === b.country ? 1 : 0
}

/** Points of a part: whole, so that what is printed adds up. */
export const pointsOf = (part: LikePart, share: number): number => Math.round(WEIGHTS[part] * share)
