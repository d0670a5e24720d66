import type { RangedCurve } from '#lib/mortar/sieve-limits.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** A curve as it is drawn: one of the sands of a blend is thin, with a dash of its own. */
export interface ChartCurve {
  readonly label: string
  readonly curve: RangedCurve
  readonly drawn: 'main' | 'target' | 'part'
}

const WIDTH = 360
const LEFT = 34
const RIGHT = 348
const TOP = 26
const FLOOR = 226
const LEGEND_LINE = 18
/** Names of sieves closer than this run into one another. */
const NAME_WIDTH = 36

/**
 * Grading curves over the openings on a logarithmic axis, on the limits they are held against. The table
 * beside it gives the same figures; a range is a stroke through its point.
 *
 * @param props.band limits, coarsest first
 */
export function GradingChart(props: {
  title: string
  openings: readonly number[]
  curves: readonly ChartCurve[]
  band?: { label: string; points: readonly { openingMm: number; low: number; high: number }[] } | undefined
}) {
  const { title, openings, curves, band } = props
  const t = words('workOut')
  const sizes = [
    ...openings,
    ...curves.flatMap(({ curve }) => curve.map(({ openingMm }) => openingMm)),
    ...(band?.points.map(({ openingMm }) => openingMm) ?? []),
  ]
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
  const span = Math.log(most / least) || 1
  const x = (mm: number) => round(LEFT + ((RIGHT - LEFT) * Math.log(mm / least)) / span)
  const y = (share: number) => round(FLOOR - ((FLOOR - TOP) * share) / 100)
  const legend = [
    ...curves.map(({ label, drawn }) => ({ label, drawn })),
    ...(band ? [{ label: band.label }] : []),
  ]
  return (
    <svg
      className="grading"
      viewBox={`0 0 ${WIDTH} ${FLOOR + 48 + legend.length * LEGEND_LINE}`}
      role="img"
      aria-label={title}
    >
      {band && (
        <g>
          <path className="grading-band" d={`M${bandPath(band.points, x, y)}Z`} />
          {(['low', 'high'] as const).map((end) => (
            <path
              key={end}
              className="grading-limit"
              d={`M${band.points.map((point) => `${x(point.openingMm)} ${y(point[end])}`).join('L')}`}
            />
          ))}
        </g>
      )}
      <Axes openings={openings} x={x} y={y} />
      {curves.map(({ curve, drawn, label }, k) => (
        <g key={label} className={`grading-${drawn} grading-dash-${k}`}>
          <path
            d={`M${curve.map((point) => `${x(point.openingMm)} ${y(point.passing.typical)}`).join('L')}`}
          />
          {drawn === 'main' &&
            curve.map(({ openingMm, passing }) => (
              <g key={openingMm}>
                <path d={`M${x(openingMm)} ${y(passing.low)}V${y(passing.high)}`} />
                <circle cx={x(openingMm)} cy={y(passing.typical)} r={2.6} />
              </g>
            ))}
        </g>
      ))}
      {legend.map(({ label, ...one }, k) => {
        const at = FLOOR + 54 + k * LEGEND_LINE
        return (
          <g key={label}>
            {'drawn' in one ? (
              <g className={`grading-${one.drawn} grading-dash-${k}`}>
                <path d={`M${LEFT} ${at}h30`} />
                {one.drawn === 'main' && <circle cx={LEFT + 15} cy={at} r={2.6} />}
              </g>
            ) : (
              <g>
                <path className="grading-band" d={`M${LEFT} ${at - 5}h30v10h-30Z`} />
                <path className="grading-limit" d={`M${LEFT} ${at - 5}h30M${LEFT} ${at + 5}h30`} />
              </g>
            )}
            <text x={LEFT + 38} y={at + 4}>
              {label}
            </text>
          </g>
        )
      })}
      <text x={LEFT - 30} y={12}>
        {t('sieve.chart.passing')}
      </text>
      <text x={(LEFT + RIGHT) / 2} y={FLOOR + 36} textAnchor="middle">
        {t('sieve.chart.opening')}
      </text>
    </svg>
  )
}

type Scale = (value: number) => number

function Axes({ openings, x, y }: { openings: readonly number[]; x: Scale; y: Scale }) {
  let named = Number.POSITIVE_INFINITY
  const ticks = openings.map((mm) => {
    const free = named - x(mm) >= NAME_WIDTH
    if (free) named = x(mm)
    return { mm, free }
  })
  return (
    <g>
      {[0, 20, 40, 60, 80, 100].map((share) => (
        <g key={share}>
          <path className="grading-grid" d={`M${LEFT} ${y(share)}H${RIGHT}`} />
          <text x={LEFT - 6} y={y(share) + 4} textAnchor="end">
            {formatNumber(share)}
          </text>
        </g>
      ))}
      {ticks.map(({ mm, free }) => (
        <g key={mm}>
          <path className="grading-grid" d={`M${x(mm)} ${TOP}V${FLOOR + 4}`} />
          {free && (
            <text x={x(mm)} y={FLOOR + 17} textAnchor="middle">
              {formatNumber(mm)}
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

const bandPath = (
  points: readonly { openingMm: number; low: number; high: number }[],
  x: Scale,
  y: Scale,
): string =>
  [
    ...points.map(({ openingMm, high }) => `${x(openingMm)} ${y(high)}`),
    ...[...points].reverse().map(({ openingMm, low }) => `${x(openingMm)} ${y(low)}`),
  ].join('L')

const round = (value: number) => Math.round(value * 10) / 10
