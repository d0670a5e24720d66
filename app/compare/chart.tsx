import type { TableRow } from '#lib/content/types.ts'
import type { Standing } from '#lib/entry/terms.ts'
import { Frame } from '../_ui/frame.tsx'
import { labelOf } from '../_ui/label.ts'
import { ratioText } from '../_ui/ratio-text.ts'
import { formatParts } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { CHART, type Compared, type PlacedBand, placeBands, ratioScale } from './columns.ts'

const t = words('library')

/** Was the lime's state left open by the source? */
const isOpen = (row: TableRow): boolean =>
  row.ingredients.some(({ role, state }) => role === 'lime' && state.endsWith('not-stated'))

/**
 * Rows along the years, each a bar for its range and a mark for its typical value. The table below says the
 * same and carries the same links, so the drawing is hidden from the keyboard and from screen readers.
 *
 * @param props.all the rows whose ratios the scale must hold, so that two charts can share its ends
 * @param props.bottom height of the ground line, in the drawing's own units
 */
export function CenturyChart(props: {
  label: string
  rows: readonly Compared[]
  all: readonly Compared[]
  bottom: number
}) {
  const { y, ticks } = ratioScale(props.all, props.bottom)
  const bands = placeBands(props.rows)
  const end = bands.at(-1)?.right ?? CHART.right
  return (
    <Frame label={props.label}>
      <svg className="chart" viewBox={`0 0 ${CHART.width} ${props.bottom + CHART.foot}`} aria-hidden="true">
        {ticks.map((tick) => (
          <g key={tick}>
            <line
              className={tick === 1 ? 'chart-line chart-line-one' : 'chart-line'}
              x1={CHART.left}
              x2={end}
              y1={y(tick)}
              y2={y(tick)}
            />
            <text x={CHART.left - 8} y={y(tick) + 4} textAnchor="end">
              {t('compare.axis', { parts: formatParts(tick) })}
            </text>
          </g>
        ))}
        {bands.map((band) => (
          <Band key={band.id} band={band} y={y} bottom={props.bottom} />
        ))}
      </svg>
    </Frame>
  )
}

const Band = (props: { band: PlacedBand; y: (parts: number) => number; bottom: number }) => {
  const { band, y, bottom } = props
  return (
    <g>
      <path
        className="chart-ground"
        d={`M${band.left + 3} ${bottom + 8}H${band.right - 3}${band.isAfterGap ? `M${band.left - 4} ${bottom + 13}l4 -10M${band.left} ${bottom + 13}l4 -10` : ''}`}
      />
      <text x={(band.left + band.right) / 2} y={bottom + 26} textAnchor="middle">
        {t(`compare.band.${band.id}`)}
      </text>
      {band.columns.map(({ x, row, ratio }) => (
        <a key={row.ref} href={`/tables/${row.ref}`} tabIndex={-1}>
          <title>
            {t('compare.mark', {
              label: row.label,
              value: ratioText(ratio),
              region: row.region,
              period: row.period,
              standing: labelOf('standings', row.standing),
            })}
          </title>
          <Bar x={x} half={band.half} top={y(ratio.high)} bottom={y(ratio.low)} open={isOpen(row)} />
          <StandingShape
            standing={row.standing}
            x={x}
            y={y(ratio.typical)}
            size={row.ancestor === undefined ? 3.2 : 2}
          />
        </a>
      ))}
    </g>
  )
}

/** The range: filled where the state of the lime is given, hollow where it is open. */
export const Bar = (props: { x: number; half: number; top: number; bottom: number; open: boolean }) => (
  <rect
    className={props.open ? 'chart-bar chart-bar-open' : 'chart-bar'}
    x={props.x - props.half}
    y={props.top}
    width={2 * props.half}
    height={Math.max(1.5, props.bottom - props.top)}
  />
)

/** The typical value, in the shape of the row's standing. */
export function StandingShape(props: { standing: Standing; x: number; y: number; size: number }) {
  const { standing, x, y, size } = props
  if (standing === 'known-hazard')
    return (
      <path
        className="chart-mark chart-mark-hazard"
        d={`M${x} ${y - size * 1.5}l${size * 1.4} ${size * 2.4}h${size * -2.8}Z`}
      />
    )
  return (
    <circle
      className={standing === 'in-use' ? 'chart-mark' : 'chart-mark chart-mark-hollow'}
      cx={x}
      cy={y}
      r={size}
    />
  )
}
