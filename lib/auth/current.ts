import { GUEST, type Member } from '#lib/access/actor.ts'
import { type SignedIn, sessionByDigest } from '#lib/db/sessions.ts'
import { readSettings } from '#lib/env.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { secretDigest } from './random.ts'
import { decodeSession, sessionCookieName } from './session-token.ts'

/**
 * The session that a request's cookies carry, read anew from the database; null for a guest.
 *
 * @param secure came over https: then the one cookie counts that only this host can have set. Any host beside it could
 *   plant the other, and sign somebody in to an account that is not theirs.
 */
export async function sessionOf(
  cookie: (name: string) => string | undefined,
  secure: boolean,
): Promise<SignedIn | null> {
  const token = cookie(sessionCookieName(secure))
  // Most readers carry none, and none of their requests waits for this.
  if (token === undefined) return null
  const sid = await decodeSession(token)
  return sid === null ? null : sessionByDigest(secretDigest(sid))
}

/**
 * Whether a request came to the site over https: so says the proxy that it came through, or the site's own address.
 *
 * @param proto its header `x-forwarded-proto`
 */
export const cameSecure = (proto: string | null): boolean =>
  proto === 'https' || readSettings().siteUrl.startsWith('https:')

/** Who a session makes its bearer. */
export function actorOf(session: SignedIn | null): Member | typeof GUEST {
  if (session === null) return GUEST
  const { key, roles, emailVerifiedAt } = session
  return { kind: 'member', key, roles, unconfirmed: sendsMail() && emailVerifiedAt === null }
}
