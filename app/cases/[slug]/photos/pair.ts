import type { Spot, SpotPhoto } from '../../../_ui/photo-spots.ts'
import type { Query } from '../../../_ui/query.ts'

export interface Pair {
  readonly spot: Spot
  readonly before: SpotPhoto
  readonly after: SpotPhoto
}

const first = (value: Query[string]) => (typeof value === 'string' ? value : value?.[0])

/**
 * The two pictures that an address asks for: `spot` by its place in the list, `before` and `after` by digest. What is
 * not asked for is the first and the last of the spot; undefined when nothing was photographed twice.
 */
export function pairOf(spots: readonly Spot[], query: Query): Pair | undefined {
  const spot = spots[Number(first(query.spot) ?? 0)] ?? spots[0]
  if (spot === undefined) return undefined
  const chosen = (name: string, otherwise: SpotPhoto | undefined) =>
    spot.photos.find(({ sha256 }) => sha256 === first(query[name])) ?? otherwise
  const [before, after] = [chosen('before', spot.photos[0]), chosen('after', spot.photos.at(-1))]
  return before && after && { spot, before, after }
}
