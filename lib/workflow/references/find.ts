import type { Content } from '#lib/content/index.ts'
import type { Db } from '#lib/db/client.ts'
import { splitRef } from '#lib/db/projection/source.ts'
import type { LabResult } from '#lib/entry/laboratory.ts'
import type { FieldFault } from '#lib/errors.ts'

/** The parts of content that bodies point into. */
export type References = Pick<Content, 'sources' | 'rows' | 'materials' | 'vocabularies'>

/** What a body is checked against. */
export interface Check {
  readonly tx: Db
  readonly content: References
  readonly slug: string
  /** `YYYY-MM-DD`. */
  readonly today: string
  /** Who submits the body. */
  readonly authorKey: string
}

export function unknown<T>(
  items: readonly T[],
  at: (item: T, index: number) => readonly [field: string, id: string],
  known: ReadonlyMap<string, unknown> | undefined,
): FieldFault[] {
  return items
    .map(at)
    .flatMap(([field, id]) => (known?.has(id) ? [] : [{ field, code: 'unknown', value: id }]))
}

export function repeated(list: string, items: readonly { readonly id: string }[]): FieldFault[] {
  const first = new Map(items.map(({ id }, i) => [id, i] as const).reverse())
  return items.flatMap(({ id }, i) =>
    first.get(id) === i ? [] : [{ field: `${list}.${i}.id`, code: 'repeated', value: id }],
  )
}

/** What the site's own library has by that name already would hide the entry. */
export const taken = (slug: string, known: ReadonlyMap<string, unknown>): FieldFault[] =>
  known.has(slug) ? [{ field: 'slug', code: 'taken', value: slug }] : []

export const labSources = (results: readonly LabResult[] = []) =>
  results.map(({ source }, i) => [`laboratory.${i}.source.source`, source?.source] as const)

/** A citation names a source of content, or a source entry that is published. */
export async function unknownSources(
  tx: Db,
  content: References,
  cited: readonly (readonly [field: string, id: string | undefined])[],
): Promise<FieldFault[]> {
  const given = cited.flatMap(([field, id]) => (id === undefined ? [] : [[field, id] as const]))
  return unpublished(tx, 'source', content.sources, given)
}

/** What names neither a thing of content nor a published entry of that kind. */
async function unpublished(
  tx: Db,
  kind: 'source' | 'material',
  own: ReadonlyMap<string, unknown>,
  named: readonly (readonly [field: string, id: string])[],
): Promise<FieldFault[]> {
  const open = named.flatMap(([field, id]) => (own.has(id) ? [] : [{ field, id }]))
  if (open.length === 0) return []
  const entries = await tx.entry.findMany({
    where: { kind, slug: { in: open.map(({ id }) => id) }, publishedRevisionId: { not: null } },
    select: { slug: true },
  })
  const known = new Set(entries.map(({ slug }) => slug))
  return open.flatMap(({ field, id }) => (known.has(id) ? [] : [{ field, code: 'unknown', value: id }]))
}

/** An ingredient is a material of content, or a material entry that is published. */
export const unknownMaterials = (
  tx: Db,
  content: References,
  named: readonly (readonly [field: string, id: string])[],
): Promise<FieldFault[]> => unpublished(tx, 'material', content.materials, named)

/** References to recipe revisions that nobody can read. */
export async function unknownRecipes(
  tx: Db,
  refs: readonly (readonly [string, string])[],
): Promise<FieldFault[]> {
  if (refs.length === 0) return []
  const rows = await tx.$queryRaw<{ ref: string }[]>`
    SELECT e.slug || '@' || r.number AS ref FROM "Entry" e JOIN "Revision" r ON r."entryId" = e.id
    WHERE e.slug = ANY(${refs.map(([, ref]) => splitRef(ref).slug)}::text[])
      AND e.kind = 'recipe' AND e."withdrawnAt" IS NULL AND r.state IN ('published', 'superseded')`
  const known = new Set(rows.map(({ ref }) => ref))
  return refs
    .filter(([, ref]) => !known.has(ref))
    .map(([field, ref]) => ({ field, code: 'unknown', value: ref }))
}
