import { z } from 'zod'
import { db } from '#lib/db/client.ts'
import { text } from '#lib/entry/fields.ts'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { openAccount } from '#lib/workflow/account-open.ts'
import { countAgainst, refuseBeyond } from './limits.ts'
import { hashPassword, passwordFault, SHORTEST } from './password.ts'
import { makeAuthorKey } from './random.ts'
import { type From, openSession } from './sign-in.ts'

/** The name that stands beside what somebody writes; no address, since everybody reads it. */
export const nameField = text(60).refine((name) => !name.includes('@'), 'name-address')

/** Longer than the longest password is no password that anybody typed; what will not do is told by its own fault. */
export const passwordField = z.string().max(1000)

export interface NewPerson {
  readonly name: string
  readonly email: string
  readonly password: string
}

/** Everybody who opens an account may write; a steward names reviewers. */
export const FIRST_ROLES = ['contributor'] as const

/**
 * Opens an account with a password where the site sends no mail, and signs in. Who was told of some addresses that they
 * are taken opens none for a day.
 *
 * @throws Refusal `invalid` for a password that will not do; `conflict` for an address that is taken; `too-many`
 */
export async function signUp({ name, email, password }: NewPerson, from: From): Promise<string> {
  await refuseBeyond('taken-to', from.address)
  await countAgainst('sign-up-from', from.address)
  const passwordHash = await hashGood(password, [name, email])
  const opened = db().$transaction(async (tx) => {
    const key = makeAuthorKey()
    const told = { name, email, confirmed: false, passwordHash, language: from.language ?? 'en' }
    const id = await openAccount(tx, { key, ...told, roles: FIRST_ROLES })
    return openSession(tx, { id, key }, 'password', from)
  })
  return countTaken(opened, from.address)
}

/**
 * Without mail nobody can be told in private that an address has an account, so whoever tries it learns so. Each may
 * learn it of few.
 *
 * @param of whom it is counted for
 */
export async function countTaken<T>(doing: Promise<T>, of: string): Promise<T> {
  return doing.catch(async (thrown: unknown) => {
    if (thrown instanceof Refusal && thrown.faults.some(({ code }) => code === 'address-taken'))
      await countAgainst('taken-to', of)
    throw thrown
  })
}

/**
 * The hash of a password that will do.
 *
 * @param own the person's name and address, which must not be most of it
 * @throws Refusal `invalid` saying why it will not
 */
export async function hashGood(password: string, own: readonly string[]): Promise<string> {
  const code = await passwordFault(password, own)
  if (code === null) return hashPassword(password)
  const fault: FieldFault = { field: 'password', code, ...(code === 'password-short' && { limit: SHORTEST }) }
  throw new Refusal('invalid', 'The password will not do.', [fault])
}
