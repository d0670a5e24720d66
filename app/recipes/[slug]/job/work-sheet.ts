import { sheetOf } from '#lib/api/job.ts'
import { asItStands, recipeBySlug } from '#lib/db/recipes.ts'
import { typedFrom } from '../../../_http/form.ts'
import { type Query, wholeNumber } from '../../../_ui/query.ts'
import { formFaults } from './form-faults.ts'
import { readInputs } from './read-inputs.ts'
import { versionsNow } from './versions.ts'

/** A job as its address has it: the recipe, the form, and the sheet or what is to be mended. */
export async function workSheet(slug: string, query: Query) {
  const found = await recipeBySlug(slug, wholeNumber(query.r))
  if (!found) return undefined
  const recipe = { ...found, body: asItStands(found) }
  const inputs = readInputs(typedFrom(query), slug, recipe.body, recipe.revision)
  const outcome = inputs.request && sheetOf(recipe.body, inputs.request)
  const sheet = outcome?.ok ? outcome.value : undefined
  // A recipe that is not in use has no example: its sheet waits for a reason, and nobody has been asked for it yet.
  const unasked = inputs.fresh && recipe.body.standing !== 'in-use' && !inputs.overridden
  return {
    recipe,
    inputs,
    sheet,
    versions: sheet && versionsNow(sheet, recipe.revision),
    faults:
      sheet || unasked ? [] : formFaults(inputs, outcome && !outcome.ok ? outcome.faults : inputs.faults),
    /** The revision, where it is not the one published now. */
    earlier: recipe.revision < recipe.latest ? recipe.revision : undefined,
  }
}
