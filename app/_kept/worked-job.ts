import { makeKeptFigures } from '#lib/entry/kept-sheet.ts'
import type { Typed } from '../_http/form.ts'
import { words } from '../_words/index.ts'
import { addressOf } from '../recipes/[slug]/job/versions.ts'
import { workSheet } from '../recipes/[slug]/job/work-sheet.ts'
import { workedFrom } from '../recipes/[slug]/job/worked-from.tsx'
import { freezeBlocks } from './freeze.ts'
import { jobBlocks } from './job-blocks.ts'
import { printedLines } from './printed.ts'
import type { Working } from './worked-sheet.ts'

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
  const { body: recipe, revision } = entry
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
      recipe: { slug, revision, title: recipe.title, invented: recipe.invented },
      figures: makeKeptFigures({ inputs: workedFrom(inputs), blocks, printed: printedLines(blocks) }),
    },
  }
}
