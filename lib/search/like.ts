import type { CaseFilter } from '#lib/db/case-filter.ts'
import { type CaseSummary, caseBySlug } from '#lib/db/cases.ts'
import { noSuchPage, pageSize } from '#lib/db/page.ts'
import { documentOf, foundCases } from '#lib/db/search/read.ts'
import type { Columns } from './columns.ts'
import { narrow } from './count.ts'
import { current, now } from './current.ts'
import type { LikePart, WallAsked } from './likeness.ts'
import { pause } from './pause.ts'
import { Best, batchesOf, byYears, joined, readPlace, writePlace } from './rank.ts'
import { type Scorer, scorersOf } from './scorers.ts'

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
    const { total, least, most } = enough(points, size + 1, from?.keys[0])
    for (let i = 0; i < ids.length; i += 1) {
      const sum = points[i] as number
      if (sum < least || sum > most) continue
      const id = ids[i] as number
      best.offer(sum, columns.years[id] as number, id)
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

/** So many cases are scored in all parts before the next are looked at: what is read of them stays near the processor. */
const BLOCK = 32_768

/** The cases that fit a filter with the points of each; the one left out has none. */
async function scored(columns: Columns, wall: WallAsked, filter: CaseFilter, except: string | undefined) {
  const { ids } = await narrow(columns, columns.caseIds(), filter)
  const scorers = scorersOf(columns, wall)
  const points = new Uint8Array(ids.length)
  let worked = 0
  for (let from = 0; from < ids.length; from += BLOCK) {
    const [some, sums] = [ids.subarray(from, from + BLOCK), points.subarray(from, from + BLOCK)]
    for (const { addTo } of scorers) addTo(sums, some)
    worked += some.length * scorers.length
    if (await pause(worked)) worked = 0
  }
  const left = except === undefined ? undefined : await documentOf('case', except)
  if (left !== undefined) {
    const at = ids.indexOf(left)
    if (at >= 0) points[at] = 0
  }
  return { ids, points, scorers }
}

/**
 * How many have any point, and between which sums the first so many after a place stand: counting the sums first leaves
 * few of a million to be put in order.
 */
function enough(
  points: Uint8Array,
  wanted: number,
  after = 255,
): { total: number; least: number; most: number } {
  const cases = new Uint32Array(256)
  for (let i = 0; i < points.length; i += 1) {
    const sum = points[i] as number
    cases[sum] = (cases[sum] as number) + 1
  }
  const most = Math.min(255, Math.floor(after))
  let least = most
  // Of those at the place itself some come before it: they are offered, and not counted on.
  for (let below = 0; least > 1 && below < wanted; below += cases[least] as number) least -= 1
  return { total: points.length - (cases[0] as number), least: Math.max(1, least), most }
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
