import { type BodyOf, readBody, type WrittenKind } from '#lib/entry/body.ts'
import { isErased } from '#lib/entry/erased.ts'
import { isSlug } from '#lib/entry/fields.ts'
import type { Particulars } from '#lib/entry/particulars.ts'
import type { RevisionState } from '#lib/entry/state.ts'
import { type Db, db } from './client.ts'
import { pageSize } from './page.ts'

/** Name of a field → the text typed in it. Blank fields are not there. */
export type DraftText = Readonly<Record<string, string>>

/** Name of a field → texts that wait to be put in it, the last that came in last. */
export type HeldText = Readonly<Record<string, readonly string[]>>

/** What somebody is still writing. */
export interface Draft {
  readonly id: string
  readonly ownerKey: string
  readonly kind: WrittenKind
  /** The entry that it revises, and the revision it started from; null for a new one. */
  readonly slug: string | null
  readonly basedOn: number | null
  /** `slug@revision` of the recipe that it adapts. */
  readonly adaptedFrom: string | null
  readonly typed: DraftText
  /** What was typed elsewhere and could not be put in without overwriting; null when there is nothing. */
  readonly held: HeldText | null
  readonly heldAt: Date | null
  readonly version: number
  readonly createdAt: Date
  readonly savedAt: Date
  readonly submittedRevisionId: string | null
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** Whether a text can be a draft's id; the database is asked for nothing else. */
export const isDraftId = (id: string): boolean => UUID.test(id)

/** One's own draft; null for an id that is not there or somebody else's. */
export async function ownDraft(ownerKey: string, id: string): Promise<Draft | null> {
  if (!isDraftId(id)) return null
  const row = await db().draft.findUnique({ where: { id } })
  return row?.ownerKey === ownerKey ? (row as unknown as Draft) : null
}

/** A draft of anybody's, held until the transaction ends; null when there is none. */
export async function lockDraft(tx: Db, id: string): Promise<Draft | null> {
  if (!isDraftId(id)) return null
  await tx.$queryRaw`SELECT 1 FROM "Draft" WHERE id = ${id}::uuid FOR UPDATE`
  return (await tx.draft.findUnique({ where: { id } })) as unknown as Draft | null
}

/** A draft in a list. */
export interface DraftLine {
  readonly id: string
  readonly kind: WrittenKind
  /** The title typed so far, of a visit its case's; null while there is none. */
  readonly title: string | null
  readonly slug: string | null
  readonly basedOn: number | null
  readonly held: boolean
  readonly savedAt: Date
  /** The revision it became. */
  readonly sent: { readonly slug: string; readonly number: number; readonly state: RevisionState } | null
}

interface Row extends Omit<DraftLine, 'sent'> {
  readonly sentSlug: string | null
  readonly number: number | null
  readonly state: RevisionState | null
}

/** One's drafts, the last saved first. `after` is the id of the last one seen. */
export async function listDrafts(
  ownerKey: string,
  { after, limit = 30 }: { after?: string | undefined; limit?: number | undefined } = {},
): Promise<{ drafts: DraftLine[]; next: string | null }> {
  const size = pageSize(limit)
  const from = after !== undefined && isDraftId(after) ? after : null
  const rows = await db().$queryRaw<Row[]>`
    SELECT d.id, d.kind::text AS kind, coalesce(d.typed ->> 'title', c.title) AS title, d.slug, d."basedOn",
      d.held IS NOT NULL AS held, d."savedAt", e.slug AS "sentSlug", r.number, r.state::text AS state
    FROM "Draft" d
    LEFT JOIN "Revision" r ON r.id = d."submittedRevisionId"
    LEFT JOIN "Entry" e ON e.id = r."entryId"
    LEFT JOIN "CaseIndex" c ON c.slug = d.typed ->> 'case'
    WHERE d."ownerKey" = ${ownerKey} AND (${from}::uuid IS NULL OR (d."savedAt", d.id) <
      (SELECT f."savedAt", f.id FROM "Draft" f WHERE f.id = ${from}::uuid AND f."ownerKey" = ${ownerKey}))
    ORDER BY d."savedAt" DESC, d.id DESC LIMIT ${size + 1}`
  const drafts = rows.slice(0, size).map(({ sentSlug, number, state, ...row }) => ({
    ...row,
    sent: sentSlug === null || number === null || state === null ? null : { slug: sentSlug, number, state },
  }))
  return { drafts, next: rows.length > size ? (drafts.at(-1)?.id ?? null) : null }
}

/** A revision that somebody may start writing from. */
export interface StartRevision {
  readonly kind: WrittenKind
  readonly slug: string
  readonly number: number
  readonly body: BodyOf<WrittenKind>
  readonly mine: boolean
}

/**
 * The revision of this number, or the one published now: anyone may start from what was published, and its author
 * from what was not. Null when there is none, or when it was erased.
 */
export async function revisionToStartFrom(
  ownerKey: string,
  slug: string,
  number: number | null,
): Promise<StartRevision | null> {
  if (!isSlug(slug)) return null
  const [row] = await db().$queryRaw<
    { kind: WrittenKind; slug: string; number: number; body: unknown; shape: number; mine: boolean }[]
  >`
    SELECT e.kind::text AS kind, e.slug, r.number, r.body, r.shape, r."authorKey" = ${ownerKey} AS mine
    FROM "Entry" e
    LEFT JOIN "Revision" p ON p.id = e."publishedRevisionId"
    JOIN "Revision" r ON r."entryId" = e.id AND r.number = coalesce(${number}::bigint, p.number)
    WHERE e.slug = ${slug} AND e."withdrawnAt" IS NULL
      AND (r.state IN ('published', 'superseded') OR r."authorKey" = ${ownerKey})`
  if (row === undefined || isErased(row.body)) return null
  const { shape, body, ...rest } = row
  return { ...rest, body: readBody(row.kind, body, shape) }
}

/** Which revision a draft became, and how it stands now; null when there is none. */
export async function sentAs(revisionId: string): Promise<DraftLine['sent']> {
  const found = await db().revision.findUnique({
    where: { id: revisionId },
    select: { number: true, state: true, entry: { select: { slug: true } } },
  })
  return found && { slug: found.entry.slug, number: found.number, state: found.state }
}

/** What a reviewer said as they returned or declined a revision, and the body that it is about. */
export interface ReturnWords {
  readonly byKey: string
  readonly at: Date
  /** Null where a steward struck them. */
  readonly words: string | null
  readonly fields: readonly { readonly field: string; readonly words: string }[]
  readonly body: unknown
}

/** The words that a revision came back with; null for one that did not come back. */
export async function wordsOnReturn(slug: string, number: number): Promise<ReturnWords | null> {
  const found = await db().decision.findFirst({
    where: {
      outcome: { in: ['return', 'decline'] },
      revision: { number, entry: { slug }, state: { in: ['returned', 'declined'] } },
    },
    orderBy: { number: 'desc' },
    include: { revision: { select: { body: true } } },
  })
  if (found === null) return null
  const { reviewerKey: byKey, at, words, particulars, revision } = found
  return { byKey, at, words, fields: (particulars as Particulars | null)?.fields ?? [], body: revision.body }
}

/** Number of the newest revision of an entry that stands: a draft that starts from it overwrites nothing. */
export async function newestStanding(slug: string): Promise<number | null> {
  const found = await db().revision.findFirst({
    where: { entry: { slug }, state: { in: ['submitted', 'published', 'superseded'] } },
    orderBy: { number: 'desc' },
    select: { number: true },
  })
  return found?.number ?? null
}
