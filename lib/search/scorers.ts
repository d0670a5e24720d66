import type { Column, Columns } from './columns.ts'
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

/** Scores one part of a wall's likeness. */
export interface Scorer {
  readonly part: LikePart
  readonly of: number
  pointsAt(id: number): number
  /** Adds each id's points to what stands in its place. */
  addTo(points: Uint8Array, ids: Int32Array): void
  valuesAt(id: number): readonly string[]
}

/** One scorer for each answer: sets of values are scored once each, not once a case. */
export function scorersOf(columns: Columns, wall: WallAsked): Scorer[] {
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
    addTo: (sums, ids) => addByCode(sums, ids, codes, points),
    valuesAt: (id) => column.valuesAt(id),
  }
}

// Plain loops over plain arrays: what is called for each of a million cases costs more than what it looks up.
function addByCode(sums: Uint8Array, ids: Int32Array, codes: Column['codes'], points: Uint8Array): void {
  for (let i = 0; i < ids.length; i += 1)
    sums[i] = (sums[i] as number) + (points[codes[ids[i] as number] as number] as number)
}

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
  return [
    {
      part: 'exposure',
      of: WEIGHTS.exposure,
      pointsAt: (id) => points[(rainCodes[id] as number) * wide + (frostCodes[id] as number)] as number,
      addTo(sums, ids) {
        for (let i = 0; i < ids.length; i += 1) {
          const id = ids[i] as number
          const pair = (rainCodes[id] as number) * wide + (frostCodes[id] as number)
          sums[i] = (sums[i] as number) + (points[pair] as number)
        }
      },
      valuesAt: (id) => [
        ...(rain === undefined ? [] : facets.rain.valuesAt(id)),
        ...(frost === undefined ? [] : facets.frost.valuesAt(id)),
      ],
    },
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
  return [
    {
      part: 'climate',
      of: WEIGHTS.climate,
      pointsAt,
      addTo(sums, ids) {
        for (let i = 0; i < ids.length; i += 1) sums[i] = (sums[i] as number) + pointsAt(ids[i] as number)
      },
      valuesAt: (id) => countries.valuesAt(id),
    },
  ]
}
