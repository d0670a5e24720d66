import { greatest, least } from 'd3-array'
import {
  type GeoProjection,
  geoArea,
  geoAzimuthalEqualArea,
  geoCentroid,
  geoContains,
  geoDistance,
  geoEqualEarth,
  geoPath,
} from 'd3-geo'
import type { MultiPolygon, Polygon } from 'geojson'

/** Degrees, as records hold them. */
export interface Place {
  readonly latitude: number
  readonly longitude: number
}

/** A projection and the size of the drawing that it fills. Both kinds of map keep areas in proportion. */
export interface Frame {
  readonly projection: GeoProjection
  readonly width: number
  readonly height: number
}

/** The world is cut off where nobody lays stone on stone. */
const NORTH = 78
const SOUTH = -58
const WORLD_WIDTH = 900
const COUNTRY_SIDE = 720
const LEAST_SIDE = 560
const MARGIN = 48

export function frameWorld(): Frame {
  const projection = geoEqualEarth().precision(1).fitWidth(WORLD_WIDTH, { type: 'Sphere' })
  const yOf = (latitude: number) => projection([0, latitude])?.[1] ?? 0
  const [left, top] = projection.translate()
  projection.translate([left, top - yOf(NORTH)])
  return clipped(projection, WORLD_WIDTH, Math.round(yOf(SOUTH)))
}

/** The frame of some polygons; width and height follow their shape. */
export function frameAround(polygons: readonly Polygon[]): Frame {
  const shown: MultiPolygon = {
    type: 'MultiPolygon',
    coordinates: polygons.map(({ coordinates }) => coordinates),
  }
  const [longitude, latitude] = geoCentroid(shown)
  const room = COUNTRY_SIDE - 2 * MARGIN
  const projection = geoAzimuthalEqualArea()
    .rotate([-longitude, -latitude])
    .precision(0)
    .fitSize([room, room], shown)
  const [[left, top], [right, bottom]] = geoPath(projection).bounds(shown)
  const [width, height] = [sideFor(right - left), sideFor(bottom - top)]
  const [x, y] = projection.translate()
  projection.translate([x + (width - left - right) / 2, y + (height - top - bottom) / 2])
  return clipped(projection, width, height)
}

const sideFor = (length: number) => Math.max(LEAST_SIDE, Math.round(length + 2 * MARGIN))

const clipped = (projection: GeoProjection, width: number, height: number): Frame => ({
  projection: projection.clipExtent([
    [0, 0],
    [width, height],
  ]),
  width,
  height,
})

/**
 * Of a country's mainland and islands those that hold one of these places; the largest where there is none.
 *
 * @param polygons at least one
 */
export function polygonsWith(polygons: readonly Polygon[], places: readonly Place[]): readonly Polygon[] {
  const held = new Set(
    places.length > 0 ? places.map((place) => nearest(polygons, place)) : [greatest(polygons, geoArea)],
  )
  return polygons.filter((polygon) => held.has(polygon))
}

/** The polygon that holds a place; on a coast drawn coarsely, the one whose edge is nearest. */
function nearest(polygons: readonly Polygon[], { longitude, latitude }: Place): Polygon | undefined {
  const at: [number, number] = [longitude, latitude]
  return polygons.find((polygon) => geoContains(polygon, at)) ?? least(polygons, (one) => distanceTo(one, at))
}

const distanceTo = ({ coordinates }: Polygon, at: [number, number]) =>
  Math.min(...(coordinates[0] ?? []).map(([x = 0, y = 0]) => geoDistance([x, y], at)))
