import {
  DAYS_PER_YEAR,
  type Difference,
  differenceOf,
  type EndPoint,
  type Filed,
  type IntervalTest,
  lacking,
  type Steps,
  testBuildings,
  testIntervals,
  unfile,
} from '#lib/evidence/index.ts'
import {
  countShared,
  type Fates,
  fatesOf,
  type GroupRow,
  groupsOf,
  reportsOf,
  type Scope,
  type Selected,
  type Size,
  selectWorks,
  sizeOf,
  TRAITS,
  type Trait,
  type TraitCount,
  traitsOf,
} from '#lib/search/works.ts'
import { type EndPointFigures, endPointSteps, grainFor, MIDDLE_WORKS } from './evidence-figures.ts'
import { keptAnswer } from './evidence-kept.ts'
import { inTurns } from './evidence-turns.ts'

/** So great a part of one group would have to be of another kind to match the other: the groups differ much. */
export const DIFFERS_MUCH = 0.25

/** Some walls that are set beside others. */
export interface Group {
  readonly key: string
  readonly scope: Scope
}

export interface Comparison {
  readonly groups: readonly {
    readonly key: string
    readonly size: Size
    /** Works that are demonstration. */
    readonly invented: number
    readonly figures: EndPointFigures
  }[]
  /** Each pair that has two curves: how much more of the first stands after so many years. */
  readonly pairs: readonly {
    readonly first: string
    readonly second: string
    readonly differences: readonly (Difference & { readonly years: number })[]
  }[]
  /** Works counted in more than one group, once for each pair of groups. */
  readonly shared: number
  /** Null where there is nothing to test, or groups share works: shuffling takes them as apart. */
  readonly test: IntervalTest | null
  readonly traits: readonly TraitSpread[]
}

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

/** Sets two or three groups side by side for one end point. */
export const compareGroups = (groups: readonly Group[], endPoint: EndPoint): Promise<Comparison> =>
  keptAnswer(['compare', groups.map(({ key, scope }) => [key, scope]), endPoint], async () => {
    const gathered = await selectWorks(
      groups.map(({ scope }) => scope),
      (selected) => gather(selected, endPoint),
    )
    return inTurns(compareSteps(groups, endPoint, gathered))
  })

/** What was counted of the groups, to be estimated from. */
interface Gathered {
  readonly groups: readonly {
    readonly size: Size
    readonly invented: number
    readonly fates: Fates
    readonly traits: readonly TraitCount[]
    /** Whether it is great enough for a curve, and so for the test. */
    readonly drawn: boolean
  }[]
  readonly shared: number
  /** Those that are drawn, told apart by their place. */
  readonly rows: Filed<GroupRow>
  readonly few: boolean
}

function gather(selected: readonly Selected[], endPoint: EndPoint): Gathered {
  const groups = selected.map((one) => {
    const size = sizeOf(one)
    const fates = fatesOf(one, endPoint, grainFor(size.works))
    const drawn = lacking(fates.watching) === null && fates.fates.rows.length > 0
    return { size, invented: reportsOf(one).invented, fates, traits: traitsOf(one), drawn }
  })
  const most = Math.max(...groups.map(({ size }) => size.works))
  const none = new Int32Array(0)
  const tested = selected.map((one, k) => (groups[k]?.drawn ? one : { ...one, rows: none }))
  return {
    groups,
    shared: sum(selected.flatMap((one, k) => selected.slice(k + 1).map((other) => countShared(one, other)))),
    // Buildings are never dealt into buckets here: they are what the test counts.
    rows: groupsOf(tested, endPoint, { ...grainFor(most), buckets: null }),
    few: most <= MIDDLE_WORKS,
  }
}

function* compareSteps(asked: readonly Group[], endPoint: EndPoint, gathered: Gathered): Steps<Comparison> {
  const { shared, rows, few } = gathered
  const keys = asked.map(({ key }) => key)
  const groups: Comparison['groups'][number][] = []
  for (const [k, { size, invented, fates }] of gathered.groups.entries()) {
    const figures = yield* endPointSteps(endPoint, fates, grainFor(size.works))
    groups.push({ key: keys[k] ?? '', size, invented, figures })
  }
  const test = shared > 0 ? null : few ? testFew(rows, keys) : testBuildings(rows, keys)
  yield
  const traits = gathered.groups.map((one) => one.traits)
  return {
    groups,
    pairs: pairsOf(groups),
    shared,
    test,
    traits: TRAITS.map(({ trait, many }) => ({
      ...spread(trait, many, groups, traits),
      chosenBy: isChosenBy(trait, asked),
    })).sort((a, b) => b.distance - a.distance),
  }
}

const testFew = (rows: Filed<GroupRow>, keys: readonly string[]): IntervalTest | null =>
  testIntervals(unfile(rows).map(({ group, ...row }) => ({ ...row, group: keys[group] ?? '' })))

function pairsOf(read: Comparison['groups']): Comparison['pairs'] {
  return read.flatMap(({ key: first, figures }, k) =>
    read.slice(k + 1).flatMap(({ key: second, figures: other }) => {
      if (figures.curve === null || other.curve === null) return []
      const years = figures.horizons.map((horizon) => horizon.years)
      const differences = differenceOf(
        { ...figures.curve, points: figures.horizons },
        { ...other.curve, points: other.horizons },
      ).flatMap((one) => {
        const at = years.find((y) => y * DAYS_PER_YEAR === one.day)
        return at === undefined ? [] : [{ ...one, years: at }]
      })
      return differences.length === 0 ? [] : [{ first, second, differences }]
    }),
  )
}

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
