import type { MaterialBody } from './material.ts'

/** Bodies of material entries as they were read last, by slug. */
const known = new Map<string, MaterialBody>()

/**
 * Says how material entries stand: those of `ids` that are not among `found` are known no more.
 *
 * Reading a recipe, a case or a row reads the materials that it names (`lib/db/materials.ts`), so that every sum and
 * label of a page sees the same figures.
 */
export function rememberMaterials(
  ids: readonly string[],
  found: readonly { readonly slug: string; readonly body: MaterialBody }[],
): void {
  for (const id of ids) known.delete(id)
  for (const { slug, body } of found) known.set(slug, body)
}

/** The body of a material entry that was read; undefined for one that was not, or is not published. */
export const knownMaterial = (slug: string): MaterialBody | undefined => known.get(slug)
