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
  type Fates,
  fatesOf,
  type GroupRow,
  groupsOf,
  inBoth,
  reportsOf,
  type Scope,
  type Selected,
  type Size,
  selectWorks,
  sizeOf,
  type TraitCount,
  traitsOf,
} from '#lib/search/works.ts'
import { type EndPointFigures, endPointSteps, grainFor, MIDDLE_WORKS } from './evidence-figures.ts'
import { keptAnswer } from './evidence-kept.ts'
import { spreadsOf, type TraitSpread } from './evidence-traits.ts'
import { inTurns } from './evidence-turns.ts'

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
  /** Each pair of different walls that has two curves: how much more of the first stands after so many years. */
  readonly pairs: readonly {
    readonly first: string
    readonly second: string
    readonly differences: readonly (Difference & { readonly years: number })[]
  }[]
  /** Each pair that has works in common. */
  readonly overlaps: readonly Overlap[]
  /** Null where there is nothing to test, or groups share works: shuffling takes them as apart. */
  readonly test: IntervalTest | null
  readonly traits: readonly TraitSpread[]
}

/** What two groups have in common. */
export interface Overlap {
  readonly first: string
  readonly second: string
  readonly works: number
  readonly walls: number
  /** Which of the two has nothing else; `both` are the same works. */
  readonly whole: 'both' | 'first' | 'second' | null
}

/** Sets two or three groups side by side for one end point. */
export const compareGroups = (groups: readonly Group[], endPoint: EndPoint): Promise<Comparison> =>
  keptAnswer(['compare', groups.map(({ key, scope }) => [key, scope]), endPoint], async () => {
    const gathered = await selectWorks(
      groups.map(({ scope }) => scope),
      (selected) =>
        gather(
          selected,
          groups.map(({ key }) => key),
          endPoint,
        ),
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
  readonly overlaps: readonly Overlap[]
  /** Those that are drawn, told apart by their place. */
  readonly rows: Filed<GroupRow>
  readonly few: boolean
}

function gather(selected: readonly Selected[], keys: readonly string[], endPoint: EndPoint): Gathered {
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
    overlaps: overlapsOf(selected, keys),
    // Buildings are never dealt into buckets here: they are what the test counts.
    rows: groupsOf(tested, endPoint, { ...grainFor(most), buckets: null }),
    few: most <= MIDDLE_WORKS,
  }
}

const overlapsOf = (selected: readonly Selected[], keys: readonly string[]): Overlap[] =>
  selected.flatMap((one, k) =>
    selected.slice(k + 1).flatMap((other, further): Overlap[] => {
      const { works, walls } = sizeOf({ ...one, rows: inBoth(one, other) })
      if (works === 0) return []
      const [isFirst, isSecond] = [works === one.rows.length, works === other.rows.length]
      const whole = isFirst && isSecond ? 'both' : isFirst ? 'first' : isSecond ? 'second' : null
      return [{ first: keys[k] ?? '', second: keys[k + 1 + further] ?? '', works, walls, whole }]
    }),
  )

function* compareSteps(asked: readonly Group[], endPoint: EndPoint, gathered: Gathered): Steps<Comparison> {
  const { overlaps, rows, few } = gathered
  const keys = asked.map(({ key }) => key)
  const groups: Comparison['groups'][number][] = []
  for (const [k, { size, invented, fates }] of gathered.groups.entries()) {
    const figures = yield* endPointSteps(endPoint, fates, grainFor(size.works))
    groups.push({ key: keys[k] ?? '', size, invented, figures })
  }
  const test = overlaps.length > 0 ? null : few ? testFew(rows, keys) : testBuildings(rows, keys)
  yield
  return {
    groups,
    pairs: pairsOf(groups, overlaps),
    overlaps,
    test,
    traits: spreadsOf(
      asked,
      groups,
      gathered.groups.map((one) => one.traits),
    ),
  }
}

const testFew = (rows: Filed<GroupRow>, keys: readonly string[]): IntervalTest | null =>
  testIntervals(unfile(rows).map(({ group, ...row }) => ({ ...row, group: keys[group] ?? '' })))

function pairsOf(read: Comparison['groups'], overlaps: readonly Overlap[]): Comparison['pairs'] {
  const isSame = (first: string, second: string) =>
    overlaps.some((one) => one.first === first && one.second === second && one.whole === 'both')
  return read.flatMap(({ key: first, figures }, k) =>
    read.slice(k + 1).flatMap(({ key: second, figures: other }) => {
      if (figures.curve === null || other.curve === null || isSame(first, second)) return []
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
