import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { v4 } from 'uuid'
import { inject } from 'vitest'
import type { Member, Role } from '#lib/access/actor.ts'
import { hashPassword } from '#lib/auth/password.ts'
import { makeAuthorKey } from '#lib/auth/random.ts'
import { encodeSession, sessionCookieName } from '#lib/auth/session-token.ts'
import { openSession } from '#lib/auth/sign-in.ts'
import { db } from '#lib/db/client.ts'
import type { Language } from '#lib/entry/languages.ts'
import { openAccount } from '#lib/workflow/account-open.ts'

/** Somebody with an account. */
export interface Person {
  readonly id: string
  readonly key: string
  readonly name: string
  readonly email: string
  readonly password: string | null
  readonly roles: readonly Role[]
  /** Who they are to the workflow. */
  readonly member: Member
}

/**
 * Opens an account straight in the database. Names and addresses differ from one to the next.
 *
 * @param over `password: null` (the default) spares the hash where nobody types it
 */
export async function makePerson(
  over: Partial<
    Pick<Person, 'name' | 'email' | 'roles' | 'password'> & { confirmed: boolean; language: Language }
  > = {},
): Promise<Person> {
  const mark = v4().slice(0, 8)
  const { name = `Mason ${mark}`, email = `${mark}@people.example`, roles = ['contributor'] } = over
  const { password = null, confirmed = true, language = 'en' } = over
  const key = makeAuthorKey()
  const passwordHash = password === null ? null : await hashPassword(password)
  const id = await db().$transaction((tx) =>
    openAccount(tx, { key, name, email, confirmed, passwordHash, language, roles }),
  )
  return { id, key, name, email, password, roles, member: { kind: 'member', key, roles } }
}

/** A cookie that signs this person in: `headers` for fetch, `cookie` for a browser context's `addCookies`. */
export async function signIn(person: Person, url = 'http://localhost') {
  const from = { address: '127.0.0.1', agent: 'A test' }
  const sid = await openSession(db(), person, 'password', from)
  const name = sessionCookieName(false)
  const value = await encodeSession(sid)
  return { headers: { cookie: `${name}=${value}` }, cookie: { name, value, url } }
}

/** In a site test: points `db()` and the sessions' secret at the site that runs. Call it before the two above. */
export function joinSite(): void {
  const dataDir = inject('siteDataDir')
  process.env.DATA_DIR = dataDir
  process.env.DATABASE_URL = readFileSync(join(dataDir, 'postgres-url'), 'utf8')
}
