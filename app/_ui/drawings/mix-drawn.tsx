import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Proportions } from '#lib/mortar/proportions.ts'
import { words } from '../../_words/index.ts'
import { labelOf, materialLabel } from '../label.ts'
import { workedYield } from '../worked.ts'
import { Composition, compositionSays } from './composition.tsx'
import { compositionOf } from './composition-numbers.ts'
import { Drawing } from './drawing.tsx'

/** A recipe by volume in each state of its lime and as mortar; nothing where its quantities do not tell. */
export function MixDrawn(props: { proportions: Proportions; ingredients: readonly IngredientInput[] }) {
  const { proportions, ingredients } = props
  const lines = compositionOf(proportions, ingredients, workedYield(ingredients))
  if (lines.length === 0) return null
  const drawn = { lines, stateLabel: (state: string) => labelOf('measured-states', state), materialLabel }
  return (
    <Drawing title={words('workOut')('drawings.composition.title')} says={compositionSays(drawn)}>
      <Composition {...drawn} />
    </Drawing>
  )
}
