import { sheetOf } from '#lib/api/job.ts'
import { asItStands, recipeBySlug } from '#lib/db/recipes.ts'
import { makeKeptFigures } from '#lib/entry/kept-sheet.ts'
import type { Typed } from '../_http/form.ts'
import { wholeNumber } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { formFaults } from '../recipes/[slug]/job/form-faults.ts'
import { readInputs } from '../recipes/[slug]/job/read-inputs.ts'
import { addressOf, versionsNow } from '../recipes/[slug]/job/versions.ts'
import { workedFrom } from '../recipes/[slug]/job/worked-from.tsx'
import { freezeBlocks } from './freeze.ts'
import { jobBlocks } from './job-blocks.ts'
import { printedLines } from './printed.ts'
import type { Working } from './worked-sheet.ts'

/** A job sheet worked from what its address holds; null where there is no such recipe. */
export async function workedJob(
  slug: string,
  path: string,
  typed: Typed,
  latest: boolean,
): Promise<Working | null> {
  const revision = latest ? undefined : wholeNumber(typed.r)
  const found = await recipeBySlug(slug, revision)
  if (!found) return null
  const recipe = asItStands(found)
  const inputs = readInputs(typed, slug, recipe, found.revision)
  if (inputs.fresh) return { ok: false, sentences: [words('kept')('new.fresh')] }
  const outcome = inputs.request && sheetOf(recipe, inputs.request)
  if (!outcome?.ok) {
    const faults = formFaults(inputs, outcome ? outcome.faults : inputs.faults)
    return { ok: false, sentences: faults.map(({ sentence }) => sentence) }
  }
  const sheet = outcome.value
  const versions = versionsNow(sheet, found.revision)
  const blocks = jobBlocks({ sheet, recipe, inputs }).flatMap((block) =>
    block.kind === 'list' ? [block] : freezeBlocks([block], inputs.system),
  )
  return {
    ok: true,
    sheet: {
      calculation: 'job',
      title: recipe.title,
      address: addressOf(path, inputs.typed, versions),
      system: inputs.system,
      versions,
      recipe: {
        slug,
        revision: found.revision,
        title: recipe.title,
        invented: recipe.invented === true,
      },
      figures: makeKeptFigures({ inputs: workedFrom(inputs), blocks, printed: printedLines(blocks) }),
    },
  }
}
