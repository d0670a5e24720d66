import type { CaseFilter } from '#lib/db/case-filter.ts'
import { type CaseSummary, caseBySlug } from '#lib/db/cases.ts'
import { noSuchPage, pageSize } from '#lib/db/page.ts'
import { documentOf, foundCases } from '#lib/db/search/read.ts'
import type { Column, Columns } from './columns.ts'
import { narrow } from './count.ts'
import { current, now } from './find.ts'
import {
  climateNearness,
  frostNearness,
  type LikePart,
  latitudeNearness,
  pointsOf,
  rainNearness,
  saltsNearness,
  unitsNearness,
  usesNearness,
  type WallAsked,
  WEIGHTS,
  wallNearness,
} from './likeness.ts'
import { pause } from './pause.ts'
import { Best, batchesOf, byYears, joined, readPlace, writePlace } from './rank.ts'

/** How like the wall a case is: points of all answered parts, and each part's. The parts add up to the whole. */
export interface Likeness {
  readonly points: number
  readonly of: number
  readonly parts: readonly {
    readonly part: LikePart
    readonly points: number
    readonly of: number
    /** The case's own values, ids of vocabularies or a country. */
    readonly values: readonly string[]
  }[]
}

export type LikeCase = CaseSummary & { readonly likeness: Likeness }

export interface LikeFound {
  readonly results: readonly LikeCase[]
  /** Cases that have any point at all. */
  readonly total: number
  readonly next: string | null
}

export interface LikeOptions {
  readonly filter?: CaseFilter | undefined
  /** Slug of a case to leave out: the one that the wall was taken from. */
  readonly except?: string | undefined
  readonly after?: string | undefined
  readonly limit?: number | undefined
}

/** Cases by their likeness to a wall, the likest first, among equals the longest watched. */
export async function likeCases(
  wall: WallAsked,
  { filter, except, after, limit = 20 }: LikeOptions = {},
): Promise<LikeFound> {
  const size = pageSize(limit)
  const from = after === undefined ? undefined : readPlace(after, 2)
  if (after !== undefined && from === undefined) throw noSuchPage(after)
  return current(async ({ columns }) => {
    const { ids, points, scorers } = await scored(columns, wall, filter ?? {}, except)
    const best = new Best(size + 1, from)
    let total = 0
    for (let i = 0; i < ids.length; i += 1) {
      if (points[i] === 0) continue
      total += 1
      const id = ids[i] as number
      best.offer(points[i] as number, columns.years[id] as number, id)
    }
    const { change, rows } = await foundCases(best.places.map(({ id }) => id))
    const page = rows.slice(0, size)
    const last = best.places.find(({ id }) => id === page.at(-1)?.document)
    return {
      change,
      value: {
        results: page.map(({ document, ...row }) => ({ ...row, likeness: likenessAt(scorers, document) })),
        total,
        next: best.places.length > size && last ? writePlace(last) : null,
      },
    }
  })
}

/** All cases that are like a wall in anything, in the order of {@link likeCases}: every case is scored once. */
export async function* everyLike(
  wall: WallAsked,
  { filter, except }: Pick<LikeOptions, 'filter' | 'except'> = {},
): AsyncGenerator<LikeCase[]> {
  const { scorers, ids } = await now(async ({ columns }) => {
    const found = await scored(columns, wall, filter ?? {}, except)
    // As many lists as there are sums of points: each is then put in order by itself.
    const ranks = Array.from({ length: 256 }, (): number[] => [])
    for (let i = 0; i < found.ids.length; i += 1)
      if (found.points[i] !== 0) ranks[found.points[i] as number]?.push(found.ids[i] as number)
    const inOrder: Int32Array[] = []
    for (const rank of ranks.reverse()) {
      inOrder.push(byYears(rank, (id) => columns.years[id] ?? -1))
      await pause(rank.length)
    }
    return { scorers: found.scorers, ids: joined(inOrder) }
  })
  for (const some of batchesOf(ids)) {
    const { rows } = await foundCases(some)
    yield rows.map(({ document, ...row }) => ({ ...row, likeness: likenessAt(scorers, document) }))
  }
}

/** The wall of a published case, as its likeness is asked for; null when there is none. */
export async function wallOfCase(slug: string): Promise<WallAsked | null> {
  const found = await caseBySlug(slug)
  if (found === null) return null
  const { fabric, works, exposure, place } = found.body
  const [use, ...more] = [...new Set(works.map((work) => work.use))]
  const known = (value: string) => value !== 'not-recorded'
  const rain = known(exposure.drivingRain) ? { rain: exposure.drivingRain } : {}
  const frost = known(exposure.frost) ? { frost: exposure.frost } : {}
  const at =
    place.latitude === undefined || place.longitude === undefined
      ? {}
      : { latitude: place.latitude, longitude: place.longitude }
  return {
    unit: fabric.units.map(({ unit }) => unit),
    wall: fabric.wall,
    ...(use !== undefined && { use }),
    ...(use !== undefined && more.length > 0 && { uses: [use, ...more] }),
    ...((rain.rain ?? frost.frost) && { exposure: { ...rain, ...frost } }),
    place: { country: place.country, ...at },
    salts: exposure.salts,
  }
}

/** The cases that fit a filter with the points of each; the one left out has none. */
async function scored(columns: Columns, wall: WallAsked, filter: CaseFilter, except: string | undefined) {
  const { ids } = await narrow(columns, columns.caseIds(), filter)
  const scorers = scorersOf(columns, wall)
  const points = new Uint8Array(ids.length)
  for (const { addTo } of scorers) {
    addTo(points, ids)
    await pause(ids.length)
  }
  const left = except === undefined ? undefined : await documentOf('case', except)
  if (left !== undefined) {
    const at = ids.indexOf(left)
    if (at >= 0) points[at] = 0
  }
  return { ids, points, scorers }
}

interface Scorer {
  readonly part: LikePart
  readonly of: number
  pointsAt(id: number): number
  /** Adds each id's points to what stands in its place. */
  addTo(points: Uint8Array, ids: Int32Array): void
  valuesAt(id: number): readonly string[]
}

/** One scorer for each answer: sets of values are scored once each, not once a case. */
function scorersOf(columns: Columns, wall: WallAsked): Scorer[] {
  const { unit, wall: build, use, uses, salts } = wall
  const { facets } = columns
  const asked = uses ?? (use === undefined ? [] : [use])
  return [
    ...(unit?.length ? [bySet('unit', facets.unit, (values) => unitsNearness(unit, values))] : []),
    ...(build === undefined
      ? []
      : [bySet('wall', facets.wall, ([value]) => wallNearness(build, value ?? ''))]),
    ...(asked.length === 0 ? [] : [bySet('use', facets.use, (values) => usesNearness(asked, values))]),
    ...exposureScorer(columns, wall),
    ...climateScorer(columns, wall),
    ...(salts === undefined ? [] : [bySet('salts', facets.salt, (values) => saltsNearness(salts, values))]),
  ]
}

function bySet(part: LikePart, column: Column, share: (values: readonly string[]) => number): Scorer {
  const points = Uint8Array.from(column.sets, (values) => pointsOf(part, share(values)))
  const { codes } = column
  return {
    part,
    of: WEIGHTS[part],
    pointsAt: (id) => points[codes[id] ?? 0] ?? 0,
    addTo(sums, ids) {
      for (let i = 0; i < ids.length; i += 1)
        sums[i] = (sums[i] as number) + (points[codes[ids[i] as number] as number] as number)
    },
    valuesAt: (id) => column.valuesAt(id),
  }
}

/** A scorer that looks at each case by itself. */
const byCase = (part: LikePart, pointsAt: Scorer['pointsAt'], valuesAt: Scorer['valuesAt']): Scorer => ({
  part,
  of: WEIGHTS[part],
  pointsAt,
  addTo(sums, ids) {
    for (let i = 0; i < ids.length; i += 1) sums[i] = (sums[i] as number) + pointsAt(ids[i] as number)
  },
  valuesAt,
})

/** Driving rain and frost, the mean of what was answered. */
function exposureScorer({ facets }: Columns, { exposure }: WallAsked): Scorer[] {
  const { rain, frost } = exposure ?? {}
  if (rain === undefined && frost === undefined) return []
  const parts = Number(rain !== undefined) + Number(frost !== undefined)
  const share = (asked: string | undefined, near: typeof rainNearness, [own]: readonly string[] = []) =>
    asked === undefined || own === undefined ? 0 : near(asked, own) / parts
  // The few pairs of sets are scored once each: a row for each set of rain.
  const wide = facets.frost.sets.length
  const points = Uint8Array.from({ length: facets.rain.sets.length * wide }, (_, pair) => {
    const [rains, frosts] = [facets.rain.sets[Math.floor(pair / wide)], facets.frost.sets[pair % wide]]
    return pointsOf('exposure', share(rain, rainNearness, rains) + share(frost, frostNearness, frosts))
  })
  const [rainCodes, frostCodes] = [facets.rain.codes, facets.frost.codes]
  const pointsAt = (id: number) =>
    points[(rainCodes[id] as number) * wide + (frostCodes[id] as number)] as number
  return [
    byCase('exposure', pointsAt, (id) => [
      ...(rain === undefined ? [] : facets.rain.valuesAt(id)),
      ...(frost === undefined ? [] : facets.frost.valuesAt(id)),
    ]),
  ]
}

function climateScorer({ facets, latitude }: Columns, { place }: WallAsked): Scorer[] {
  if (place === undefined || (place.country === undefined && place.latitude === undefined)) return []
  // Where only a country was told, all cases of one country are alike.
  if (place.latitude === undefined)
    return [
      bySet('climate', facets.country, ([country]) => climateNearness(place, country ? { country } : {})),
    ]
  const own = place.latitude
  const countries = facets.country
  const byCountry = Uint8Array.from(countries.sets, ([country]) =>
    pointsOf('climate', climateNearness(place, country ? { country } : {})),
  )
  const pointsAt = (id: number) => {
    const north = latitude[id] as number
    return Number.isNaN(north)
      ? (byCountry[countries.codes[id] as number] as number)
      : pointsOf('climate', latitudeNearness(own, north))
  }
  return [byCase('climate', pointsAt, (id) => countries.valuesAt(id))]
}

function likenessAt(scorers: readonly Scorer[], id: number): Likeness {
  const parts = scorers.map(({ part, of, pointsAt, valuesAt }) => ({
    part,
    points: pointsAt(id),
    of,
    values: valuesAt(id),
  }))
  return {
    points: parts.reduce((sum, { points }) => sum + points, 0),
    of: parts.reduce((sum, { of }) => sum + of, 0),
    parts,
  }
}
