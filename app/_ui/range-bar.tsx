const WIDTH = 240

/**
 * A range drawn on a scale from nought to `max`, its typical value as a line across it where it has one. The
 * numbers stand beside it in text, so it is hidden from readers of the page's words.
 */
export function RangeBar(props: {
  value: { readonly low: number; readonly typical?: number; readonly high: number }
  max: number
}) {
  const { value, max } = props
  // A browser's logarithms differ from the server's in the last digits: rounded, both draw the same bar.
  const round = (place: number) => Math.round(place * 100) / 100
  const x = (figure: number) => round(Math.max(1, Math.min(WIDTH - 1, (figure / max) * WIDTH)))
  const width = Math.max(2, round(x(value.high) - x(value.low)))
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
      {value.typical !== undefined && (
        <line className="range-bar-typical" x1={x(value.typical)} y1="1" x2={x(value.typical)} y2="13" />
      )}
    </svg>
  )
}
