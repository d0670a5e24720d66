import { BOILING_C } from '#lib/mortar/constants.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { SlakingPoint } from '#lib/mortar/slaking-course.ts'
import { convertRange, shownUnit } from '#lib/mortar/units.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { quantityText, withUnit } from '../quantity.tsx'
import type { System } from './lengths.ts'
import { SLAKE_BOX, type SlakePanel, slakeGeometry } from './slake-geometry.ts'

interface Props {
  readonly points: readonly SlakingPoint[]
  readonly system: System
}

/** Average temperature and free water over the slake, by the share of the free lime that has slaked. */
export function SlakeCourse({ points, system }: Props) {
  const t = words('workOut')
  const { temperature, water, boilingY, marks } = slakeGeometry(points, system)
  const { width, height, left, right } = SLAKE_BOX
  const named = (unit: string) => withUnit('', unit).trim()
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
    >
      <Panel panel={temperature} title={t('drawings.slake.temperature', { unit: named(temperature.unit) })} />
      <path className="drawn-limit" d={`M${left} ${boilingY}H${right}`} />
      <text x={right} y={boilingY - 4} textAnchor="end">
        {t('drawings.slake.boiling')}
      </text>
      <Panel panel={water} title={t('drawings.slake.waterAxis', { unit: named(water.unit) })} />
      {marks.map(({ share, x }) => (
        <text key={share} x={x} y={water.bottom + 17} textAnchor={share === 100 ? 'end' : 'middle'}>
          {formatNumber(share)}
        </text>
      ))}
      <text x={left} y={height - 6}>
        {t('drawings.slake.shares')}
      </text>
    </svg>
  )
}

function Panel({ panel: { marks, line, band, top, bottom }, title }: { panel: SlakePanel; title: string }) {
  const { left, right } = SLAKE_BOX
  return (
    <>
      <text x="0" y={top - 12}>
        {title}
      </text>
      {marks.map(({ value, y }) => (
        <g key={value}>
          <path className="drawn-grid" d={`M${left} ${y}H${right}`} />
          <text x={left - 6} y={y + 5} textAnchor="end">
            {formatNumber(value)}
          </text>
        </g>
      ))}
      <path className="drawn-band" d={band} />
      <path className="drawn-course" d={line} />
      <path className="drawn-line" d={`M${left} ${top}V${bottom}H${right}`} />
    </>
  )
}

/** The same in words: from where to where, when it boils, and that it is an average and no sign of safety. */
export function slakeSays({ points, system }: Props): string {
  const t = words('workOut')
  const [start, end] = [points[0], points.at(-1)]
  if (!start || !end) return ''
  const text = (range: Range, metric: string) => {
    const unit = shownUnit(metric, system)
    return quantityText(convertRange(range, metric, unit), unit).main
  }
  const boils = boilingShare(points)
  const dry = points.some(({ share, freeKg }) => share < 1 && freeKg.typical <= 0)
  return [
    t('drawings.slake.says', {
      start: text(start.averageC, 'C'),
      end: text(end.averageC, 'C'),
      water: text(start.freeKg, 'kg'),
      left: text(end.freeKg, 'kg'),
    }),
    ...(boils === undefined
      ? []
      : [t('drawings.slake.boils', { share: quantityText(Math.round(boils * 100), '%').main })]),
    ...(dry ? [t('drawings.slake.dry')] : []),
    t('drawings.slake.average'),
  ].join(' ')
}

/** Share of the free lime slaked when the average comes to boiling: the course runs on straight until then. */
export function boilingShare(points: readonly SlakingPoint[]): number | undefined {
  const at = points.findIndex(({ averageC }) => averageC.typical >= BOILING_C)
  const [before, last, first] = [points[at - 2], points[at - 1], points[at]]
  if (!first || !last) return first?.share
  if (!before) return first.share
  const rise = last.averageC.typical - before.averageC.typical
  const rest = (BOILING_C - last.averageC.typical) / rise
  return Math.min(first.share, last.share + rest * (last.share - before.share))
}
