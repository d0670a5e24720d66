import type { Frame, Place } from './frame.ts'

/** Cases of one place on the map. */
export interface Cluster extends Place {
  readonly id: string
  readonly label: string
  readonly count: number
  readonly href: string
}

/** A cluster as it is drawn, in units of the drawing. */
export interface Mark extends Cluster {
  readonly x: number
  readonly y: number
  readonly radius: number
  /** Where the middle of its name goes; absent where there is no room for one. */
  readonly name?: { readonly x: number; readonly y: number }
}

const LEAST_RADIUS = 18
/** Of a country's map and of the world's, where countries lie close together. */
const MOST_RADIUS = { country: 38, world: 24 } as const
/** Room that a digit of the count, a letter of the name and a line take, at the largest size that find/map.css sets. */
const DIGIT = 10
const LETTER = 15
const LINE = 32

/**
 * Marks for clusters, the largest first so that small ones lie on top: a mark's area grows with its count.
 * A name is drawn where it covers no mark and no other name; clusters that the frame cuts off are left out.
 */
export function marksOf(
  clusters: readonly Cluster[],
  frame: Frame,
  view: keyof typeof MOST_RADIUS = 'country',
): Mark[] {
  const most = Math.max(1, ...clusters.map(({ count }) => count))
  const sorted = [...clusters].sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
  const marks = apart(
    sorted.flatMap((cluster) => placed(cluster, radiusOf(cluster.count, most, MOST_RADIUS[view]), frame)),
    frame,
  )
  const taken = marks.map(({ x, y, radius }) => boxAround(x, y, radius, radius))
  return marks.map((mark) => {
    const free = namePlaces(mark).find(
      ({ box }) => isInside(box, frame) && !taken.some((one) => meet(box, one)),
    )
    if (free === undefined) return mark
    taken.push(free.box)
    return { ...mark, name: { x: free.x, y: free.y } }
  })
}

/** A mark where the projection puts it, drawn in far enough that the frame does not cut it. */
function placed(cluster: Cluster, radius: number, { projection, width, height }: Frame): Mark[] {
  const [x = -1, y = -1] = projection([cluster.longitude, cluster.latitude]) ?? []
  if (x < 0 || y < 0 || x > width || y > height) return []
  return [{ ...cluster, radius, x: within(x, radius, width), y: within(y, radius, height) }]
}

const within = (value: number, radius: number, most: number) =>
  Math.round(Math.min(most - radius - 2, Math.max(radius + 2, value)))

const radiusOf = (count: number, most: number, largest: number) =>
  Math.round(
    Math.max(LEAST_RADIUS, (String(count).length * DIGIT) / 2 + 10, largest * Math.sqrt(count / most)),
  )

/** More marks than this cover a map anyway. */
const MOST_MOVED = 60
const PASSES = 12

/** Marks moved off one another, so that each count can be read and followed: a little in each pass. */
function apart(marks: readonly Mark[], { width, height }: Frame): Mark[] {
  const moved = marks.map((mark) => ({ ...mark }))
  if (moved.length > MOST_MOVED) return moved
  for (let pass = 0; pass < PASSES; pass += 1)
    for (const [at, a] of moved.entries())
      for (const b of moved.slice(at + 1)) {
        const [dx, dy] = [b.x - a.x || 1, b.y - a.y]
        const distance = Math.hypot(dx, dy)
        const lack = a.radius + b.radius + 2 - distance
        if (lack <= 0) continue
        const [stepX, stepY] = [(dx / distance) * (lack / 2), (dy / distance) * (lack / 2)]
        a.x = within(a.x - stepX, a.radius, width)
        a.y = within(a.y - stepY, a.radius, height)
        b.x = within(b.x + stepX, b.radius, width)
        b.y = within(b.y + stepY, b.radius, height)
      }
  return moved
}

/** Below the mark, right of it, left of it, above it. */
function namePlaces({ x, y, radius, label }: Mark) {
  const half = (label.length * LETTER) / 2
  return [
    { x, y: y + radius + LINE / 2 },
    { x: x + radius + half + 4, y },
    { x: x - radius - half - 4, y },
    { x, y: y - radius - LINE / 2 },
  ].map((place) => ({ ...place, box: boxAround(place.x, place.y, half, LINE / 2) }))
}

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const boxAround = (x: number, y: number, across: number, down: number): Box => ({
  left: x - across,
  right: x + across,
  top: y - down,
  bottom: y + down,
})

const isInside = ({ left, right, top, bottom }: Box, { width, height }: Frame) =>
  left >= 0 && right <= width && top >= 0 && bottom <= height

const meet = (a: Box, b: Box) => a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top
