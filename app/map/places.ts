import { groups, sum } from 'd3-array'
import { regionId } from '#lib/entry/facets.ts'
import type { RegionCount } from '#lib/search/index.ts'
import { type CasesAsked, casesAddress } from '../_ui/find/asked.ts'
import { labelOf } from '../_ui/label.ts'
import type { Cluster } from '../_ui/map/clusters.ts'

/** A country or region with its cases; without a place where none of them has one on record. */
export type CasePlace = Omit<Cluster, 'latitude' | 'longitude'> & { readonly position: Position | undefined }

interface Position {
  readonly latitude: number
  readonly longitude: number
}

/** Countries, most cases first; each leads to its own map. */
export const countriesOf = (regions: readonly RegionCount[], asked: CasesAsked): CasePlace[] =>
  byCount(
    groups(regions, ({ country }) => country).map(([country, own]) => ({
      id: country,
      label: labelOf('countries', country),
      count: sum(own, ({ count }) => count),
      position: middleOf(own),
      href: casesAddress('/map', { ...asked, filter: { ...asked.filter, country: [country] } }),
    })),
  )

/** Regions of one country, most cases first; each leads to the list of its cases. */
export const regionsOf = (regions: readonly RegionCount[], asked: CasesAsked): CasePlace[] =>
  byCount(
    regions.map((one) => ({
      id: regionId(one.country, one.region),
      label: one.region,
      count: one.count,
      position: middleOf([one]),
      href: casesAddress('/cases', {
        ...asked,
        filter: { ...asked.filter, region: [regionId(one.country, one.region)] },
      }),
    })),
  )

/** What can be drawn of them. */
export const clustersOf = (places: readonly CasePlace[]): Cluster[] =>
  places.flatMap(({ position, ...place }) => (position ? [{ ...place, ...position }] : []))

/** The middle of regions that have a place, each as often as it has cases. */
function middleOf(regions: readonly RegionCount[]): Position | undefined {
  const placed = regions.flatMap(({ count, latitude, longitude }) =>
    latitude === null || longitude === null ? [] : [{ count, latitude, longitude }],
  )
  const all = sum(placed, ({ count }) => count)
  if (all === 0) return undefined
  return {
    latitude: sum(placed, ({ count, latitude }) => count * latitude) / all,
    longitude: sum(placed, ({ count, longitude }) => count * longitude) / all,
  }
}

const byCount = (places: CasePlace[]): CasePlace[] =>
  places.sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
