import { v5 } from 'uuid'
import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { authorsOf } from '#lib/db/authors.ts'
import { type Db, db } from '#lib/db/client.ts'
import { shows } from '#lib/db/photos.ts'
import { refresh } from '#lib/db/projection/refresh.ts'
import { publishing } from '#lib/db/publishing.ts'
import { ERASED, GROUNDS, isErased } from '#lib/entry/erased.ts'
import { slug, text } from '#lib/entry/fields.ts'
import type { Outcome } from '#lib/entry/state.ts'
import { Refusal } from '#lib/errors.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { dropClaim } from './claim.ts'
import { clearDrafts } from './erase-drafts.ts'
import { clearSheets } from './erase-sheets.ts'
import { type Decided, decisionByKey, type LockedEntry, lockEntry, recordDecision } from './ledger.ts'
import { notify } from './notify.ts'
import { parse } from './parse.ts'
import { erasePhotoIn, removePhotoFiles } from './photo-erase.ts'

const lawful = { ground: z.enum(GROUNDS), words: text(2000) }
const erasure = z.strictObject({ key: z.uuid(), slug, number: z.number().int().positive(), ...lawful })
export type Erasure = z.infer<typeof erasure>

/**
 * Erases the body of one revision for a lawful reason, for good. What is published is withdrawn with it, and what
 * waits is declined. Its text leaves the drafts and kept sheets that hold it. Its digest stays, so that the chain still holds, and so
 * do the ground and the words, as a decision of the entry's history. The digests also hold its note and what reviewers
 * said of it: those stay on record, and are shown to nobody from now on.
 *
 * @throws Refusal `forbidden`; `not-found`; `conflict` when it is erased already; `invalid`
 */
export async function eraseBody(actor: Actor, given: Erasure): Promise<Decided> {
  const { key: reviewerKey } = must(actor, 'erase', undefined)
  const { key, slug, number, ground, words } = parse(erasure, given)
  return publishing(async (tx) => {
    const entry = await lockEntry(tx, slug)
    const revision = entry && (await revisionOf(tx, entry, number))
    if (entry === null || revision === null) throw new Refusal('not-found', 'There is no such revision.')
    const first = await decisionByKey(tx, key, reviewerKey)
    if (first !== null) return first
    if (isErased(revision.body)) throw new Refusal('conflict', 'This revision is erased already.')
    const verdict = { entry, revision, reviewerKey, words, checklist: { [ground]: true } }
    const before = BEFORE[revision.state]
    // Its key is made from the erasure's, so that repeating the whole repeats this too.
    if (before !== undefined)
      await recordDecision(tx, { ...verdict, key: v5(before, key), outcome: before, checklist: {} })
    const decided = await recordDecision(tx, { ...verdict, key, outcome: 'erase' })
    await tx.revision.update({ where: { id: revision.id }, data: { body: ERASED } })
    const losers = await clearDrafts(tx, entry, revision)
    const keepers = await clearSheets(tx, entry, revision, decided.at)
    await dropClaim(tx, revision.id)
    await refresh(tx, [entry.id])
    await recordAct(tx, actor, 'erase-body', slug, {
      number,
      ground,
      drafts: losers.length,
      sheets: keepers.length,
    })
    const told = [...(await authorsOf(entry.id, undefined, tx)), ...losers, ...keepers]
    await notify(tx, told, reviewerKey, { what: 'erased', entryId: entry.id, number })
    return decided
  })
}

/** What must be decided first, so that no erased body is published or waits for a reviewer. */
const BEFORE: Readonly<Partial<Record<string, Outcome>>> = { published: 'withdraw', submitted: 'decline' }

const revisionOf = (tx: Db, entry: LockedEntry, number: number) =>
  tx.revision.findUnique({
    where: { entryId_number: { entryId: entry.id, number } },
    select: { id: true, number: true, digest: true, state: true, body: true },
  })

const photoErasure = z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/, 'not-a-digest'), ...lawful })
export type ErasureOfPhoto = z.infer<typeof photoErasure>

/**
 * Erases a photo for a lawful reason, for good: nobody is shown it from now on, its files are removed, and neither it
 * nor the file it came from is taken again. Its digest and the reason stay.
 *
 * @throws Refusal `forbidden`; `not-found`; `conflict` when it is erased already; `invalid`
 */
export async function erasePhoto(actor: Actor, given: ErasureOfPhoto): Promise<void> {
  const { key: by } = must(actor, 'erase', undefined)
  const { sha256, ground, words } = parse(photoErasure, given)
  await db().$transaction(async (tx) => {
    await erasePhotoIn(tx, { sha256, by, reason: `${ground}: ${words}`, at: new Date() })
    await recordAct(tx, actor, 'erase-photo', sha256, { ground })
    for (const { entryId, number, authorKeys } of await showing(tx, sha256))
      await notify(tx, authorKeys, by, { what: 'photo-erased', entryId, number })
  })
  await removePhotoFiles(sha256)
}

/** The entries that show a photo: the latest version of each that does, and whoever wrote one. */
const showing = (tx: Db, sha256: string) => tx.$queryRaw<
  { entryId: string; number: number; authorKeys: string[] }[]
>`
  SELECT r."entryId", max(r.number) AS number, array_agg(DISTINCT r."authorKey") AS "authorKeys"
  FROM "Revision" r WHERE ${shows(Prisma.sql`${sha256}::text`)} GROUP BY r."entryId"`
