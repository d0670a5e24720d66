import { accountByEmail, accountByIdentity } from '#lib/db/accounts.ts'
import { type Db, db } from '#lib/db/client.ts'
import { linkIdentity } from '#lib/workflow/account-identity.ts'
import { openAccount } from '#lib/workflow/account-open.ts'
import { makeAuthorKey } from './random.ts'
import { type From, openSession } from './sign-in.ts'
import { FIRST_ROLES, nameField } from './sign-up.ts'

/** Somebody as another service tells of them. */
export interface ServicePerson {
  readonly issuer: string
  /** Who they are there: never given to anybody else. */
  readonly subject: string
  /** In lower case. */
  readonly email: string | null
  /** Whether the service says that it has confirmed the address. */
  readonly confirmed: boolean
  readonly name: string
}

/**
 * Signs in somebody whom another service knows, and opens an account for who is new here. An account that has the same
 * address is theirs only where both sides have confirmed it; otherwise they are refused, and nothing is linked.
 */
export async function signInFromService(
  person: ServicePerson,
  from: From,
): Promise<{ readonly sid: string } | { readonly refused: 'address' }> {
  return db().$transaction(async (tx) => {
    const account = await accountFor(tx, person, from)
    return account === null
      ? { refused: 'address' as const }
      : { sid: await openSession(tx, account, 'service', from) }
  })
}

async function accountFor(
  tx: Db,
  person: ServicePerson,
  { language = 'en' }: From,
): Promise<{ id: string; key: string } | null> {
  const known = await accountByIdentity(tx, person)
  if (known !== null) return known
  const sameAddress = person.email === null ? null : await accountByEmail(person.email, tx)
  if (sameAddress !== null) {
    if (!person.confirmed || sameAddress.emailVerifiedAt === null) return null
    await linkIdentity(tx, sameAddress, person)
    return sameAddress
  }
  const key = makeAuthorKey()
  const { confirmed, email } = person
  const told = { key, email, confirmed: confirmed && email !== null, passwordHash: null, language }
  const id = await openAccount(tx, { ...told, roles: FIRST_ROLES, name: nameOf(person) })
  await linkIdentity(tx, { id, key }, person)
  return { id, key }
}

/** The name the service tells where it can stand beside work; a plain one otherwise. They can choose another. */
function nameOf({ name }: ServicePerson): string {
  const read = nameField.safeParse(name)
  return read.success ? read.data : 'New contributor'
}
