import { materialBy } from '#lib/content/known-materials.ts'
import type { TableRow } from '#lib/content/types.ts'
import { ingredient } from '#lib/entry/recipe.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Range } from '#lib/mortar/range.ts'
import { inSentence, labelOf } from '../_ui/label.ts'
import { ratioText } from '../_ui/ratio-text.ts'
import { workedProportions } from '../_ui/worked.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('write')
const stateLabel = (state: string) => inSentence(labelOf('measured-states', state))

/** Dry loose sand and earth to one of lime by volume, for each state of the lime that can be told. */
function ratiosOf(ingredients: readonly IngredientInput[]): [state: string, ratio: Range][] {
  const worked = workedProportions(ingredients)
  if (!worked.ok) return []
  return LIME_STATES.flatMap((state): [string, Range][] => {
    const ratio = worked.value.states[state]?.aggregateDry
    return ratio ? [[state, ratio]] : []
  })
}

/** What a mix comes to, in one sentence; undefined where it cannot be worked out. */
export function ratiosNote(title: string, ingredients: readonly IngredientInput[]): string | undefined {
  const ratios = ratiosOf(ingredients).map(([state, ratio]) =>
    t('form.ratioState', { ratio: ratioText(ratio), state: stateLabel(state) }),
  )
  return ratios.length === 0 ? undefined : t('form.ratio', { title, ratios: formatList(ratios) })
}

/** The same for ingredients that are still being typed: those that are whole count, and all must be. */
export function mixNote(ingredients: unknown): string | undefined {
  const whole = wholeIngredients(ingredients)
  return whole === null ? undefined : ratiosNote(t('form.asTyped'), whole)
}

/** Ingredients that can be worked with; null unless every one that was begun is. What was mixed names no roles. */
function wholeIngredients(ingredients: unknown): IngredientInput[] | null {
  if (!Array.isArray(ingredients) || ingredients.length === 0) return null
  const whole = ingredients.flatMap((item: { material?: string }) => {
    const { supplier, batch, certificate, ...rest } = { supplier: 0, batch: 0, certificate: 0, ...item }
    const role = materialBy(item.material ?? '')?.role
    const parsed = ingredient.safeParse({ role, ...rest })
    return parsed.success ? [parsed.data] : []
  })
  return whole.length === ingredients.length ? whole : null
}

/** Says so where the parts stated lie outside the range of a row that a recipe says it follows. */
export function compareWithRow(ingredients: unknown, row: TableRow, label: string): string | undefined {
  const whole = wholeIngredients(ingredients)
  if (whole === null) return undefined
  const theirs = new Map(ratiosOf(row.ingredients))
  for (const [state, ours] of ratiosOf(whole)) {
    const range = theirs.get(state)
    if (range && (ours.high < range.low || ours.low > range.high))
      return t('form.outside', {
        ratio: ratioText(ours),
        state: stateLabel(state),
        row: label,
        low: ratioText({ low: range.low, typical: range.low, high: range.low }),
        high: ratioText({ low: range.high, typical: range.high, high: range.high }),
      })
  }
  return undefined
}
