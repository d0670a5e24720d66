import { BOND_HEADERS } from '#lib/mortar/takeoff/brick.ts'

/** What a wall face's drawing is fed with, mm. */
export interface FaceNumbers {
  readonly lengthMm: number
  readonly heightMm: number
  readonly jointMm: number
  /** Of bricks that show their heads: how wide a head is, and what share of the face they take. */
  readonly heads?: { readonly widthMm: number; readonly share: number }
}

export type Bond = keyof typeof BOND_HEADERS

/** A unit's place in the piece of wall, mm from its top left corner; cut by its edges. */
export interface PlacedUnit {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const PIECES_MM = [250, 500, 1000, 2000, 5000, 10_000, 20_000]
/** Units in a course, at the least. */
const LEAST = 3
/** Height of the piece as a share of its width. */
const SHAPE = 0.5

/** The bond whose share of headers lies nearest, and whether it is that share. */
export function bondFor(share: number): { bond: Bond; exact: boolean } {
  const bonds = Object.keys(BOND_HEADERS) as Bond[]
  const off = (bond: Bond) => Math.abs(BOND_HEADERS[bond] - share)
  const bond = bonds.reduce((best, one) => (off(one) < off(best) ? one : best))
  return { bond, exact: off(bond) < 0.01 }
}

/** What lies side by side in one course, again and again, and how far the course is shifted. */
function courseOf(row: number, { lengthMm, jointMm, heads }: FaceNumbers) {
  const stretchers = { lengths: [lengthMm], shift: (row % 2) * ((lengthMm + jointMm) / 2) }
  if (!heads) return stretchers
  const headers = { lengths: [heads.widthMm], shift: (row % 2) * ((heads.widthMm + jointMm) / 2) }
  const { bond } = bondFor(heads.share)
  if (bond === 'stretcher') return stretchers
  if (bond === 'header') return headers
  // A header course lies so that its joints miss those of the stretchers above and below.
  const between = { lengths: [heads.widthMm], shift: (heads.widthMm + jointMm) / 2 }
  if (bond === 'english') return row % 2 === 0 ? { lengths: [lengthMm], shift: 0 } : between
  if (bond === 'english-garden-wall') return row % 4 === 3 ? between : stretchers
  const pair = lengthMm + heads.widthMm + 2 * jointMm
  return { lengths: [lengthMm, heads.widthMm], shift: (row % 2) * (pair / 2) }
}

/** A piece of the face, wide enough for some units, with every unit in it in its place. */
export function faceGeometry(face: FaceNumbers) {
  const { lengthMm, heightMm, jointMm } = face
  const least = Math.max(LEAST * (lengthMm + jointMm), (2 * (heightMm + jointMm)) / SHAPE)
  const widthMm = PIECES_MM.find((one) => one >= least) ?? Math.ceil(least / 10_000) * 10_000
  const piece = { width: widthMm, height: widthMm * SHAPE }
  const units: PlacedUnit[] = []
  for (let row = 0, y = jointMm / 2; y < piece.height; row++, y += heightMm + jointMm) {
    const { lengths, shift } = courseOf(row, face)
    let x = jointMm / 2 - shift
    for (let place = 0; x < piece.width; place++) {
      const length = lengths[place % lengths.length] ?? lengthMm
      const unit = clip({ x, y, width: length, height: heightMm }, piece)
      if (unit) units.push(unit)
      x += length + jointMm
    }
  }
  return { piece, units }
}

/** The part of a unit that lies within the piece. */
function clip({ x, y, width, height }: PlacedUnit, piece: { width: number; height: number }) {
  const [left, right] = [Math.max(0, x), Math.min(piece.width, x + width)]
  const bottom = Math.min(piece.height, y + height)
  return right > left && bottom > y ? { x: left, y, width: right - left, height: bottom - y } : undefined
}
