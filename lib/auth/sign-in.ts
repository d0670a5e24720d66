import { setTimeout as sleep } from 'node:timers/promises'
import { z } from 'zod'
import { accountByEmail } from '#lib/db/accounts.ts'
import { type Db, db } from '#lib/db/client.ts'
import { sweepExpired } from '#lib/db/limits.ts'
import type { WayIn } from '#lib/db/sessions.ts'
import type { Language } from '#lib/entry/languages.ts'
import { Refusal } from '#lib/errors.ts'
import { startSession } from '#lib/workflow/session-start.ts'
import { deviceOf } from './device.ts'
import { countAgainst, forgetAgainst, isBeyond, type Limit } from './limits.ts'
import { fitsPassword } from './password.ts'
import { makeSecret, secretDigest } from './random.ts'
import { SESSION_S } from './session-token.ts'

/** An e-mail address as it is kept. */
export const emailField = z
  .string()
  .trim()
  .toLowerCase()
  .max(254)
  .pipe(z.email({ error: 'not-an-address' }))

/** Where a sign-in comes from: the network address, for the limits, and what the browser says it is. */
export interface From {
  readonly address: string
  readonly agent: string
  /** Value of the cookie that tells who has signed in with this browser before. */
  readonly device?: string | undefined
  /** Of the page; an account that is opened from it keeps it. English where none is told. */
  readonly language?: Language | undefined
}

/** How long a stranger's browser waits for its answer about an account that many guess at. */
const PRESSED_MS = 1500

/**
 * Counts a try at an account's password. Nobody can lock its owner out: a browser that they signed in with before counts
 * for itself alone, and however many guess elsewhere, every network address keeps a few tries of its own.
 *
 * @returns what to forget once the password was right
 */
async function countTryAt(email: string, { address, device }: From): Promise<readonly [Limit, string]> {
  const known = deviceOf(device, email)
  if (known !== null) {
    await countAgainst('sign-in-device', `${email} ${known}`)
    return ['sign-in-device', `${email} ${known}`]
  }
  const pair = `${email} ${address}`
  await countAgainst('sign-in-from', address)
  await countAgainst('sign-in-pair', pair)
  if (await isBeyond('sign-in-crowd', email)) {
    await countAgainst('sign-in-pressed', pair)
    await sleep(PRESSED_MS)
  }
  return ['sign-in-pair', pair]
}

/**
 * Signs in with address and password. Whether the address is known cannot be told from the answer or its time.
 *
 * @returns the random session id that the browser is to carry
 * @throws Refusal `invalid` when they do not fit together; `too-many`
 */
export async function signInWithPassword(
  { email, password }: { readonly email: string; readonly password: string },
  from: From,
): Promise<string> {
  const counted = await countTryAt(email, from)
  const account = await accountByEmail(email)
  const fits = await fitsPassword(account?.passwordHash ?? null, password)
  if (account === null || !fits)
    throw new Refusal('invalid', 'Address and password do not fit together.', [
      { field: 'password', code: 'not-fitting' },
    ])
  await sweepExpired()
  const sid = await openSession(db(), account, 'password', from)
  await forgetAgainst([counted])
  return sid
}

/** A new session for an account; resolves with the random id that the browser is to carry. */
export async function openSession(
  tx: Db,
  { id, key }: { readonly id: string; readonly key: string },
  how: WayIn,
  { agent }: From,
): Promise<string> {
  const sid = makeSecret()
  const digest = secretDigest(sid)
  await startSession(tx, {
    account: { id, key },
    digest,
    how,
    agent: agent.slice(0, 300),
    seconds: SESSION_S,
  })
  return sid
}
