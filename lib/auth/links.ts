import { accountByEmail, hasSteward } from '#lib/db/accounts.ts'
import { type Db, db } from '#lib/db/client.ts'
import type { SignedIn } from '#lib/db/sessions.ts'
import { readSettings } from '#lib/env.ts'
import { Refusal } from '#lib/errors.ts'
import { confirmAddress } from '#lib/workflow/account-address.ts'
import { dropSignInLinks, keepLink, type Link, readLink, takeLink } from '#lib/workflow/account-link.ts'
import { openAccount } from '#lib/workflow/account-open.ts'
import { grantFirstSteward } from '#lib/workflow/role-name.ts'
import { makeAuthorKey, makeSecret, secretDigest } from './random.ts'
import { type From, openSession } from './sign-in.ts'
import { FIRST_ROLES, hashGood } from './sign-up.ts'

const HOUR_S = 3600
const DAY_S = 24 * HOUR_S

/** Makes a one-time link and resolves with its address; only the digest of what it carries is stored. */
export async function makeLink(link: Link, seconds = HOUR_S): Promise<string> {
  const secret = makeSecret()
  await db().$transaction((tx) => keepLink(tx, secretDigest(secret), link, seconds))
  return `${readSettings().siteUrl}/sign-in/link?secret=${secret}`
}

/** The link that makes the first steward, good for a day; null when there is a steward. */
export async function makeStewardLink(): Promise<string | null> {
  if (await hasSteward()) return null
  return makeLink({ purpose: 'first-steward', email: null, accountId: null }, DAY_S)
}

/** What a link is for and what its page must still ask: null when it cannot be used any more. */
export async function openLink(
  secret: string,
  current: SignedIn | null,
): Promise<{ link: Link; asks: 'nothing' | 'name' | 'all' | 'sign-in' } | null> {
  const link = await readLink(db(), secretDigest(secret))
  if (link === null) return null
  if (link.purpose === 'confirm-address')
    return { link, asks: current?.accountId === link.accountId ? 'nothing' : 'sign-in' }
  if (link.purpose === 'first-steward') return { link, asks: current === null ? 'all' : 'nothing' }
  return { link, asks: (await accountByEmail(link.email ?? '')) === null ? 'name' : 'nothing' }
}

/** What was filled in on a link's page, as far as it asks. */
export interface LinkAnswers {
  readonly name?: string | undefined
  readonly email?: string | undefined
  readonly password?: string | undefined
}

/**
 * Uses a link, once.
 *
 * @param current who is signed in in the browser that opened it
 * @returns a new session id for the browser to carry; null when it keeps the one it has
 * @throws Refusal `not-found` for a link that cannot be used any more; `invalid` with the fields that are missing or
 *   will not do (the link stays good)
 */
export async function redeemLink(
  secret: string,
  answers: LinkAnswers,
  current: SignedIn | null,
  from: From,
): Promise<string | null> {
  const digest = secretDigest(secret)
  const passwordHash =
    answers.password === undefined
      ? null
      : await hashGood(answers.password, [answers.name ?? '', answers.email ?? ''])
  return db().$transaction(async (tx) => {
    const link = await readLink(tx, digest)
    if (link === null || !(await takeLink(tx, digest)))
      throw new Refusal('not-found', 'This link was used already, or its time is over.')
    const given = { ...answers, passwordHash }
    if (link.purpose === 'first-steward') return makeSteward(tx, given, current, from)
    if (link.purpose === 'sign-in') return signInByAddress(tx, link.email ?? '', given, current, from)
    if (current === null || current.accountId !== link.accountId)
      throw new Refusal('forbidden', 'Sign in to the account that asked for this link first.')
    await confirmAddress(tx, current, link.email ?? '')
    return null
  })
}

type Given = LinkAnswers & { readonly passwordHash: string | null }

async function makeSteward(
  tx: Db,
  given: Given,
  current: SignedIn | null,
  from: From,
): Promise<string | null> {
  if (await hasSteward(tx)) throw new Refusal('conflict', 'There is a steward already.')
  if (current !== null) {
    await grantFirstSteward(tx, current)
    return null
  }
  const { name, email } = need(given, ['name', 'email', 'password'])
  const account = { ...newAccount(given, from), name, email, confirmed: false }
  const id = await openAccount(tx, { ...account, roles: [...FIRST_ROLES, 'steward'] })
  return openSession(tx, { id, key: account.key }, 'link', from)
}

/** Whoever opened the mail has the address: a known one is signed in, an unknown one gets an account. */
async function signInByAddress(
  tx: Db,
  email: string,
  given: Given,
  current: SignedIn | null,
  from: From,
): Promise<string> {
  const known = await accountByEmail(email, tx)
  if (known !== null) {
    await dropSignInLinks(tx, email)
    if (known.emailVerifiedAt === null) {
      const ofThis = current?.accountId === known.id ? current.sessionId : null
      await confirmAddress(tx, { accountId: known.id, key: known.key, sessionId: ofThis }, email)
    }
    return openSession(tx, known, 'link', from)
  }
  const { name } = need(given, ['name'])
  const account = { ...newAccount(given, from), name, email, confirmed: true }
  const id = await openAccount(tx, { ...account, roles: FIRST_ROLES })
  return openSession(tx, { id, key: account.key }, 'link', from)
}

const newAccount = ({ passwordHash }: Given, { language = 'en' }: From) => ({
  key: makeAuthorKey(),
  passwordHash,
  language,
})

/** The answers that a link's page asks for, all of them there. */
function need<K extends keyof LinkAnswers>(given: LinkAnswers, names: readonly K[]): Record<K, string> {
  const missing = names.filter((name) => given[name] === undefined)
  if (missing.length > 0)
    throw new Refusal(
      'invalid',
      'Something is missing.',
      missing.map((field) => ({ field, code: 'required' })),
    )
  return given as Record<K, string>
}
