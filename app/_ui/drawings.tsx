/** Courses of a wall face from the top, widths of stones from the left; a `hole` is a gap left for a pole. */
const COURSES = [
  { height: 30, widths: [58, 84, 46, 72, 60, 64], shift: 0, holes: [] },
  { height: 38, widths: [74, 24, 118, 48, 120], shift: 12, holes: [1] },
  { height: 26, widths: [46, 96, 62, 80, 100], shift: 4, holes: [] },
  { height: 40, widths: [64, 24, 70, 92, 24, 58, 50], shift: 8, holes: [1, 4] },
  { height: 30, widths: [52, 78, 66, 48, 84, 56], shift: 2, holes: [] },
  { height: 36, widths: [96, 58, 76, 54, 100], shift: 10, holes: [] },
  { height: 28, widths: [40, 72, 90, 66, 58, 60], shift: 6, holes: [] },
] as const
/** The course whose poles still carry the board. */
const LIFT = 3
const JOINT = 5
const WIDTH = 384
const HEIGHT = COURSES.reduce((sum, course) => sum + course.height + JOINT, JOINT)

/** A stone with corners knocked off a little, each by its own amount. */
function stonePath(x: number, y: number, width: number, height: number, seed: number): string {
  const [a, b, c, d] = [3, 5, 7, 11].map((prime) => 2 + ((seed * prime) % 5)) as [
    number,
    number,
    number,
    number,
  ]
  const [right, bottom] = [x + width, y + height]
  return `M${x + a} ${y}H${right - b}Q${right} ${y} ${right} ${y + b}V${bottom - c}Q${right} ${bottom} ${right - c} ${bottom}H${x + d}Q${x} ${bottom} ${x} ${bottom - d}V${y + a}Q${x} ${y} ${x + a} ${y}Z`
}

interface Placed {
  x: number
  y: number
  width: number
  height: number
  row: number
  column: number
}

function placeStones(): { stones: Placed[]; holes: Placed[] } {
  const stones: Placed[] = []
  const holes: Placed[] = []
  let y = JOINT
  COURSES.forEach(({ height, widths, shift, holes: gaps }, row) => {
    let x = JOINT - shift
    widths.forEach((width, column) => {
      const isHole = gaps.some((gap) => gap === column)
      if (isHole) {
        holes.push({ x, y: y + height - width, width, height: width, row, column })
        stones.push({ x: x - 1, y, width: width + 2, height: height - width - 3, row, column })
      } else stones.push({ x, y, width, height, row, column })
      x += width + JOINT
    })
    y += height + JOINT
  })
  return { stones, holes }
}

/** A rubble wall face: two poles in their holes carry a board, and an older hole above stands open. */
export function WallDrawing({ title }: { title: string }) {
  const { stones, holes } = placeStones()
  const poles = holes.filter(({ row }) => row === LIFT)
  const boardY = Math.min(...poles.map(({ y }) => y)) - 7
  const left = Math.min(...poles.map(({ x }) => x)) - 44
  const right = Math.max(...poles.map(({ x, width }) => x + width)) + 62
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={title}>
      {stones.map(({ x, y, width, height, row, column }) => (
        <path
          key={`${row}-${column}`}
          className={(row * 7 + column * 3 + 1) % 4 === 0 ? 'wall-stone wall-stone-dark' : 'wall-stone'}
          d={stonePath(x, y, width, height, row * 7 + column * 3 + 1)}
        />
      ))}
      {holes.map(({ x, y, width, height, row, column }) => (
        <rect key={`${row}-${column}`} className="wall-hole" x={x} y={y} width={width} height={height} />
      ))}
      {poles.map(({ x, y, width }) => (
        <g key={x} className="wall-pole">
          <circle cx={x + width / 2} cy={y + 11} r="9.5" />
          <circle className="wall-ring" cx={x + width / 2 - 1} cy={y + 11.5} r="5.5" />
          <circle className="wall-ring" cx={x + width / 2 - 1.5} cy={y + 12} r="2" />
        </g>
      ))}
      <rect className="wall-pole" x={left} y={boardY} width={right - left} height="9" />
      <path
        className="wall-ring"
        d={`M${left + 8} ${boardY + 3}H${right - 60}M${left + 70} ${boardY + 6}H${right - 12}`}
      />
    </svg>
  )
}

/** The mark: four stones and the hole between them. */
export const HoleMark = () => (
  <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true">
    <path
      className="wall-stone"
      d="M1 2H17V10H1ZM19.5 2H29V10H19.5ZM1 12.5H9.5V20.5H1ZM20.5 12.5H29V20.5H20.5ZM1 23H12V29H1ZM14.5 23H29V29H14.5Z"
    />
    <rect className="wall-hole" x="11.5" y="12" width="7.5" height="9" />
    <path className="wall-pole" d="M14 15.5L22 21.5L20 24L12.200 18Z" />
  </svg>
)

/** One course of masonry drawn across the page in place of a plain rule. `id` must differ within a page. */
export const Course = ({ id }: { id: string }) => (
  <svg className="course" height="13" aria-hidden="true">
    <defs>
      <pattern id={id} width="312" height="13" patternUnits="userSpaceOnUse">
        <path
          className="wall-joint"
          d="M0 .5H312M0 12.5H312M46 .5V12.5M104 .5V12.5M141 .5V12.5M212 .5V12.5M254 .5V12.5M311.5 .5V12.5"
        />
        <rect className="wall-hole" x="178" y="3.5" width="9" height="9" />
        <path className="wall-joint" d="M174 .5V12.5M191 .5V12.5" />
      </pattern>
    </defs>
    <rect width="100%" height="13" fill={`url(#${id})`} />
  </svg>
)
