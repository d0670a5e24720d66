import type { Range } from '#lib/mortar/range.ts'

const WIDTH = 240

/**
 * A range drawn on a scale from nought to `max`, the typical value as a line across it. The numbers stand
 * beside it in text, so it is hidden from readers of the page's words.
 */
export function RangeBar({ value, max }: { value: Range; max: number }) {
  const x = (figure: number) => Math.max(1, Math.min(WIDTH - 1, (figure / max) * WIDTH))
  const width = Math.max(2, x(value.high) - x(value.low))
  return (
    <svg
      className="range-bar"
      viewBox={`0 0 ${WIDTH} 14`}
      height="14"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <line className="range-bar-axis" x1="0" y1="13" x2={WIDTH} y2="13" />
      <rect className="range-bar-span" x={x(value.low)} y="4" width={width} height="6" />
      <line className="range-bar-typical" x1={x(value.typical)} y1="1" x2={x(value.typical)} y2="13" />
    </svg>
  )
}
