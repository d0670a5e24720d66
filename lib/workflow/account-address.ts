import { recordAct } from '#lib/db/audit.ts'
import type { Db } from '#lib/db/client.ts'
import { deleteSessions } from '#lib/db/sessions.ts'
import { Refusal } from '#lib/errors.ts'
import { dropLinks } from './account-link.ts'

/** Whose address it is, and the session in which they show it; null when they are not signed in. */
export interface AddressOwner {
  readonly accountId: string
  readonly key: string
  readonly sessionId: string | null
}

/**
 * Sets an account's address as one whose mail its owner reads. Whoever confirms an address without being signed in
 * may not be the one who opened the account in its name: then its password, all its sessions and the secret address of
 * its calendar go. Open links end in any case.
 *
 * @throws Refusal `conflict` when the address belongs to another account
 */
export async function confirmAddress(tx: Db, owner: AddressOwner, email: string): Promise<void> {
  await refuseTaken(tx, owner.accountId, email)
  const stranger = owner.sessionId === null
  const before = await tx.account.findUniqueOrThrow({
    where: { id: owner.accountId },
    select: { email: true },
  })
  await tx.account.update({
    where: { id: owner.accountId },
    data: { email, emailVerifiedAt: new Date(), ...(stranger && { passwordHash: null }) },
  })
  if (stranger) {
    await deleteSessions(tx, owner.accountId)
    await tx.identity.deleteMany({ where: { accountId: owner.accountId } })
  }
  await endWaysBy(tx, owner, before.email, stranger || before.email !== email)
  await recordAct(tx, { kind: 'member', key: owner.key, roles: [] }, 'confirm-address', owner.key)
}

/**
 * Sets an address that nobody has confirmed, where the site sends no mail.
 *
 * @throws Refusal `conflict` when it belongs to another account
 */
export async function changeAddress(
  tx: Db,
  owner: { readonly accountId: string; readonly key: string },
  email: string,
): Promise<void> {
  await refuseTaken(tx, owner.accountId, email)
  const before = await tx.account.findUniqueOrThrow({
    where: { id: owner.accountId },
    select: { email: true },
  })
  await tx.account.update({ where: { id: owner.accountId }, data: { email, emailVerifiedAt: null } })
  await endWaysBy(tx, owner, before.email, before.email !== email)
  await recordAct(tx, { kind: 'member', key: owner.key, roles: [] }, 'change-address', owner.key)
}

/** Ends the links to what was the account's address, and its calendar's address where its owner may be another now. */
async function endWaysBy(
  tx: Db,
  { accountId, key }: Pick<AddressOwner, 'accountId' | 'key'>,
  before: string | null,
  moved: boolean,
): Promise<void> {
  await dropLinks(tx, accountId, before)
  if (moved) await tx.calendar.deleteMany({ where: { ownerKey: key } })
}

async function refuseTaken(tx: Db, accountId: string, email: string): Promise<void> {
  const others = await tx.account.count({ where: { email, id: { not: accountId } } })
  if (others > 0)
    throw new Refusal('conflict', 'That address belongs to another account.', [
      { field: 'email', code: 'address-taken' },
    ])
}
