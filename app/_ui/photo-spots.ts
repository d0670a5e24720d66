import type { VisitBody, VisitPhoto } from '#lib/entry/visit.ts'

/** A picture with the day of the visit that shows it. */
export interface SpotPhoto extends VisitPhoto {
  readonly on: string
}

/** Pictures of one place in the wall, from at least two days, the oldest first. */
export interface Spot {
  readonly name: string
  readonly photos: readonly SpotPhoto[]
}

const folded = (name: string) => name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim()

/** The places that were photographed on more than one day, under the name that each was given first. */
export function spotsOf(visits: readonly Pick<VisitBody, 'on' | 'photos'>[]): Spot[] {
  const spots = new Map<string, { name: string; photos: SpotPhoto[] }>()
  for (const { on, photos = [] } of [...visits].sort((a, b) => (a.on < b.on ? -1 : 1)))
    for (const photo of photos) {
      if (photo.spot === undefined) continue
      const spot = spots.get(folded(photo.spot)) ?? { name: photo.spot, photos: [] }
      spot.photos.push({ ...photo, on })
      spots.set(folded(photo.spot), spot)
    }
  return [...spots.values()].filter(({ photos }) => new Set(photos.map(({ on }) => on)).size > 1)
}
