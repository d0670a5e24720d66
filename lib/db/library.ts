import type { Role } from '#lib/entry/terms.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import { every } from './facet.ts'
import { noSuchPage, pageSize } from './page.ts'
import type { LibraryKind } from './projection/library.ts'

/** A published material, source or proposed row, as lists show it. */
export interface LibrarySummary {
  readonly kind: LibraryKind
  readonly slug: string
  readonly revision: number
  readonly title: string
  readonly summary: string
  readonly role: Role | null
  /** The material of content that it is a kind of, or the table that a row belongs in. */
  readonly like: string | null
  readonly invented: boolean
}

export interface LibraryPage {
  readonly entries: LibrarySummary[]
  /** Give it as `after` for the next page; null on the last. */
  readonly next: string | null
}

/**
 * Published materials, sources or proposed rows by title; with `like`, those alone that are kinds of that
 * material or belong in that table.
 *
 * @throws Refusal `invalid` when `after` is the slug of none
 */
export async function listLibrary(
  kind: LibraryKind,
  {
    like,
    after,
    limit = 50,
  }: { like?: string | undefined; after?: string | undefined; limit?: number | undefined } = {},
): Promise<LibraryPage> {
  const size = pageSize(limit)
  const where = every([
    Prisma.sql`i.kind = ${kind}::"Kind"`,
    ...(like === undefined ? [] : [Prisma.sql`i."like" = ${like}`]),
    ...(after === undefined ? [] : [await afterEntry(after)]),
  ])
  const rows = await db().$queryRaw<LibrarySummary[]>`
    SELECT i.kind::text AS kind, i.slug, i.revision, i.title, i.summary, i.role, i."like", i.invented
    FROM "LibraryIndex" i WHERE ${where} ORDER BY i."sortTitle", i.slug LIMIT ${size + 1}`
  const entries = rows.slice(0, size)
  return { entries, next: rows.length > size ? (entries.at(-1)?.slug ?? null) : null }
}

async function afterEntry(slug: string): Promise<Prisma.Sql> {
  const [found] = await db().$queryRaw<{ sortTitle: string }[]>`
    SELECT "sortTitle" FROM "LibraryIndex" WHERE slug = ${slug}`
  if (found === undefined) throw noSuchPage(slug)
  return Prisma.sql`(i."sortTitle", i.slug) > (${found.sortTitle}, ${slug})`
}
