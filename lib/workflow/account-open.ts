import { v7 } from 'uuid'
import type { Actor, Role } from '#lib/access/actor.ts'
import { recordAct } from '#lib/db/audit.ts'
import type { Db } from '#lib/db/client.ts'
import type { Language } from '#lib/entry/languages.ts'
import { Refusal } from '#lib/errors.ts'

export interface NewAccount {
  /** Random; see `makeAuthorKey`. */
  readonly key: string
  readonly name: string
  /** In lower case; null where a service told none. */
  readonly email: string | null
  /** Whether whoever opens it has shown that the address is theirs. */
  readonly confirmed: boolean
  readonly passwordHash: string | null
  /** Of the page where it is opened: mail comes in it. */
  readonly language: Language
  readonly roles: readonly Role[]
}

/**
 * Opens an account. Resolves with its id.
 *
 * @throws Refusal `conflict` when the address belongs to another account
 */
export async function openAccount(tx: Db, account: NewAccount): Promise<string> {
  const { confirmed, roles, ...told } = account
  const id = v7()
  const at = new Date()
  const { count } = await tx.account.createMany({
    data: [{ id, ...told, createdAt: at, emailVerifiedAt: confirmed ? at : null }],
    skipDuplicates: true,
  })
  if (count === 0)
    throw new Refusal('conflict', 'That address belongs to an account.', [
      { field: 'email', code: 'address-taken' },
    ])
  await tx.roleGrant.createMany({
    data: roles.map((role) => ({ accountId: id, role, grantedBy: account.key, at })),
  })
  const self: Actor = { kind: 'member', key: account.key, roles }
  await recordAct(tx, self, 'open-account', account.key, { roles: roles.join(' '), confirmed })
  return id
}
