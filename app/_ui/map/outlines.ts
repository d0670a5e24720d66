import { extent } from 'd3-array'
import { type GeoPermissibleObjects, type GeoProjection, geoStream } from 'd3-geo'
import type { Polygon } from 'geojson'
import { feature, mesh } from 'topojson-client'
import type { GeometryCollection, Topology } from 'topojson-specification'
import { type Point, pathOf } from './path.ts'

/** Outlines of the countries: Natural Earth, in the public domain, as npm's `world-atlas` packs them. */
export type Atlas = Topology<{
  countries: GeometryCollection<{ name: string }>
  land: GeometryCollection
}>

/** One polygon of a country, and the box that holds it. */
export interface Part {
  /** ISO 3166-1 numeric; none for ground that no country is agreed to hold. */
  readonly country: string | undefined
  readonly polygon: Polygon
  /** Degrees, as the outlines have them: cut along the 180th meridian. */
  readonly box: Box
}

export interface Box {
  readonly west: number
  readonly south: number
  readonly east: number
  readonly north: number
}

/** The box around points of longitude and latitude. */
export function boxOf(points: readonly (readonly number[])[]): Box {
  const [west = 0, east = 0] = extent(points, ([longitude]) => longitude)
  const [south = 0, north = 0] = extent(points, ([, latitude]) => latitude)
  return { west, south, east, north }
}

/** Every polygon of every country. */
export const partsOf = (atlas: Atlas): Part[] =>
  feature(atlas, atlas.objects.countries).features.flatMap(({ id, geometry }) =>
    (geometry.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : []
    ).map(
      (coordinates): Part => ({
        country: id === undefined ? undefined : String(id),
        polygon: { type: 'Polygon', coordinates },
        box: boxOf(coordinates[0] ?? []),
      }),
    ),
  )

/** All land as one path under a projection, and the borders between countries as another. */
export const drawLand = (atlas: Atlas, projection: GeoProjection): { land: string; borders: string } => ({
  land: draw(feature(atlas, atlas.objects.land), projection, true),
  borders: draw(
    mesh(atlas, atlas.objects.countries, (a, b) => a !== b),
    projection,
    false,
  ),
})

/** Polygons as one path under a projection; nothing of what the projection cuts off. */
export const drawParts = (parts: readonly Part[], projection: GeoProjection): string =>
  parts.map(({ polygon }) => draw(polygon, projection, true)).join('')

function draw(shape: GeoPermissibleObjects, projection: GeoProjection, closed: boolean): string {
  const lines: Point[][] = []
  let line: Point[] = []
  const ignore = () => undefined
  geoStream(
    shape,
    projection.stream({
      lineStart: () => {
        line = []
        lines.push(line)
      },
      point: (x, y) => void line.push([x, y]),
      lineEnd: ignore,
      polygonStart: ignore,
      polygonEnd: ignore,
    }),
  )
  return pathOf(lines, closed)
}
