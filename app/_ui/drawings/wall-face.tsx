import { jointShareOf } from '#lib/mortar/takeoff/spec.ts'
import { convert } from '#lib/mortar/units.ts'
import { words } from '../../_words/index.ts'
import { quantityText } from '../quantity.tsx'
import { bondFor, type FaceNumbers, faceGeometry } from './face-geometry.ts'
import { lengthText, type System } from './lengths.ts'

const WIDTH = 280
const BELOW = 26

interface Props extends FaceNumbers {
  readonly system: System
}

/** A piece of the wall's face with its units and joints to scale, and a measure under it. */
export function WallFace({ system, ...face }: Props) {
  const { piece, units } = faceGeometry(face)
  const scale = WIDTH / piece.width
  const at = (mm: number) => Number((mm * scale).toFixed(2))
  const height = at(piece.height)
  const d = units
    .map(({ x, y, width, height: high }) => `M${at(x)} ${at(y)}h${at(width)}v${at(high)}h${-at(width)}Z`)
    .join('')
  const bar = barOf(piece.width, system)
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${WIDTH} ${height + BELOW}`}
      width={WIDTH}
      height={height + BELOW}
      aria-hidden="true"
    >
      <rect className="drawn-mortar" width={WIDTH} height={height} />
      <path className="drawn-stone" d={d} />
      <path
        className="drawn-line"
        d={`M1 ${height + 5}V${height + 13}M1 ${height + 9}H${at(bar.mm)}M${at(bar.mm)} ${height + 5}V${height + 13}`}
      />
      <text x={at(bar.mm) + 8} y={height + 14}>
        {bar.text}
      </text>
    </svg>
  )
}

const BARS = { metric: [100, 200, 500, 1000, 2000, 5000], us: [6, 12, 24, 36, 72, 120, 240] } as const

/** A round measure of about half the piece: millimetres, or feet from a foot up. */
function barOf(widthMm: number, system: System): { mm: number; text: string } {
  const toMm = (size: number) => (system === 'metric' ? size : convert(size, 'in', 'mm'))
  const sizes: readonly number[] = BARS[system]
  const size = sizes.findLast((one) => toMm(one) <= widthMm * 0.6) ?? sizes[0] ?? 100
  const [figure, unit] =
    system === 'us'
      ? size < 12
        ? [size, 'in']
        : [size / 12, 'ft']
      : size < 1000
        ? [size, 'mm']
        : [size / 1000, 'm']
  return { mm: toMm(size), text: quantityText(Number(figure), String(unit)).main }
}

/** The same in words, with how much of the face is joint. */
export function faceSays({ system, ...face }: Props): string {
  const t = words('workOut')
  const { piece } = faceGeometry(face)
  const { lengthMm, heightMm, jointMm, heads } = face
  const given = {
    width: lengthText(piece.width, system),
    length: lengthText(lengthMm, system),
    height: lengthText(heightMm, system),
    joint: lengthText(jointMm, system),
  }
  if (!heads) {
    const joint = 100 * jointShareOf(lengthMm, heightMm, jointMm)
    const share = quantityText(Number(joint.toPrecision(2)), '%').main
    return `${t('drawings.face.says', given)} ${t('drawings.face.share', { share })}`
  }
  const { bond, exact } = bondFor(heads.share)
  const says = t('drawings.face.brick', {
    ...given,
    head: lengthText(heads.widthMm, system),
    bond: t(`drawings.face.bonds.${bond}`),
  })
  return exact ? says : `${says} ${t('drawings.face.nearest')}`
}
