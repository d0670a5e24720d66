import { type Asked, casesFound } from './sought.ts'

/** The cases of one region: how many, and the middle of those whose position is recorded. */
export interface RegionCount {
  readonly country: string
  readonly region: string
  readonly count: number
  readonly latitude: number | null
  readonly longitude: number | null
}

/** Found cases by region, most first: what a map shows. */
export const regionCounts = (asked: Pick<Asked, 'text' | 'filter'>): Promise<RegionCount[]> =>
  casesFound(asked, (ids, columns) => {
    const { codes, sets } = columns.facets.region
    const { latitude, longitude } = columns
    // A number of each region to a place, not an object: there may be a million cases.
    const counts = new Uint32Array(sets.length)
    const placed = new Uint32Array(sets.length)
    const [norths, easts] = [new Float64Array(sets.length), new Float64Array(sets.length)]
    for (let i = 0; i < ids.length; i += 1) {
      const id = ids[i] as number
      const code = codes[id] as number
      counts[code] = (counts[code] as number) + 1
      const [north, east] = [latitude[id] as number, longitude[id] as number]
      if (Number.isNaN(north + east)) continue
      placed[code] = (placed[code] as number) + 1
      norths[code] = (norths[code] as number) + north
      easts[code] = (easts[code] as number) + east
    }
    return Array.from(counts, (count, code) => ({ count, code }))
      .flatMap(({ count, code }) => {
        const [id] = sets[code] ?? []
        if (count === 0 || id === undefined) return []
        const middle = (totals: Float64Array) =>
          placed[code] === 0
            ? null
            : Math.round(((totals[code] as number) / (placed[code] as number)) * 100) / 100
        return [
          {
            country: id.slice(0, 2),
            region: id.slice(3),
            count,
            latitude: middle(norths),
            longitude: middle(easts),
          },
        ]
      })
      .sort((a, b) => b.count - a.count || (a.country + a.region < b.country + b.region ? -1 : 1))
  })
