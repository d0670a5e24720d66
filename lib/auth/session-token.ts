import { decode, encode } from 'next-auth/jwt'
import { authSecret } from './secret.ts'

/** How long a sign-in lasts, in seconds. */
export const SESSION_S = 30 * 24 * 3600

/** Name of the session cookie; the browser sends the second kind over https alone, to this host alone. */
export const sessionCookieName = (secure: boolean): string =>
  secure ? '__Host-putlog-session' : 'putlog-session'

/** The cookie's value: an encrypted token that holds the random session id and nothing else. */
export const encodeSession = (sid: string): Promise<string> =>
  encode({ token: { sid }, secret: authSecret(), maxAge: SESSION_S })

/** The random session id of a cookie's value; null for one that is not ours, or is out of date. */
export async function decodeSession(token: string): Promise<string | null> {
  try {
    const read = await decode({ token, secret: authSecret() })
    return typeof read?.sid === 'string' ? read.sid : null
  } catch {
    return null
  }
}
