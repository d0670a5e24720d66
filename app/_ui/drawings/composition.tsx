import { useId } from 'react'
import type { Drawn } from '#lib/entry/kept-drawn.ts'
import { words } from '../../_words/index.ts'
import { Hatchings, hatchId } from '../plot-hatch.tsx'
import { quantityText } from '../quantity.tsx'
import type { MixLine, MixPart, PartKind } from './composition-numbers.ts'

const WIDTH = 280
const LINE = 46
const BAR = { top: 18, height: 20 }
const KEY = 20
/** A part narrower than this has no room for its figure. */
const ROOM = 32
/** Which hatching each kind of part has; none: it is paper. */
const HATCH: Readonly<Record<PartKind, number | null>> = {
  lime: null,
  filler: 6,
  other: 1,
  solids: 4,
  water: 3,
  air: null,
}

interface Props {
  readonly lines: readonly MixLine[]
  /** What a state of lime is called. */
  readonly stateLabel: (state: string) => string
  readonly materialLabel: (material: string) => string
}

/** The same mix by volume, a line for each state of its lime, before and after slaking, and as mortar. */
export function Composition({ lines, stateLabel, materialLabel }: Props) {
  const t = words('workOut')
  const plot = useId().replace(/\W/g, '')
  const widest = Math.max(...lines.map(({ parts }) => totalOf(parts)))
  const scale = (WIDTH - 2) / widest
  const keys = keyOf(lines)
  const height = lines.length * LINE + keys.length * KEY
  const fill = (kind: PartKind) => {
    const hatch = HATCH[kind]
    return hatch === null ? undefined : `url(#${hatchId(plot, hatch)})`
  }
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${WIDTH} ${height}`}
      width={WIDTH}
      height={height}
      aria-hidden="true"
    >
      <Hatchings plot={plot} of={[1, 3, 4, 6]} />
      {lines.map(({ state, when, parts }, row) => (
        <g key={state}>
          <text x="0" y={row * LINE + 13}>
            {state === 'mortar'
              ? t('drawings.composition.mixed')
              : t('drawings.composition.line', {
                  when: t(`drawings.composition.${when}`),
                  state: stateLabel(state),
                })}
          </text>
          {placed(parts, scale).map(({ part, x, width }, place) => (
            <g key={`${part.kind}-${part.material ?? place}`}>
              <rect
                className={`drawn-part drawn-part-${part.kind}`}
                x={x + 1}
                y={row * LINE + BAR.top}
                width={width}
                height={BAR.height}
                fill={fill(part.kind)}
              />
              {width > ROOM && part.kind === 'lime' && (
                <text x={x + width / 2} y={row * LINE + BAR.top + 15} textAnchor="middle">
                  {amountText(part.amount)}
                </text>
              )}
            </g>
          ))}
        </g>
      ))}
      {keys.map((part, place) => (
        <g key={nameOf(part, materialLabel)}>
          <rect
            className={`drawn-part drawn-part-${part.kind}`}
            x="1"
            y={lines.length * LINE + place * KEY + 2}
            width="22"
            height="13"
            fill={fill(part.kind)}
          />
          <text x="30" y={lines.length * LINE + place * KEY + 14}>
            {nameOf(part, materialLabel)}
          </text>
        </g>
      ))}
    </svg>
  )
}

const totalOf = (parts: readonly MixPart[]) => parts.reduce((sum, { amount }) => sum + amount, 0)

function placed(parts: readonly MixPart[], scale: number) {
  let x = 0
  return parts.map((part) => {
    const width = part.amount * scale
    x += width
    return { part, x: x - width, width }
  })
}

/** Every kind of part once, materials by name. */
const keyOf = (lines: readonly MixLine[]): MixPart[] => {
  const all = lines.flatMap(({ parts }) => parts)
  return all.filter(
    (part, place) =>
      all.findIndex((one) => one.kind === part.kind && one.material === part.material) === place,
  )
}

function nameOf({ kind, material }: MixPart, materialLabel: Props['materialLabel']): string {
  if (material !== undefined) return materialLabel(material)
  return words('workOut')(`drawings.composition.${kind as 'lime' | 'solids' | 'water' | 'air'}`)
}

const amountText = (amount: number) => quantityText(Number(amount.toPrecision(2)), '1').main

/** The same in words. */
export function compositionSays({ lines, stateLabel, materialLabel }: Props): string {
  const t = words('workOut')
  const fillers = (lines[0]?.parts ?? []).filter(({ kind }) => kind === 'filler')
  const states = lines
    .filter(({ state }) => state !== 'mortar')
    .map(({ state, parts }) =>
      t('drawings.composition.state', {
        amount: amountText(parts[0]?.amount ?? 0),
        state: stateLabel(state),
      }),
    )
    .join(', ')
  const [filler] = fillers
  const mortar = lines.find(({ state }) => state === 'mortar')
  const of = (kind: PartKind) => mortar?.parts.find((part) => part.kind === kind)?.amount
  const air = of('air')
  return [
    filler?.material !== undefined && fillers.length === 1
      ? t('drawings.composition.says', { fill: '1', filler: materialLabel(filler.material), states })
      : t('drawings.composition.saysBare', { states }),
    ...(mortar
      ? [
          t('drawings.composition.mortar', {
            amount: amountText(totalOf(mortar.parts)),
            water: amountText(of('water') ?? 0),
            air: air === undefined ? 'none' : amountText(air),
          }),
        ]
      : []),
    t('drawings.composition.usual'),
  ].join(' ')
}

/** The same as data: its lines with the names that stand in it. */
export function drawnFrom({ lines, stateLabel, materialLabel }: Props): Drawn {
  const materials = lines.flatMap(({ parts }) => parts.flatMap(({ material }) => material ?? []))
  const named = (ids: readonly string[], label: (id: string) => string) =>
    Object.fromEntries(ids.map((id) => [id, label(id)]))
  return {
    of: 'composition',
    lines,
    states: named(
      lines.map(({ state }) => state).filter((state) => state !== 'mortar'),
      stateLabel,
    ),
    materials: named(materials, materialLabel),
  }
}
