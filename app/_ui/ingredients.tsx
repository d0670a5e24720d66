import type { Parts } from '#lib/entry/fields.ts'
import type { Measure, MeasuredState } from '#lib/entry/terms.ts'
import { formatList, formatParts } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { labelOf, materialLabel } from './label.ts'

export interface Stated {
  readonly material: string
  readonly parts: Parts | null
  readonly by: Measure
  readonly state: MeasuredState
}

/** Parts as their source states them: one figure, or the range with its usual value where one is named. */
export function partsText(parts: Parts | null): string {
  const t = words('common')
  if (parts === null) return t('parts.none')
  const { low, typical, high } = parts
  if (low === high) return formatParts(low)
  const span = t('parts.span', { low: formatParts(low), high: formatParts(high) })
  return typical === undefined ? span : t('parts.usually', { span, typical: formatParts(typical) })
}

/** `1 fat lime, putty : 3 pit sand, dry`; the measure is named once, or with each where they differ. */
export function proportionText(ingredients: readonly Stated[]): string {
  const t = words('common')
  const measures = new Set(ingredients.map(({ by }) => by))
  const named = ingredients.map((one) => {
    const parts = one.parts === null ? '' : `${partsText(one.parts)} `
    const state =
      one.state === 'dry' || one.state === 'not-stated' ? '' : `, ${lowerFirst(stateLabel(one.state))}`
    const by = measures.size > 1 ? ` (${t(`measure.${one.by}`)})` : ''
    return `${parts}${lowerFirst(materialLabel(one.material))}${state}${by}`
  })
  return named.join(' : ')
}

/** How all of them were measured: `by volume`, `by mass`, or both. */
export const measureText = (ingredients: readonly Stated[]): string =>
  formatList([...new Set(ingredients.map(({ by }) => by))].map((by) => words('common')(`measure.${by}`)))

export const stateLabel = (state: MeasuredState): string => labelOf('measured-states', state)

const lowerFirst = (text: string) =>
  /^.[A-Z0-9]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1)
