import { db } from '#lib/db/client.ts'
import type { SignedIn } from '#lib/db/sessions.ts'
import { changeAddress } from '#lib/workflow/account-address.ts'
import { type OwnAccount, setPasswordIn } from '#lib/workflow/account-change.ts'
import { refuseBeyond } from './limits.ts'
import { type From, openSession } from './sign-in.ts'
import { countTaken, hashGood } from './sign-up.ts'

/**
 * Changes an account's address at once, where the site sends no mail to confirm it by.
 *
 * @throws Refusal `conflict` for one that is taken; `too-many` once some were
 */
export async function changeOwnAddress(owner: SignedIn, email: string): Promise<void> {
  await refuseBeyond('taken-to', owner.accountId)
  const changed = db().$transaction((tx) => changeAddress(tx, owner, email))
  return countTaken(changed, owner.accountId)
}

/**
 * Sets a password. Every session ends, this one too, and no link to sign in with is good any more.
 *
 * @returns the random id of the session that goes on here
 * @throws Refusal `invalid` for a password that will not do
 */
export async function changeOwnPassword(
  own: OwnAccount,
  { name, email }: Pick<SignedIn, 'name' | 'email'>,
  password: string,
  from: From,
): Promise<string> {
  const hash = await hashGood(password, [name, email ?? ''])
  return db().$transaction(async (tx) => {
    await setPasswordIn(tx, own, hash)
    return openSession(tx, { id: own.accountId, key: own.actor.key }, 'password', from)
  })
}
