import { readBody } from '#lib/entry/body.ts'
import { ERASED } from '#lib/entry/erased.ts'
import { rememberMaterials } from '#lib/entry/known-materials.ts'
import { db } from './client.ts'

/** Reads the published material entries among these ids, so that they are known as they stand now. */
export async function readMaterials(ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return
  const rows = await db().$queryRaw<{ slug: string; body: unknown; shape: number }[]>`
    SELECT e.slug, r.body, r.shape FROM "Entry" e JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE e.kind = 'material' AND e.slug = ANY(${ids}::text[]) AND r.body <> ${ERASED}::jsonb`
  rememberMaterials(
    ids,
    rows.map(({ slug, body, shape }) => ({ slug, body: readBody('material', body, shape) })),
  )
}

interface Mixing {
  readonly ingredients?: readonly { readonly material?: string }[]
  readonly works?: readonly { readonly mixed?: Mixing }[]
}

/** Ids of the materials that a recipe, a row or the works of a case name; of a body that may not be whole yet. */
export const materialsIn = (body: unknown): string[] => {
  const { ingredients = [], works = [] } = body as Mixing
  return [
    ...ingredients.flatMap(({ material }) => material ?? []),
    ...works.flatMap(({ mixed }) => (mixed === undefined ? [] : materialsIn(mixed))),
  ]
}
