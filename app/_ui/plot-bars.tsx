import { scaleLinear } from 'd3-scale'
import { stack } from 'd3-shape'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Frame } from './frame.tsx'
import { Hatchings, hatchId } from './plot-hatch.tsx'

const t = words('evidence')
const BAR = 22
/** Names stand before the bars. */
const WIDE = { width: 680, left: 92, right: 64, row: 46, top: 18, isNarrow: false } as const
/** For narrow screens: names and sums stand above the bars. */
const NARROW = { width: 300, left: 1, right: 1, row: 70, top: 42, isNarrow: true } as const
type Layout = typeof WIDE | typeof NARROW

export interface Bar {
  readonly key: string
  readonly label: string
  /** By the key of the kind. */
  readonly counts: Readonly<Record<string, number>>
}

export interface BarKind {
  readonly key: string
  readonly label: string
  /** The number of its hatching. */
  readonly hatch: number
}

/**
 * Bars of equal length parted by kind, with counts above the parts and the sum at the end. The kinds are hatched
 * each in its own way, in the order given; the table beside it says the same.
 */
export function StackedBars(props: {
  id: string
  title: string
  text: string
  kinds: readonly BarKind[]
  /** Keys of the kinds that the key explains: those that occur. */
  shown: readonly string[]
  bars: readonly Bar[]
}) {
  const { id, title, text, kinds, shown, bars } = props
  return (
    <>
      <Frame label={title}>
        {[WIDE, NARROW].map((layout) => {
          const own = layout.isNarrow ? `${id}-narrow` : id
          return (
            <svg
              key={own}
              className={layout.isNarrow ? 'plot plot-narrow' : 'plot plot-wide'}
              viewBox={`0 0 ${layout.width} ${bars.length * layout.row + 8}`}
              role="img"
              aria-labelledby={`${own}-title ${own}-text`}
            >
              <title id={`${own}-title`}>{title}</title>
              <desc id={`${own}-text`}>{text}</desc>
              <Hatchings plot={own} of={kinds.map(({ hatch }) => hatch)} />
              {bars.map((bar, row) => (
                <BarRow
                  key={bar.key}
                  id={own}
                  bar={bar}
                  kinds={kinds}
                  layout={layout}
                  top={row * layout.row + layout.top}
                />
              ))}
            </svg>
          )
        })}
      </Frame>
      <ul className="chart-key" aria-label={t('plot.key')}>
        {kinds.map(
          ({ key, label, hatch }) =>
            shown.includes(key) && (
              <li key={key}>
                <svg className="plot-swatch" width="26" height="16" viewBox="0 0 26 16" aria-hidden="true">
                  <Hatchings plot={`${id}-key`} of={[hatch]} />
                  <rect
                    className="plot-part"
                    x="0.5"
                    y="0.5"
                    width="25"
                    height="15"
                    fill={`url(#${hatchId(`${id}-key`, hatch)})`}
                  />
                </svg>
                {label}
              </li>
            ),
        )}
      </ul>
    </>
  )
}

function BarRow(props: { id: string; bar: Bar; kinds: readonly BarKind[]; layout: Layout; top: number }) {
  const { id, bar, kinds, top } = props
  const { left, right, width, isNarrow } = props.layout
  const line = isNarrow ? top - 24 : top + BAR / 2 + 5
  const sum = kinds.reduce((total, { key }) => total + (bar.counts[key] ?? 0), 0)
  const x = scaleLinear([0, Math.max(1, sum)], [left, width - right])
  const parts = stack<Readonly<Record<string, number>>>()
    .keys(kinds.map(({ key }) => key))
    .value((counts, key) => counts[key] ?? 0)([bar.counts])
  return (
    <g>
      <text x={isNarrow ? left : left - 10} y={line} textAnchor={isNarrow ? 'start' : 'end'}>
        {bar.label}
      </text>
      {parts.map((part, index) => {
        const [from, to] = [x(part[0]?.[0] ?? 0), x(part[0]?.[1] ?? 0)]
        const count = bar.counts[part.key] ?? 0
        return count === 0 ? null : (
          <g key={part.key}>
            <rect
              className="plot-part"
              x={from}
              y={top}
              width={to - from}
              height={BAR}
              fill={`url(#${hatchId(id, kinds[index]?.hatch ?? 0)})`}
            />
            {to - from > 7 * String(count).length + 4 && (
              <text className="plot-count" x={(from + to) / 2} y={top - 4} textAnchor="middle">
                {formatNumber(count)}
              </text>
            )}
          </g>
        )
      })}
      <text x={isNarrow ? width - right : width - right + 8} y={line} textAnchor={isNarrow ? 'end' : 'start'}>
        {t('plot.sum', { count: sum })}
      </text>
    </g>
  )
}
