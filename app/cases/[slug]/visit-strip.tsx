import type { VisitBody } from '#lib/entry/visit.ts'
import { Frame } from '../../_ui/frame.tsx'
import { SCALES, stepOf } from '../../_ui/states.tsx'
import { words } from '../../_words/index.ts'

const LEFT = 64
const WIDTH = 560
const LANE = 40
const TOP = 8
const YEAR_MS = 365.25 * 86_400_000

/**
 * The visits of one work along the years: a column per visit and scale that fills as the state worsens.
 * The table below says the same in words, so the drawing is one image to a screen reader.
 */
export function VisitStrip({ visits, title }: { visits: readonly VisitBody[]; title: string }) {
  const times = visits.map(({ on }) => Date.parse(on))
  const start = new Date(Math.min(...times)).getUTCFullYear()
  const end = new Date(Math.max(...times)).getUTCFullYear() + 1
  const x = (time: number) =>
    LEFT + 10 + ((time - Date.UTC(start, 0, 1)) / YEAR_MS / (end - start)) * (WIDTH - LEFT - 30)
  const places = apart(times.map(x))
  const bottom = TOP + SCALES.length * LANE
  const every = end - start > 12 ? 5 : end - start > 6 ? 2 : 1
  const years = Array.from({ length: end - start + 1 }, (_, index) => start + index)
  return (
    <Frame label={title}>
      <svg className="strip" viewBox={`0 0 ${WIDTH} ${bottom + 22}`} aria-hidden="true">
        {years.map((year) => (
          <g key={year}>
            <line
              className="strip-axis"
              x1={x(Date.UTC(year, 0, 1))}
              y1={bottom}
              x2={x(Date.UTC(year, 0, 1))}
              y2={bottom + 4}
            />
            {(year - start) % every === 0 && (
              <text x={x(Date.UTC(year, 0, 1))} y={bottom + 17} textAnchor="middle">
                {year}
              </text>
            )}
          </g>
        ))}
        {SCALES.map((scale, lane) => (
          <g key={scale.key}>
            <text x="0" y={TOP + lane * LANE + 22}>
              {words('pages')(`states.${scale.key}`)}
            </text>
            <line
              className="strip-axis"
              x1={LEFT}
              x2={WIDTH}
              y1={TOP + lane * LANE + LANE - 4}
              y2={TOP + lane * LANE + LANE - 4}
            />
            {visits.map((visit, index) => (
              <Column
                key={`${visit.on}-${visit.observer.how}`}
                x={places[index] ?? 0}
                y={TOP + lane * LANE + 2}
                step={stepOf(scale, visit)}
                fill={scale.fill}
              />
            ))}
          </g>
        ))}
      </svg>
    </Frame>
  )
}

/** Visits a few days apart would cover one another: each is set at least a column to the right of the last. */
function apart(places: readonly number[]): number[] {
  const set: number[] = []
  for (const place of places) set.push(Math.max(place, (set.at(-1) ?? Number.NEGATIVE_INFINITY) + 13))
  return set
}

const HEIGHT = LANE - 8

const Column = ({ x, y, step, fill }: { x: number; y: number; step: number; fill: string }) => (
  <>
    <rect className="strip-box" x={x - 5} y={y} width="10" height={HEIGHT} />
    {step > 0 && (
      <rect
        className={fill}
        x={x - 5}
        y={y + HEIGHT * (1 - step / 4)}
        width="10"
        height={(HEIGHT * step) / 4}
      />
    )}
  </>
)
