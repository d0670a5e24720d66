import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { WallAsked } from '#lib/search/index.ts'
import { wholeStep } from './find-load.ts'
import { type GeneratedCase, generateCases } from './generate-cases.ts'

export const SORTS_OF_QUERY = ['look-up', 'text', 'text + 3 facets', 'facets', 'likeness', 'map'] as const
export type QuerySort = (typeof SORTS_OF_QUERY)[number]

export interface Query {
  readonly sort: QuerySort
  /** Slug of the one case that is looked up. */
  readonly slug?: string
  readonly text?: string
  readonly filter?: CaseFilter
  readonly wall?: WallAsked
}

/** How many of each sort there are among two hundred; look-ups come on top. */
const SHARES: Readonly<Record<QuerySort, number>> = {
  'look-up': 50,
  text: 50,
  'text + 3 facets': 50,
  facets: 50,
  likeness: 30,
  map: 20,
}

/** Words that people look for, some in half of the cases and some in a handful. */
const WORDS = (
  'lime mortar putty granite limestone sandstone pointing repointed salt frost brick plinth gable clay hair trass ' +
  'galleting charcoal efflorescence scaffold kiln quicklime cob schist parapet buttress capillary ivy sacking ' +
  'grouted rampart settlement apprentice slate spalling'
).split(' ')

/** The same questions for the same seed: words by twos and threes, and facets of cases that exist among so many. */
export function makeQueries(count: number, cases: number, seed = 7): Query[] {
  const random = xoroshiro128plus(seed)
  const below = (end: number) => uniformInt(random, 0, end - 1)
  const known = [...generateCases(500, 3)]
  const one = () => known[below(known.length)] as GeneratedCase
  const words = () => Array.from({ length: 1 + below(3) }, () => WORDS[below(WORDS.length)]).join(' ')
  const facets = (many: number): CaseFilter => {
    const { row } = one()
    const choices: CaseFilter[] = [
      { unit: [row.units[0] ?? 'stone'] },
      { wall: [row.wall] },
      { use: row.uses.slice(0, 1) },
      { country: [row.country] },
      { family: row.families },
      { rain: [row.drivingRain] },
      { frost: [row.frost] },
      { unit: ['stone'] },
      { minYears: 1 + below(9) },
      { method: row.methods },
    ]
    const from = below(choices.length)
    return Object.assign(
      {},
      ...Array.from({ length: many }, (_, i) => choices[(from + i * 3) % choices.length]),
    )
  }
  const wall = (): WallAsked => {
    const { row } = one()
    return {
      unit: row.units.slice(0, 1),
      wall: row.wall as NonNullable<WallAsked['wall']>,
      use: row.uses[0] as NonNullable<WallAsked['use']>,
      exposure: { rain: row.drivingRain, frost: row.frost },
      place: { country: row.country },
      salts: row.salts,
    }
  }
  const step = wholeStep(cases)
  const make: Record<QuerySort, () => Query> = {
    'look-up': () => ({ sort: 'look-up', slug: `case-${step * (1 + below(Math.floor(cases / step)))}` }),
    text: () => ({ sort: 'text', text: words() }),
    'text + 3 facets': () => ({ sort: 'text + 3 facets', text: words(), filter: facets(3) }),
    facets: () => ({ sort: 'facets', filter: facets(1 + below(3)) }),
    likeness: () => ({ sort: 'likeness', wall: wall() }),
    map: () => ({ sort: 'map', filter: facets(1 + below(2)) }),
  }
  const sorts = SORTS_OF_QUERY.flatMap((sort) => {
    const share = Math.ceil((SHARES[sort] * count) / 200)
    return Array.from({ length: share }, (_, i) => ({ sort, at: (i + 0.5) / share }))
  })
  // Mixed, as they come in life.
  return sorts.sort((a, b) => a.at - b.at).map(({ sort }) => make[sort]())
}
