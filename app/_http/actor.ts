import { cookies, headers } from 'next/headers'
import { cache } from 'react'
import { askedLanguage } from '#app/asked.ts'
import type { Actor, Member } from '#lib/access/actor.ts'
import { mayPass, PAGES, type PageDoor } from '#lib/access/doors.ts'
import { actorOf, cameSecure, sessionOf } from '#lib/auth/current.ts'
import { DEVICE_S, deviceCookieName, withDevice } from '#lib/auth/device.ts'
import { addressOf } from '#lib/auth/limits.ts'
import { secretDigest } from '#lib/auth/random.ts'
import { encodeSession, SESSION_S, sessionCookieName } from '#lib/auth/session-token.ts'
import type { From } from '#lib/auth/sign-in.ts'
import { type SignedIn, sessionByDigest } from '#lib/db/sessions.ts'
import { readSettings } from '#lib/env.ts'
import { Refusal } from '#lib/errors.ts'
import type { OwnAccount } from '#lib/workflow/account-change.ts'
import { words } from '../_words/index.ts'
import { redirect } from './redirect.ts'

/** The session of this request; null for a guest. A page's parts share one reading. */
export const currentSession = cache(async (): Promise<SignedIn | null> => {
  const jar = await cookies()
  return sessionOf((name) => jar.get(name)?.value, await isSecure())
})

/** Who asks, in a page, a server action or a route handler. Never undefined: a guest is one too. */
export const currentActor = async (): Promise<Actor> => actorOf(await currentSession())

/** Where somebody is sent to sign in, and comes back from. */
export const signInPath = (back: string): string => `/sign-in?${new URLSearchParams({ to: back })}`

/**
 * The member that a page is for. A guest is sent to sign in and comes back; null means that it is not theirs: draw
 * `NotYours`. The gate asks the same table, and sets the status.
 *
 * @param here the page's own address with its query, to come back to
 */
export async function enter(door: PageDoor, here: string): Promise<Member | null> {
  const actor = await currentActor()
  if (actor.kind === 'guest') redirect(signInPath(here))
  return actor.kind === 'member' && mayPass(actor, PAGES[door]) ? actor : null
}

/** The session of a page that {@link enter} let a member into. */
export async function enterWithSession(door: PageDoor, here: string): Promise<SignedIn> {
  await enter(door, here)
  return (await currentSession()) ?? redirect(signInPath(here))
}

/**
 * The account of whoever sends a form about their own.
 *
 * @throws Refusal `forbidden` for a guest
 */
export async function ownAccount(): Promise<{ session: SignedIn; own: OwnAccount }> {
  const session = await currentSession()
  const actor = actorOf(session)
  if (session === null || actor.kind !== 'member')
    throw new Refusal('forbidden', words('account')('form.signInFirst'))
  return { session, own: { actor, accountId: session.accountId } }
}

/** A path of this site to go to after a form, from a field that anybody could have written. */
export function pathWithin(to: string | undefined, otherwise = '/account'): string {
  if (to === undefined || !/^\/(?![/\\])[\x21-\x7e]*$/.test(to)) return otherwise
  return to
}

/** Where a request comes from, for limits and for the list of sessions. */
export async function requestFrom(): Promise<From> {
  const [given, jar] = await Promise.all([headers(), cookies()])
  return {
    device: jar.get(deviceCookieName(await isSecure()))?.value,
    address: addressOf(given.get('x-forwarded-for'), readSettings().proxyHops),
    agent: given.get('user-agent') ?? '',
    language: askedLanguage(),
  }
}

/** Whether the browser reached the site over https, so that cookies may ask for it. */
export async function isSecure(): Promise<boolean> {
  return cameSecure((await headers()).get('x-forwarded-proto'))
}

const options = (secure: boolean) => ({ httpOnly: true, sameSite: 'lax', secure, path: '/' }) as const

/**
 * Gives the browser a session to carry, and a mark by which it is known when its owner signs in again. Only server
 * actions and route handlers can.
 */
export async function carrySession(sid: string): Promise<void> {
  const [secure, jar] = [await isSecure(), await cookies()]
  jar.set(sessionCookieName(secure), await encodeSession(sid), { ...options(secure), maxAge: SESSION_S })
  const email = (await sessionByDigest(secretDigest(sid)))?.email ?? null
  const device = deviceCookieName(secure)
  if (email !== null)
    jar.set(device, withDevice(jar.get(device)?.value, email), { ...options(secure), maxAge: DEVICE_S })
}

/** Takes the session from the browser. */
export async function dropSession(): Promise<void> {
  const jar = await cookies()
  for (const secure of [true, false])
    if (jar.has(sessionCookieName(secure)))
      jar.set(sessionCookieName(secure), '', { ...options(secure), maxAge: 0 })
}
