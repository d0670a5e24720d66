import { TRAITS, type Trait, type TraitCount } from '#lib/search/works.ts'
import type { Comparison, Group } from './evidence-compare.ts'

/** So great a part of one group would have to be of another kind to match the other: the groups differ much. */
export const DIFFERS_MUCH = 0.25

/** How the groups are spread over one trait. */
export interface TraitSpread {
  readonly trait: Trait
  /** Share of each group's works, by group, for each value that any has; the most common first. */
  readonly values: readonly { readonly value: string; readonly shares: Readonly<Record<string, number>> }[]
  /** The greatest difference between two groups, 0 to 1: see {@link distanceBetween}. */
  readonly distance: number
  readonly differsMuch: boolean
  /** The groups were told apart by this very trait, so it says nothing that was not asked for. */
  readonly chosenBy: boolean
}

/** How the groups are spread over every trait, the greatest difference first. */
export const spreadsOf = (
  asked: readonly Group[],
  groups: Comparison['groups'],
  counts: readonly (readonly TraitCount[])[],
): TraitSpread[] =>
  TRAITS.map(({ trait, many }) => ({
    ...spread(trait, many, groups, counts),
    chosenBy: isChosenBy(trait, asked),
  })).sort((a, b) => b.distance - a.distance)

function spread(
  trait: Trait,
  many: boolean,
  read: Comparison['groups'],
  counts: readonly (readonly TraitCount[])[],
): Omit<TraitSpread, 'chosenBy'> {
  const shareOf = (k: number, value: string) => {
    const works = read[k]?.size.works ?? 0
    const own = counts[k]?.find((one) => one.trait === trait && one.value === value)?.works ?? 0
    return works === 0 ? 0 : own / works
  }
  const found = [...new Set(counts.flat().flatMap((one) => (one.trait === trait ? one.value : [])))]
  // A group too small for a curve is told apart by nothing: any few walls differ from any others.
  const drawn = read.filter(({ figures }) => figures.curve !== null)
  const values = found
    .map((value) => ({
      value,
      shares: Object.fromEntries(read.map(({ key }, k) => [key, shareOf(k, value)])),
    }))
    .sort(
      (a, b) => sum(Object.values(b.shares)) - sum(Object.values(a.shares)) || (a.value < b.value ? -1 : 1),
    )
  const full = drawn.length > 1 ? drawn : read.filter(({ size }) => size.works > 0)
  const distances = full.flatMap(({ key }, k) =>
    full.slice(k + 1).map((other) => distanceBetween(values, key, other.key, many)),
  )
  const distance = Math.max(0, ...distances)
  return { trait, values, distance, differsMuch: distance >= DIFFERS_MUCH }
}

/** Whether the groups' filters choose differently among the kinds of a trait. */
function isChosenBy(trait: Trait, groups: readonly Group[]): boolean {
  if (trait === 'reporter' || trait === 'mixed') return false
  const chosen = groups.map(({ scope }) => [...(scope.filter[trait] ?? [])].sort().join())
  return new Set(chosen).size > 1
}

/**
 * The part of one group that would have to be of another kind to be spread like the other: half the sum of the
 * differences between shares. Where a wall can be of several kinds, the greatest difference between two shares.
 */
export function distanceBetween(
  values: TraitSpread['values'],
  first: string,
  second: string,
  many: boolean,
): number {
  const apart = values.map(({ shares }) => Math.abs((shares[first] ?? 0) - (shares[second] ?? 0)))
  return many ? Math.max(0, ...apart) : sum(apart) / 2
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0)
