import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Frame } from './frame.tsx'
import {
  apart,
  bandPath,
  curvePaths,
  NARROW_PLOT,
  PLOT,
  type PlotBox,
  type PlotCurve,
  plotScales,
} from './plot.ts'
import { Hatchings, hatchId } from './plot-hatch.tsx'
import { withUnit } from './quantity.tsx'

const t = words('evidence')

interface Drawn {
  readonly id: string
  readonly title: string
  readonly text: string
  readonly yLabel: string
  readonly curves: readonly PlotCurve[]
  readonly marks: readonly number[]
}

/**
 * Shares over the years with their bands, one curve for each group, drawn once for wide pages and once for narrow
 * ones. The table beside it says the same in numbers; the drawing is one image to a screen reader, named by `title`
 * and told by `text`.
 *
 * @param props.marks years at which each curve carries its group's mark
 */
export function CurvePlot(props: Drawn) {
  return (
    <>
      <Frame label={props.title}>
        <Curves {...props} box={PLOT} />
        <Curves {...props} id={`${props.id}-narrow`} box={NARROW_PLOT} isNarrow />
      </Frame>
      <ul className="chart-key plot-narrow" aria-label={t('plot.curves')}>
        {props.curves.map(({ key, label }, index) => (
          <li key={key}>
            <svg className="plot-swatch" width="34" height="16" viewBox="0 0 34 16" aria-hidden="true">
              <g className={`plot-line-${index}`}>
                <path className="plot-level" d="M0 8H34" />
                <PlotMark index={index} x={17} y={8} />
              </g>
            </svg>
            {label}
          </li>
        ))}
      </ul>
    </>
  )
}

function Curves(props: Drawn & { box: PlotBox; isNarrow?: boolean }) {
  const { id, title, text, yLabel, curves, marks, box, isNarrow = false } = props
  const scales = plotScales(Math.max(...curves.map(({ endYears }) => endYears)), box)
  const paths = curves.map((curve) => curvePaths(curve, scales))
  return (
    <svg
      className={isNarrow ? 'plot plot-narrow' : 'plot plot-wide'}
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-text`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-text`}>{text}</desc>
      <Hatchings plot={id} of={curves.map((_, index) => index)} name="plot-band" />
      <Axes yLabel={yLabel} box={box} steps={isNarrow ? 5 : 8} {...scales} />
      {curves.map((curve, index) => (
        <path
          key={curve.key}
          className={`plot-edge plot-band-${index}`}
          d={bandPath(curve, scales)}
          fill={`url(#${hatchId(id, index)})`}
        />
      ))}
      {curves.map((curve, index) => (
        <g key={curve.key} className={`plot-line-${index}`}>
          <path className="plot-drop" d={paths[index]?.drop} />
          <path className="plot-level" d={paths[index]?.level} />
          {marks
            .filter((years) => curve.endYears > years)
            .map((years) => (
              <PlotMark key={years} index={index} x={scales.x(years)} y={scales.y(shareAt(curve, years))} />
            ))}
        </g>
      ))}
      {!isNarrow && <Names curves={curves} ends={paths.map(({ end }) => scales.y(end))} box={box} />}
    </svg>
  )
}

/** Each curve's mark and name beside its end. */
function Names(props: { curves: readonly PlotCurve[]; ends: readonly number[]; box: PlotBox }) {
  const { curves, ends, box } = props
  const right = box.width - box.right
  const heights = apart(
    ends.map((end) => end + 4),
    17,
    box.height - box.bottom,
  )
  return curves.map(({ key, label }, index) => (
    <g key={key} className={`plot-line-${index}`}>
      <PlotMark index={index} x={right} y={(heights[index] ?? 0) - 4} shift={9} />
      <text x={right + 19} y={heights[index]}>
        {shortName(label)}
      </text>
    </g>
  ))
}

/** What fits beside a curve; a list above or a key below has the whole name. */
const shortName = (label: string) => (label.length > 18 ? `${label.slice(0, 17)}…` : label)

/** The middle of what the curve may be at that time. */
function shareAt({ drops }: PlotCurve, years: number): number {
  let share = 1
  for (const { fromYears, toYears, mass } of drops) {
    if (toYears !== null && toYears <= years) share -= mass
    else if (toYears !== null && fromYears < years)
      share -= mass * ((years - fromYears) / (toYears - fromYears))
  }
  return share
}

function Axes(props: ReturnType<typeof plotScales> & { yLabel: string; box: PlotBox; steps: number }) {
  const { x, y, yLabel, box, steps } = props
  const bottom = box.height - box.bottom
  const right = box.width - box.right
  return (
    <g>
      {y.ticks(5).map((tick) => (
        <g key={tick}>
          <line className="plot-grid" x1={box.left} x2={right} y1={y(tick)} y2={y(tick)} />
          <text x={box.left - 7} y={y(tick) + 4} textAnchor="end">
            {withUnit(formatNumber(tick * 100, 0), '%')}
          </text>
        </g>
      ))}
      {x.ticks(steps).map((tick) => (
        <g key={tick}>
          <line className="plot-axis" x1={x(tick)} x2={x(tick)} y1={bottom} y2={bottom + 5} />
          <text x={x(tick)} y={bottom + 19} textAnchor="middle">
            {formatNumber(tick)}
          </text>
        </g>
      ))}
      <path className="plot-axis" d={`M${box.left} ${box.top}V${bottom}H${right}`} />
      <text x={(box.left + right) / 2} y={box.height - 6} textAnchor="middle">
        {t('plot.years')}
      </text>
      <text
        x={12}
        y={(box.top + bottom) / 2}
        textAnchor="middle"
        transform={`rotate(-90 12 ${(box.top + bottom) / 2})`}
      >
        {yLabel}
      </text>
    </g>
  )
}

const SHAPES = ['M-4 0A4 4 0 1 0 4 0A4 4 0 1 0 -4 0Z', 'M-4 -4H4V4H-4Z', 'M0 -5L5 4H-5Z'] as const

/** A group's own mark: disc, square, triangle. */
export const PlotMark = (props: { index: number; x: number; y: number; shift?: number }) => (
  <path
    className="plot-mark"
    d={SHAPES[props.index]}
    transform={`translate(${props.x + (props.shift ?? 0)} ${props.y})`}
  />
)
