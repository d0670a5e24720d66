import type { Actor } from '#lib/access/actor.ts'
import { may } from '#lib/access/policy.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { ERASED, isErased } from '#lib/entry/erased.ts'
import { isSlug } from '#lib/entry/fields.ts'
import type { Particulars } from '#lib/entry/particulars.ts'
import type { Outcome, RevisionState } from '#lib/entry/state.ts'
import { authorsOf } from './authors.ts'
import { db } from './client.ts'
import { openDisputes } from './disputes.ts'

/** One thing that was put on record about a version. */
export interface Deed {
  /** 1, 2, 3… within the entry. */
  readonly number: number
  readonly outcome: Outcome
  readonly byKey: string
  readonly at: Date
  /** Null where a steward struck them, or erased the version they are about. */
  readonly words: string | null
  readonly checklist: Readonly<Record<string, boolean>>
  readonly fields: readonly { readonly field: string; readonly words: string }[]
  readonly digest: string
}

/** One version as its history tells it. */
export interface VersionLine {
  readonly id: string
  readonly number: number
  readonly basedOn: number | null
  readonly state: RevisionState
  readonly authorKey: string
  readonly submittedAt: Date
  /** Null where the reader may not read it: words that nobody reviewed are not shown to all, and those of an erased
   * version to nobody. */
  readonly note: string | null
  readonly digest: string
  readonly erased: boolean
  /** Whether this reader may read the body. */
  readonly open: boolean
  readonly deeds: readonly Deed[]
}

/** An entry as the pages about its versions know it. */
export interface EntryHead {
  readonly entryId: string
  readonly kind: WrittenKind
  readonly slug: string
  /** Of the version published now, or else of the latest one that the reader may read; of a visit, its case's. */
  readonly title: string
  /** Where the entry is read: the case of a visit. */
  readonly caseSlug: string | null
  readonly published: number | null
  readonly withdrawn: boolean
  readonly disputed: boolean
  readonly latest: number
  readonly authorKeys: readonly string[]
}

/** Versions of one page of the history. */
export const VERSIONS_A_PAGE = 30

const ONCE_PUBLISHED: readonly RevisionState[] = ['published', 'superseded']

interface HeadRow {
  id: string
  kind: WrittenKind
  slug: string
  published: number | null
  withdrawn: boolean
  everPublished: boolean
  latest: number
  body: unknown
}

/** The entry at this address, for whoever may know of it: all where it ever was published, else those who work on it. */
export async function entryHead(actor: Actor, slug: string): Promise<EntryHead | null> {
  if (!isSlug(slug)) return null
  const [row] = await db().$queryRaw<HeadRow[]>`
    SELECT e.id, e.kind::text AS kind, e.slug, p.number AS published, e."withdrawnAt" IS NOT NULL AS withdrawn,
      l.number AS latest, coalesce(p.body, g.body, l.body) AS body,
      EXISTS (SELECT FROM "Decision" d WHERE d."entryId" = e.id AND d.outcome = 'publish') AS "everPublished"
    FROM "Entry" e
    LEFT JOIN "Revision" p ON p.id = e."publishedRevisionId"
    LEFT JOIN LATERAL (SELECT r.body FROM "Revision" r WHERE r."entryId" = e.id AND r.state = 'withdrawn'
      ORDER BY r.number DESC LIMIT 1) g ON true
    JOIN LATERAL (SELECT r.number, r.body FROM "Revision" r WHERE r."entryId" = e.id
      ORDER BY r.number DESC LIMIT 1) l ON true
    WHERE e.slug = ${slug}`
  if (row === undefined) return null
  const authorKeys = await authorsOf(row.id)
  if (!row.everPublished && !may(actor, 'readUnpublished', { authorKeys })) return null
  const { title, case: caseSlug } = row.body as { title?: string; case?: string }
  const visited = row.kind === 'visit' && caseSlug !== undefined ? await caseTitle(caseSlug) : null
  return {
    entryId: row.id,
    kind: row.kind,
    slug: row.slug,
    title: title ?? visited ?? row.slug,
    caseSlug: row.kind === 'visit' ? (caseSlug ?? null) : null,
    published: row.published,
    withdrawn: row.withdrawn,
    disputed: (await openDisputes(row.id)).length > 0,
    latest: row.latest,
    authorKeys,
  }
}

async function caseTitle(slug: string): Promise<string | null> {
  const found = await db().caseIndex.findUnique({ where: { slug }, select: { title: true } })
  return found?.title ?? null
}

/**
 * The versions of an entry with all that was decided about each, the latest first.
 *
 * @param before number of the version that the page before ended with
 */
export async function versionsOf(
  actor: Actor,
  entry: EntryHead,
  before?: number,
): Promise<{ versions: VersionLine[]; next: number | null }> {
  const rows = await db().revision.findMany({
    where: { entryId: entry.entryId, ...(before !== undefined && { number: { lt: before } }) },
    orderBy: { number: 'desc' },
    take: VERSIONS_A_PAGE + 1,
    include: { decisions: { orderBy: { number: 'asc' } } },
  })
  const struck = await struckDeeds(entry.entryId)
  const versions = rows
    .slice(0, VERSIONS_A_PAGE)
    .map((row): VersionLine => ({ ...lineOf(actor, entry, row), deeds: deedsOf(row, struck) }))
  return { versions, next: rows.length > VERSIONS_A_PAGE ? (versions.at(-1)?.number ?? null) : null }
}

/** Versions that can be laid side by side, at most. */
const MOST_COMPARED = 200

/** Numbers of the versions whose bodies this reader may read, the latest first: those that can be compared. */
export async function readableVersions(actor: Actor, entry: EntryHead): Promise<number[]> {
  const rows = await db().$queryRaw<{ number: number; state: RevisionState }[]>`
    SELECT number, state::text AS state FROM "Revision"
    WHERE "entryId" = ${entry.entryId}::uuid AND body <> ${ERASED}::jsonb ORDER BY number DESC LIMIT ${MOST_COMPARED}`
  return rows.filter(({ state }) => isOpen(actor, entry, state)).map(({ number }) => number)
}

/** Of such numbers, that of the version before this one. */
export const versionBefore = (numbers: readonly number[], number: number): number | undefined =>
  numbers.find((one) => one < number)

/** Once published, a version is open to all while its entry stands; others to those who work on them. */
const isOpen = (actor: Actor, entry: EntryHead, state: RevisionState): boolean =>
  (ONCE_PUBLISHED.includes(state) && !entry.withdrawn) ||
  may(actor, 'readUnpublished', { authorKeys: entry.authorKeys })

/** One version; its body is null where it was erased, or where the reader may not read it. */
export async function versionOf(
  actor: Actor,
  entry: EntryHead,
  number: number,
): Promise<(VersionLine & { readonly body: unknown; readonly shape: number }) | null> {
  const row = await db().revision.findUnique({
    where: { entryId_number: { entryId: entry.entryId, number } },
    include: { decisions: { orderBy: { number: 'asc' } } },
  })
  if (row === null) return null
  const line = lineOf(actor, entry, row)
  const deeds = deedsOf(row, await struckDeeds(entry.entryId))
  return { ...line, deeds, body: line.open && !line.erased ? row.body : null, shape: row.shape }
}

interface Row {
  readonly id: string
  readonly number: number
  readonly basedOn: number | null
  readonly state: RevisionState
  readonly authorKey: string
  readonly createdAt: Date
  readonly note: string
  readonly digest: string
  readonly body: unknown
}

function lineOf(actor: Actor, entry: EntryHead, row: Row): Omit<VersionLine, 'deeds'> {
  const { id, number, basedOn, state, authorKey, createdAt, digest } = row
  const open = isOpen(actor, entry, state)
  const told = { id, number, basedOn, state, authorKey, submittedAt: createdAt, digest, open }
  const erased = isErased(row.body)
  return { ...told, note: open && !erased ? row.note : null, erased }
}

interface DecisionRow {
  readonly number: number
  readonly outcome: Outcome
  readonly reviewerKey: string
  readonly at: Date
  readonly words: string
  readonly checklist: unknown
  readonly particulars: unknown
  readonly digest: string
}

const deedOf =
  (struck: ReadonlySet<number>) =>
  ({ number, outcome, reviewerKey, at, words, checklist, particulars, digest }: DecisionRow): Deed => ({
    number,
    outcome,
    byKey: reviewerKey,
    at,
    words: struck.has(number) ? null : words,
    checklist: checklist as Record<string, boolean>,
    fields: (particulars as Particulars | null)?.fields ?? [],
    digest,
  })

/** What was decided about a version. Of an erased one, words from before may repeat what it told: they are not shown. */
function deedsOf(
  { body, decisions }: { readonly body: unknown; readonly decisions: readonly DecisionRow[] },
  struck: ReadonlySet<number>,
): Deed[] {
  const erasure = isErased(body) ? decisions.find(({ outcome }) => outcome === 'erase') : undefined
  return decisions.map(deedOf(struck)).map((deed) => {
    // What was taken down to be erased was so with the same words.
    const before = erasure !== undefined && deed.number < erasure.number && deed.words !== erasure.words
    return before ? { ...deed, words: null, fields: [] } : deed
  })
}

/** Numbers of the deeds whose words a steward struck. */
async function struckDeeds(entryId: string): Promise<ReadonlySet<number>> {
  const rows = await db().decision.findMany({
    where: { entryId, outcome: 'strike' },
    select: { particulars: true },
  })
  return new Set(rows.flatMap(({ particulars }) => (particulars as Particulars | null)?.deed ?? []))
}

/** What the author of a case said beside one of these visits, oldest first; struck words are not shown. */
export async function answersTo(visitEntryIds: readonly string[]): Promise<(Deed & { entryId: string })[]> {
  if (visitEntryIds.length === 0) return []
  const rows = await db().decision.findMany({
    where: { entryId: { in: [...visitEntryIds] }, outcome: { in: ['answer', 'strike'] } },
    orderBy: [{ at: 'asc' }, { number: 'asc' }],
  })
  const struck = new Set(
    rows.flatMap(({ entryId, particulars }) => {
      const deed = (particulars as Particulars | null)?.deed
      return deed === undefined ? [] : [`${entryId} ${deed}`]
    }),
  )
  return rows
    .filter(({ outcome, entryId, number }) => outcome === 'answer' && !struck.has(`${entryId} ${number}`))
    .map((row) => ({ ...deedOf(new Set())(row), entryId: row.entryId }))
}
