import type { JobSheet } from '#lib/mortar/job-types.ts'
import type { Typed } from '../_http/form.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { digestOf } from '../recipes/[slug]/job/figures.ts'
import type { WorkRead } from '../recipes/[slug]/job/read-inputs.ts'
import { addressOf } from '../recipes/[slug]/job/versions.ts'
import { workSheet } from '../recipes/[slug]/job/work-sheet.ts'
import { workedFrom } from '../recipes/[slug]/job/worked-from.tsx'
import { jobBlocks } from './job/blocks.ts'
import { within } from './within.ts'
import type { Working } from './worked-sheet.ts'

/** What it may be called until its owner names it: its works, and none of the recipe's words. */
const titleOf = (works: readonly WorkRead[]): string =>
  formatList([...new Set(works.map(({ kind }) => words('job')(`kinds.${kind}`)))]).slice(0, 120)

/** The sheet as it is where neither prices nor pay were entered. */
const withoutCosts = (sheet: JobSheet): JobSheet => ({
  ...sheet,
  cost: null,
  ingredients: sheet.ingredients.map((one) => ({ ...one, cost: null })),
})

/** A job sheet worked from what its address holds; null where there is no such recipe. */
export async function workedJob(
  slug: string,
  path: string,
  { r, ...typed }: Typed,
  latest: boolean,
): Promise<Working | null> {
  const job = await workSheet(slug, latest ? typed : { ...typed, r })
  if (!job) return null
  const { recipe: entry, inputs, sheet, versions, faults } = job
  if (inputs.fresh) return { ok: false, sentences: [words('kept')('new.fresh')] }
  if (!sheet || !versions) return { ok: false, sentences: faults.map(({ sentence }) => sentence) }
  const { body: recipe, revision, standingFrom } = entry
  const blocks = jobBlocks({ sheet, recipe, inputs })
  const kept = within(workedFrom(inputs), blocks, sheet.cost ? digestOf(withoutCosts(sheet)) : undefined)
  if (!kept.ok) return kept
  return {
    ok: true,
    sheet: {
      calculation: 'job',
      title: titleOf(inputs.works),
      address: addressOf(path, inputs.typed, versions),
      system: inputs.system,
      versions,
      recipe: { slug, revision, standingFrom, title: recipe.title, invented: recipe.invented },
      figures: kept.figures,
    },
  }
}
