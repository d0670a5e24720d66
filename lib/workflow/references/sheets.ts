import { readKeptFigures } from '#lib/entry/kept-sheet.ts'
import { copyOf, isSameCopy, type WorkedOn, workedOn } from '#lib/entry/worked-on.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { Check } from './find.ts'

/**
 * The copies of kept sheets that are not what they say: each must be of a sheet that the author keeps, or stand just so
 * in an earlier version of the entry.
 */
export async function foreignSheets(
  sheets: readonly WorkedOn[] | undefined,
  { tx, slug, authorKey }: Pick<Check, 'tx' | 'slug' | 'authorKey'>,
): Promise<FieldFault[]> {
  if (sheets === undefined || sheets.length === 0) return []
  const ids = sheets.map(({ sheet }) => sheet)
  const kept = await tx.keptSheet.findMany({ where: { id: { in: ids }, ownerKey: authorKey } })
  const own = kept.map(({ figures, recipeSlug, recipeRevision, ...row }) =>
    copyOf({
      ...row,
      figures: readKeptFigures(figures),
      recipe: recipeSlug === null ? null : { slug: recipeSlug, revision: recipeRevision ?? 1 },
    }),
  )
  const before = await tx.$queryRaw<{ copy: unknown }[]>`
    SELECT DISTINCT s.copy FROM "Entry" e JOIN "Revision" r ON r."entryId" = e.id
    CROSS JOIN LATERAL jsonb_array_elements(
      CASE jsonb_typeof(r.body -> 'sheets') WHEN 'array' THEN r.body -> 'sheets' ELSE '[]'::jsonb END
    ) AS s(copy)
    WHERE e.slug = ${slug}`
  const earlier = before.flatMap(({ copy }) => workedOn.safeParse(copy).data ?? [])
  return sheets.flatMap((copy, i) => {
    const field = `sheets.${i}.sheet`
    if (ids.indexOf(copy.sheet) < i) return [{ field, code: 'repeated', value: copy.title }]
    if ([...own, ...earlier].some((one) => isSameCopy(one, copy))) return []
    return [{ field, code: 'unknown-sheet', value: copy.title }]
  })
}
