import { whereAlpha2 } from 'iso-3166-1'
import nearby from 'world-atlas/countries-50m.json'
import afar from 'world-atlas/countries-110m.json'
import { type Frame, frameAround, frameWorld, type Place, polygonsWith } from './frame.ts'
import { type Box, boxOf, drawLand, drawParts, type Part, partsOf } from './outlines.ts'

/** Paths of a map without its marks. */
export interface Sheet {
  readonly frame: Frame
  readonly land: string
  readonly borders: string
  /** The country asked for, where there is one. */
  readonly country?: string
}

let world: Sheet | undefined
let parts: readonly Part[] | undefined

/** The whole world; drawn once. */
export function worldSheet(): Sheet {
  if (world === undefined) {
    const frame = frameWorld()
    world = { frame, ...drawLand(afar, frame.projection) }
  }
  return world
}

/** Sheets of countries that were drawn already, by their polygons; few are ever asked for. */
const drawn = new Map<string, Sheet>()
const MOST_DRAWN = 200

/**
 * One country with what lies around it: the mainland and islands that hold the places to be marked.
 *
 * @param alpha2 ISO 3166-1
 * @returns nothing for a country too small for the outlines
 */
export function countrySheet(alpha2: string, places: readonly Place[]): Sheet | undefined {
  parts ??= partsOf(nearby)
  const numeric = whereAlpha2(alpha2)?.numeric
  const own = parts.filter(({ country }) => country !== undefined && country === numeric)
  if (own.length === 0) return undefined
  const polygons = own.map(({ polygon }) => polygon)
  const shown = polygonsWith(polygons, places)
  const key = [alpha2, ...shown.map((polygon) => polygons.indexOf(polygon))].join(' ')
  const sheet = drawn.get(key) ?? drawCountry(own, parts, frameAround(shown))
  if (drawn.size < MOST_DRAWN) drawn.set(key, sheet)
  return sheet
}

function drawCountry(own: readonly Part[], all: readonly Part[], frame: Frame): Sheet {
  const shown = boxShown(frame)
  const around = all.filter((part) => !own.includes(part) && isNear(part, shown))
  return {
    frame,
    land: drawParts(around, frame.projection),
    borders: '',
    country: drawParts(own, frame.projection),
  }
}

/** The box of degrees that a frame shows, from its edges. */
function boxShown({ projection, width, height }: Frame): Box {
  const edge = [0, 0.5, 1].flatMap((part) => [
    [part * width, 0],
    [part * width, height],
    [0, part * height],
    [width, part * height],
  ])
  return boxOf(edge.flatMap(([x = 0, y = 0]) => [projection.invert?.([x, y]) ?? []]))
}

function isNear({ box }: Part, shown: Box): boolean {
  // A frame across the 180th meridian is told by its breadth; anything of the same latitudes may show in it.
  const isBroad = shown.east - shown.west > 180
  return (
    box.south <= shown.north &&
    box.north >= shown.south &&
    (isBroad || (box.west <= shown.east && box.east >= shown.west))
  )
}
