/** A point of the drawing, in its own units. */
export type Point = readonly [x: number, y: number]

/**
 * A path of straight lines between whole points, each step told from the one before: about half the bytes of
 * a path with decimals, and no edge that a screen could show is lost.
 *
 * @param lines runs of points; a closed one comes back to where it began
 */
export const pathOf = (lines: readonly (readonly Point[])[], closed: boolean): string =>
  lines.map((line) => strokeOf(line.map(whole), closed)).join('')

const whole = ([x, y]: Point): Point => [Math.round(x), Math.round(y)]

function strokeOf(line: readonly Point[], closed: boolean): string {
  const [start, ...rest] = line
  if (start === undefined) return ''
  let [x, y] = start
  const steps: string[] = []
  for (const [toX, toY] of rest) {
    if (toX === x && toY === y) continue
    steps.push(stepOf(toX - x, toY - y))
    x = toX
    y = toY
  }
  // What shrinks to a point or to a line there and back is too small to be drawn.
  if (steps.length < (closed ? 3 : 1)) return ''
  return `M${start[0]},${start[1]}${steps.join('')}${closed ? 'z' : ''}`
}

function stepOf(dx: number, dy: number): string {
  if (dy === 0) return `h${dx}`
  return dx === 0 ? `v${dy}` : `l${dx},${dy}`
}
