import { passwordHashOf } from '#lib/db/accounts.ts'
import type { SignedIn } from '#lib/db/sessions.ts'
import { Refusal } from '#lib/errors.ts'
import { countAgainst, forgetAgainst } from './limits.ts'
import { fitsPassword } from './password.ts'

/** For so long a sign-in by link or service is as good as a password. */
const FRESH_MS = 15 * 60 * 1000

/**
 * Makes sure, before what cannot be undone, that it is the owner who sits there: by the password, or by a sign-in of
 * the last quarter of an hour where none was typed.
 *
 * @throws Refusal `invalid` about the field `current-password`; `too-many`
 */
export async function prove(session: SignedIn, password: string | undefined): Promise<void> {
  if (session.how !== 'password' || !session.hasPassword)
    if (Date.now() - session.createdAt.getTime() < FRESH_MS) return
  const refusal = (code: string) =>
    new Refusal('invalid', 'Show that it is you.', [{ field: 'current-password', code }])
  if (!session.hasPassword) throw refusal('sign-in-again')
  if (password === undefined) throw refusal('required')
  await countAgainst('prove', session.accountId)
  if (!(await fitsPassword(await passwordHashOf(session.accountId), password))) throw refusal('not-fitting')
  await forgetAgainst([['prove', session.accountId]])
}
