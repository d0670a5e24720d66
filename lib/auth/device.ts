import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto'
import { authSecret } from './secret.ts'

/** How long a browser is known by, in seconds. */
export const DEVICE_S = 365 * 24 * 3600

/** People who share a browser and each stay known in it. */
const MOST = 4

/** Name of the cookie by which a browser is known; as with the session's, the second is for https alone. */
export const deviceCookieName = (secure: boolean): string =>
  secure ? '__Host-putlog-device' : 'putlog-device'

/**
 * The cookie's value once somebody has signed in: a mark for their address beside those that were there. A mark lets
 * nobody in. It only sets the tries of a browser that its owner has used before apart from those of strangers.
 *
 * @param before the value it had
 */
export function withDevice(before: string | undefined, email: string): string {
  if (deviceOf(before, email) !== null) return before ?? ''
  const nonce = randomBytes(12).toString('base64url')
  return [`${nonce}~${sign(email, nonce)}`, ...marksOf(before)].slice(0, MOST).join('.')
}

/** By which name a browser is known for this address; null for one that nobody signed in to it with. */
export function deviceOf(value: string | undefined, email: string): string | null {
  for (const mark of marksOf(value)) {
    const [nonce = '', signature = ''] = mark.split('~')
    const right = Buffer.from(sign(email, nonce))
    const given = Buffer.from(signature)
    if (right.length === given.length && timingSafeEqual(right, given)) return nonce
  }
  return null
}

const marksOf = (value: string | undefined): string[] =>
  (value ?? '')
    .split('.')
    .filter((mark) => mark !== '')
    .slice(0, MOST)

const sign = (email: string, nonce: string): string =>
  createHmac('sha256', authSecret()).update(`device\n${nonce}\n${email}`).digest('base64url')
