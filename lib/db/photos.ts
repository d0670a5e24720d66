import type { Actor } from '#lib/access/actor.ts'
import { may } from '#lib/access/policy.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type Db, db } from './client.ts'
import { noSuchPage, pageSize } from './page.ts'

/** What a page needs to draw a picture. */
export interface PhotoFacts {
  readonly sha256: string
  /** Of the picture that is kept, in pixels. */
  readonly width: number
  readonly height: number
  /** Widths that it can be had in, narrowest first. */
  readonly sizes: readonly number[]
  readonly erased: boolean
}

/**
 * How an address of a picture stands for one who asks: `open` to everyone, `private` (theirs to see, nobody
 * else's yet), `gone` (erased), or `absent`, which also says that it is not theirs to know.
 */
export type PhotoState = 'open' | 'private' | 'gone' | 'absent'

export const isSha256 = (text: string) => /^[0-9a-f]{64}$/.test(text)

/** Revisions (as `r`) that show this picture. */
export const shows = (sha256: Prisma.Sql) =>
  Prisma.sql`(r.body -> 'photos') @> jsonb_build_array(jsonb_build_object('sha256', ${sha256}))`

/** Whether any revision shows it. Counted, since an EXISTS is guessed to be met soon and would read all revisions. */
const isShown = (sha256: Prisma.Sql) =>
  Prisma.sql`(SELECT count(*) FROM "Revision" r WHERE ${shows(sha256)}) > 0`

/** Whether any revision shows this picture, as the transaction sees it now. */
export async function isShownIn(tx: Db, sha256: string): Promise<boolean> {
  const [row] = await tx.$queryRaw<
    { shown: boolean }[]
  >`SELECT ${isShown(Prisma.sql`${sha256}::text`)} AS shown`
  return row?.shown ?? false
}

/** May be read by anyone: published now, or published before within an entry that stands. */
const READABLE = Prisma.sql`r.state IN ('published', 'superseded') AND e."publishedRevisionId" IS NOT NULL
  AND e."withdrawnAt" IS NULL`

export async function photoState(actor: Actor, sha256: string): Promise<PhotoState> {
  if (!isSha256(sha256)) return 'absent'
  const key = actor.kind === 'guest' ? '' : actor.key
  const [row] = await db().$queryRaw<{ erased: boolean; own: boolean; open: boolean }[]>`
    SELECT p."erasedAt" IS NOT NULL AS erased, ${key} = ANY(p.uploaders) AS own,
      EXISTS (SELECT FROM "Revision" r JOIN "Entry" e ON e.id = r."entryId"
        WHERE ${shows(Prisma.sql`${sha256}::text`)} AND ${READABLE}) AS open
    FROM "Photo" p WHERE p.sha256 = ${sha256}`
  if (row === undefined) return 'absent'
  if (row.erased) return 'gone'
  if (row.open) return 'open'
  return row.own || may(actor, 'seeAnyPhoto', undefined) ? 'private' : 'absent'
}

/** The facts of these pictures, by digest; those that do not exist are left out. */
export async function photoFacts(
  sha256s: readonly string[],
  tx: Db = db(),
): Promise<ReadonlyMap<string, PhotoFacts>> {
  if (sha256s.length === 0) return new Map()
  const rows = await tx.photo.findMany({
    where: { sha256: { in: [...new Set(sha256s)] } },
    select: { sha256: true, width: true, height: true, sizes: true, erasedAt: true },
  })
  return new Map(rows.map(({ erasedAt, ...row }) => [row.sha256, { ...row, erased: erasedAt !== null }]))
}

export interface OwnPhoto extends PhotoFacts {
  /** `YYYY-MM-DD` when the camera wrote it and the uploader agreed. */
  readonly takenOn: string | null
  readonly uploadedAt: Date
  /** Whether a revision shows it, one that waits for review among them. */
  readonly shown: boolean
  /** Give it as `after` for what was uploaded before. */
  readonly place: string
}

/**
 * The pictures that one uploaded last, newest first; erased ones are left out.
 *
 * @throws Refusal `invalid` for a place that never was one
 */
export async function ownPhotos(
  actor: Actor,
  { limit = 60, after }: { limit?: number | undefined; after?: string | undefined } = {},
): Promise<OwnPhoto[]> {
  if (actor.kind !== 'member') return []
  const rows = await db().$queryRaw<Omit<OwnPhoto, 'place'>[]>`
    SELECT p.sha256, p.width, p.height, p.sizes, false AS erased, to_char(p."takenOn", 'YYYY-MM-DD') AS "takenOn",
      p."createdAt" AS "uploadedAt",
      ${isShown(Prisma.sql`p.sha256`)} AS shown
    FROM "Photo" p
    WHERE p.uploaders @> ARRAY[${actor.key}]::text[] AND p."erasedAt" IS NULL AND ${afterPlace(after)}
    ORDER BY p."createdAt" DESC, p.sha256 COLLATE "C" DESC LIMIT ${pageSize(limit)}`
  return rows.map((row) => ({ ...row, place: `${row.uploadedAt.getTime()}_${row.sha256}` }))
}

function afterPlace(after: string | undefined): Prisma.Sql {
  if (after === undefined) return Prisma.sql`true`
  const [, time, sha256] = /^(\d{1,15})_([0-9a-f]{64})$/.exec(after) ?? []
  if (time === undefined || sha256 === undefined) throw noSuchPage(after)
  return Prisma.sql`(p."createdAt", p.sha256 COLLATE "C") < (${new Date(Number(time))}::timestamptz, ${sha256}::text)`
}

/**
 * Of these pictures, those that this author may show in this entry: uploaded by them, or shown by it already. In a
 * transaction they are held until its end: none is deleted or erased before what shows it is recorded.
 */
export async function usablePhotos(
  tx: Db,
  sha256s: readonly string[],
  authorKey: string,
  slug: string,
): Promise<ReadonlySet<string>> {
  if (sha256s.length === 0) return new Set()
  const rows = await tx.$queryRaw<{ sha256: string }[]>`
    SELECT p.sha256 FROM "Photo" p WHERE p.sha256 = ANY(${[...sha256s]}::text[]) AND p."erasedAt" IS NULL
      AND (${authorKey} = ANY(p.uploaders) OR EXISTS (
        SELECT FROM "Revision" r JOIN "Entry" e ON e.id = r."entryId"
        WHERE e.slug = ${slug} AND ${shows(Prisma.sql`p.sha256`)}))
    ORDER BY p.sha256 FOR SHARE OF p`
  return new Set(rows.map(({ sha256 }) => sha256))
}
