import { LIME_STATES, MEASURES } from '#lib/entry/terms.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import { type Proportions, proportions } from '#lib/mortar/proportions.ts'
import { type RestatedIngredient, restateRecipe } from '#lib/mortar/restate.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { propertiesOf } from '../../_ui/workshop/own-figures.ts'
import { FROM_STATES, fieldsOf, limeProperties, OTHER_ROLES, SAND_PROPERTIES, SAND_STATES } from './fields.ts'
import { show } from './show.tsx'

/** The mortar stated anew, beside its proportions in every state of its lime. */
export interface Converted {
  readonly restated: readonly RestatedIngredient[]
  readonly proportions: Proportions
  readonly ingredients: readonly IngredientInput[]
}

/** The ratio of a mortar on another basis: lime in another state, sand dry or damp, by volume or by mass. */
export const convertRatio: Calculation<Converted> = {
  name: 'convert-ratio',
  uses: ({ role }) => role === 'lime' || (OTHER_ROLES as readonly string[]).includes(role),
  sources: ['iupac-atomic-weights'],
  vocabularies: ['measured-states'],
  fields: fieldsOf,
  work(given, data) {
    const ingredients = ingredientsOf(given, data)
    const materials = materialsOf(given, data)
    const restated = restateRecipe({
      ingredients,
      materials,
      as: {
        limeState: given.choice('to-state', LIME_STATES),
        aggregate: given.choice('to-sand', ['dry', 'damp']),
        by: given.choice('to-by', MEASURES),
      },
    })
    if (!restated.ok) return restated
    const all = proportions({ ingredients, materials })
    return all.ok
      ? { ok: true, value: { restated: restated.value, proportions: all.value, ingredients } }
      : all
  },
  show,
}

function ingredientsOf(given: Given, data: BenchData): IngredientInput[] {
  const by = given.choice('by', MEASURES)
  const sandState = given.choice('sand-state', SAND_STATES)
  const other = given.choice('other', ['', ...Object.keys(data.materials)])
  const role = data.materials[other]?.role
  return [
    {
      material: 'lime',
      role: 'lime',
      parts: given.need('lime-parts'),
      by,
      state: given.choice('state', FROM_STATES),
    },
    { material: 'sand', role: 'aggregate', parts: given.need('sand-parts'), by, state: sandState },
    ...(other === ''
      ? []
      : [
          {
            material: 'other',
            role: OTHER_ROLES.find((one) => one === role) ?? 'aggregate',
            parts: given.need('other-parts'),
            by,
            state: role === 'aggregate' ? sandState : 'dry',
          } satisfies IngredientInput,
        ]),
  ]
}

function materialsOf(given: Given, data: BenchData) {
  const lime = data.materials[given.choice('lime', Object.keys(data.materials))]
  const sand = data.materials[given.choice('sand', Object.keys(data.materials))]
  const other = given.choice('other', ['', ...Object.keys(data.materials)])
  const asked = limeProperties(given.choice('state', FROM_STATES), given.choice('to-state', LIME_STATES))
  return {
    lime: propertiesOf('lime', lime, asked, given),
    sand: propertiesOf('sand', sand, SAND_PROPERTIES, given),
    ...(other !== '' && { other: data.materials[other]?.properties ?? {} }),
  }
}
