import { materialBy } from '#lib/content/known-materials.ts'
import type { Parts } from '#lib/entry/fields.ts'
import type { Measure, MeasuredState } from '#lib/entry/terms.ts'
import { formatList, formatParts } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { inSentence, labelOf, materialLabel } from './label.ts'

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

/**
 * `1 fat lime (putty) : 3 pit sand`; the measure stands with each ingredient where they differ. A lime always
 * says its state, also when nobody said it.
 */
export function proportionText(ingredients: readonly Stated[]): string {
  const mixed = new Set(ingredients.map(({ by }) => by)).size > 1
  return ingredients
    .map((one) => {
      const parts = one.parts === null ? '' : `${partsText(one.parts)} `
      const state = stateIn(one)
      const how = mixed ? [...state, words('common')(`measure.${one.by}`)] : state
      return `${parts}${inSentence(materialLabel(one.material))}${how.length > 0 ? ` (${how.join(', ')})` : ''}`
    })
    .join(' : ')
}

function stateIn({ material, state }: Stated): string[] {
  if (state === 'dry') return []
  if (state !== 'not-stated') return [inSentence(stateLabel(state))]
  return materialBy(material)?.role === 'lime' ? [words('common')('parts.stateOpen')] : []
}

/** How all of them were measured: `By volume`, `By mass`, or both. */
export function measureText(ingredients: readonly Stated[]): string {
  const text = formatList(
    [...new Set(ingredients.map(({ by }) => by))].map((by) => words('common')(`measure.${by}`)),
  )
  return text.charAt(0).toUpperCase() + text.slice(1)
}

export const stateLabel = (state: MeasuredState): string => labelOf('measured-states', state)
