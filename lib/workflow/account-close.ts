import { recordAct } from '#lib/db/audit.ts'
import { type Db, db } from '#lib/db/client.ts'
import { isShownIn } from '#lib/db/photos.ts'
import { deleteSessions } from '#lib/db/sessions.ts'
import type { OwnAccount } from './account-change.ts'
import { dropLinks } from './account-link.ts'
import { removeFilesOfNone } from './photo-remove.ts'
import { holdStewards, refuseLastSteward } from './role-name.ts'

/**
 * Closes an account: its name, address, password, roles, links, sessions, drafts and kept sheets go, and the photos that it alone sent
 * and no version shows. What it submitted stays under its random key, as a former contributor's.
 *
 * @throws Refusal `conflict` for the only steward
 */
export async function closeAccount({ actor, accountId }: OwnAccount): Promise<void> {
  const photos = await db().$transaction(async (tx) => {
    await holdStewards(tx)
    if (actor.roles.includes('steward')) await refuseLastSteward(tx, accountId)
    await tx.roleGrant.deleteMany({ where: { accountId } })
    await tx.identity.deleteMany({ where: { accountId } })
    const { email } = await tx.account.findUniqueOrThrow({
      where: { id: accountId },
      select: { email: true },
    })
    await dropLinks(tx, accountId, email)
    await deleteSessions(tx, accountId)
    await forgetPrivate(tx, actor.key)
    const unshown = await deleteUnshown(tx, actor.key)
    await tx.account.update({
      where: { id: accountId },
      data: {
        name: '',
        email: null,
        emailVerifiedAt: null,
        passwordHash: null,
        language: 'en',
        closedAt: new Date(),
      },
    })
    await recordAct(tx, actor, 'close-account', actor.key)
    return unshown
  })
  for (const sha256 of photos) await removeFilesOfNone(sha256)
}

/** Takes out the pictures that only they sent and nothing shows; resolves with their digests, whose files are to go. */
async function deleteUnshown(tx: Db, key: string): Promise<string[]> {
  await tx.upload.deleteMany({ where: { uploaderKey: key } })
  const own = await tx.$queryRaw<{ sha256: string }[]>`
    SELECT p.sha256 FROM "Photo" p WHERE p.uploaders @> ARRAY[${key}]::text[] AND cardinality(p.uploaders) = 1
      AND p."erasedAt" IS NULL ORDER BY p.sha256 FOR UPDATE`
  const deleted: string[] = []
  // Each is asked about once it is held: a submission that shows it is seen then.
  for (const { sha256 } of own) {
    if (await isShownIn(tx, sha256)) continue
    await tx.photo.delete({ where: { sha256 } })
    deleted.push(sha256)
  }
  return deleted
}

/** What was kept for this person alone, and nobody else ever saw. */
async function forgetPrivate(tx: Db, key: string): Promise<void> {
  const owned = { where: { ownerKey: key } }
  await tx.draft.deleteMany(owned)
  await tx.reminder.deleteMany(owned)
  await tx.calendar.deleteMany(owned)
  await tx.keptSheet.deleteMany(owned)
  await tx.notice.deleteMany({ where: { forKey: key } })
  await tx.claim.deleteMany({ where: { reviewerKey: key } })
}
