import { z } from 'zod'
import { content } from '#lib/content/index.ts'
import { materialBy } from '#lib/content/known-materials.ts'
import { asItStands, recipeBySlug } from '#lib/db/recipes.ts'
import { slug } from '#lib/entry/fields.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { STANDINGS } from '#lib/entry/terms.ts'
import { Refusal } from '#lib/errors.ts'
import { toRange } from '#lib/mortar/amount.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { workJob } from '#lib/mortar/job.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { PROPERTY_UNITS, type Properties, type PropertyName } from '#lib/mortar/material.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { type JobRequest, jobRequest } from './job-request.ts'
import { jobSheet } from './job-sheet.ts'
import { operation } from './operation.ts'

/**
 * A recipe scaled to a job with the site's own material figures, and those of materials that people added.
 *
 * Faults name fields as {@link JobRequest} does; one that is not in use is refused without an override.
 */
export function sheetOf(recipe: RecipeBody, request: JobRequest): Outcome<JobSheet> {
  if (recipe.standing !== 'in-use' && request.override === undefined)
    return { ok: false, faults: [{ field: 'override.reason', code: 'empty' }] }
  const materials = recipe.ingredients.map(({ material }) => material)
  const strangers = Object.keys(request.materialFigures ?? {}).filter((id) => !materials.includes(id))
  if (strangers.length > 0)
    return {
      ok: false,
      faults: strangers.map((id) => ({ field: `materialFigures.${id}`, code: 'unknown', value: id })),
    }
  const { recipe: _, revision: __, override: ___, materialFigures, ...given } = request
  const stated = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined))
  return workJob({
    ...(stated as Pick<JobRequest, 'work'>),
    ingredients: recipe.ingredients,
    method: recipe.method,
    materials: withOwn(propertiesOf(materials), materialFigures ?? {}),
  })
}

/** The site's own figures in place of those that are known of a material. */
function withOwn(
  materials: Readonly<Record<string, Properties>>,
  own: NonNullable<JobRequest['materialFigures']>,
): Record<string, Properties> {
  const figures = Object.entries(own).map(([id, given]) => {
    const measured = Object.entries(given).flatMap(([name, amount]) =>
      amount === undefined
        ? []
        : [[name, { ...toRange(amount), unit: PROPERTY_UNITS[name as PropertyName], basis: 'measured' }]],
    )
    return [id, { ...materials[id], ...Object.fromEntries(measured) }]
  })
  return { ...materials, ...Object.fromEntries(figures) }
}

function propertiesOf(ids: readonly string[]): Record<string, Properties> {
  return Object.fromEntries(
    ids.flatMap((id) => {
      const known = materialBy(id)
      return known ? [[id, known.properties]] : []
    }),
  )
}

/** Works out a job from a stored recipe, as the page does. */
export const jobOperation = operation({
  id: 'workJob',
  method: 'POST',
  path: '/api/v1/job',
  summary:
    'A job sheet from a stored recipe: quantities on site and as bought, batches, water, heat, working',
  body: jobRequest,
  answer: z.object({
    recipe: z.object({ slug, revision: z.int().positive(), standing: z.enum(STANDINGS) }),
    /** With the revision, what the figures were made from. */
    edition: z.string(),
    sums: z.int().positive(),
    override: z.object({ reason: z.string() }).optional(),
    sheet: jobSheet,
  }),
  async run({ body }) {
    const recipe = await recipeBySlug(body.recipe, body.revision)
    if (!recipe) throw new Refusal('not-found', 'No such recipe is published.')
    const outcome = sheetOf(asItStands(recipe), body)
    if (!outcome.ok) throw new Refusal('invalid', 'The sums refuse what was given.', outcome.faults)
    return {
      recipe: { slug: recipe.slug, revision: recipe.revision, standing: recipe.standing },
      edition: content().edition,
      sums: SUMS_VERSION,
      ...(body.override && { override: body.override }),
      sheet: jobSheet.parse(outcome.value),
    }
  },
})
