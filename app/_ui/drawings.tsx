/** Courses of a wall face: widths of stones, left to right; `hole` is where a pole once went in. */
const COURSES = [
  { height: 30, widths: [58, 84, 46, 72, 60, 64], shift: 0 },
  { height: 38, widths: [74, 52, 90, 48, 120], shift: 12 },
  { height: 26, widths: [46, 96, 62, 80, 100], shift: 4 },
  { height: 42, widths: [88, 60, 24, 94, 56, 62], shift: 8, hole: 2 },
  { height: 30, widths: [52, 78, 66, 48, 84, 56], shift: 2 },
  { height: 36, widths: [96, 58, 76, 54, 100], shift: 10 },
] as const
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

/** A rubble wall face with one putlog hole left open and the pole drawn out of it. */
export function WallDrawing({ title }: { title: string }) {
  const stones: { key: string; path: string; kind: string }[] = []
  let y = JOINT
  let hole = { x: 0, y: 0, size: 0 }
  COURSES.forEach((course, row) => {
    let x = JOINT - course.shift
    course.widths.forEach((width, column) => {
      const seed = row * 7 + column * 3 + 1
      if ('hole' in course && course.hole === column) hole = { x, y: y + course.height - width, size: width }
      else
        stones.push({
          key: `${row}-${column}`,
          path: stonePath(x, y, Math.min(width, WIDTH + 8 - x), course.height, seed),
          kind: seed % 4 === 0 ? 'wall-stone wall-stone-dark' : 'wall-stone',
        })
      x += width + JOINT
    })
    y += course.height + JOINT
  })
  const lintelY = hole.y - 12
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={title}>
      {stones.map((stone) => (
        <path key={stone.key} className={stone.kind} d={stone.path} />
      ))}
      <path className="wall-stone" d={stonePath(hole.x - 3, lintelY - 6, hole.size + 6, 12, 5)} />
      <rect className="wall-hole" x={hole.x} y={hole.y} width={hole.size} height={hole.size} />
      <path
        className="wall-pole"
        d={`M${hole.x + 5} ${hole.y + hole.size - 14}l74 52l9 -11l-74 -52q-9 0 -9 11Z`}
      />
      <ellipse
        className="wall-pole"
        cx={hole.x + 83.5}
        cy={hole.y + hole.size + 32.5}
        rx="7.2"
        ry="5.4"
        transform={`rotate(-50 ${hole.x + 83.5} ${hole.y + hole.size + 32.5})`}
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
