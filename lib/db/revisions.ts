import { type BodyOf, readBody, type WrittenKind } from '#lib/entry/body.ts'
import { ERASED } from '#lib/entry/erased.ts'
import type { Method } from '#lib/entry/terms.ts'
import { type Db, db } from './client.ts'
import { splitRef } from './projection/source.ts'

export interface RevisionName {
  readonly title: string
  readonly method: Method
}

/** `slug@3` → what that revision is called and how it was mixed, for those that can be read. */
export async function revisionNames(refs: readonly string[]): Promise<ReadonlyMap<string, RevisionName>> {
  if (refs.length === 0) return new Map()
  const wanted = refs.map(splitRef)
  const rows = await db().$queryRaw<{ ref: string; body: unknown; shape: number }[]>`
    SELECT e.slug || '@' || r.number AS ref, r.body, r.shape
    FROM unnest(${wanted.map(({ slug }) => slug)}::text[], ${wanted.map(({ revision }) => revision)}::bigint[])
      AS w(slug, number)
    JOIN "Entry" e ON e.slug = w.slug AND e.kind = 'recipe' AND e."publishedRevisionId" IS NOT NULL
    JOIN "Revision" r ON r."entryId" = e.id AND r.number = w.number AND r.state IN ('published', 'superseded')
      AND r.body <> ${ERASED}::jsonb`
  return new Map(
    rows.map(({ ref, body, shape }) => {
      const { title, method } = readBody('recipe', body, shape)
      return [ref, { title, method }]
    }),
  )
}

/** What is published of an entry now; null where nothing is. */
export async function standingBody<K extends WrittenKind>(
  kind: K,
  entryId: string,
  tx: Db = db(),
): Promise<BodyOf<K> | null> {
  const found = await tx.revision.findFirst({
    where: { entryId, publishedAs: { id: entryId } },
    select: { body: true, shape: true },
  })
  return found && readBody(kind, found.body, found.shape)
}
