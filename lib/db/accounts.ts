import { ROLES, type Role } from '#lib/access/actor.ts'
import { isLanguage, type Language } from '#lib/entry/languages.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type Db, db } from './client.ts'
import { every } from './facet.ts'
import { noSuchPage, pageSize } from './page.ts'

/** What signing in needs to know of an account. */
export interface Credentials {
  readonly id: string
  readonly key: string
  readonly passwordHash: string | null
  readonly emailVerifiedAt: Date | null
}

/** The open account with this address (in lower case); null when there is none. */
export const accountByEmail = (email: string, tx: Db = db()): Promise<Credentials | null> =>
  tx.account.findFirst({
    where: { email, closedAt: null },
    select: { id: true, key: true, passwordHash: true, emailVerifiedAt: true },
  })

/** The open account that an account of another service signs in to; null when there is none. */
export const accountByIdentity = (
  tx: Db,
  { issuer, subject }: { readonly issuer: string; readonly subject: string },
): Promise<{ id: string; key: string } | null> =>
  tx.account.findFirst({
    where: { closedAt: null, identities: { some: { issuer, subject } } },
    select: { id: true, key: true },
  })

/** The stored hash of an account's password; null when it has none. */
export const passwordHashOf = async (accountId: string): Promise<string | null> =>
  (await db().account.findUnique({ where: { id: accountId }, select: { passwordHash: true } }))
    ?.passwordHash ?? null

/** The language of somebody's mail and calendar, by their author key. */
export async function languageOf(key: string): Promise<Language> {
  const found = await db().account.findUnique({ where: { key }, select: { language: true } })
  return found !== null && isLanguage(found.language) ? found.language : 'en'
}

/**
 * The names chosen by those whose keys stand beside entries. A key without one is a former contributor's (null), or
 * nobody's account (not in the map).
 */
export async function authorNames(keys: readonly string[]): Promise<ReadonlyMap<string, string | null>> {
  const rows = await db().account.findMany({
    where: { key: { in: [...new Set(keys)] } },
    select: { key: true, name: true, closedAt: true },
  })
  return new Map(rows.map(({ key, name, closedAt }) => [key, closedAt === null ? name : null]))
}

/** Whether anybody is a steward yet. */
export const hasSteward = async (tx: Db = db()): Promise<boolean> =>
  (await tx.roleGrant.count({ where: { role: 'steward', account: { closedAt: null } } })) > 0

/** One person, as a steward sees them. */
export interface PersonLine {
  readonly id: string
  readonly key: string
  readonly name: string
  readonly email: string | null
  readonly confirmed: boolean
  readonly roles: readonly Role[]
  readonly createdAt: Date
  readonly closed: boolean
}

export interface PeopleFilter {
  /** A part of a name or an address. */
  readonly words?: string | undefined
  readonly role?: Role | undefined
}

export const isRole = (text: string): text is Role => (ROLES as readonly string[]).includes(text)

/** People, the newest first. */
export async function listPeople(
  { words, role }: PeopleFilter,
  { after, limit = 50 }: { after?: string | undefined; limit?: number } = {},
): Promise<{ people: PersonLine[]; next: string | null }> {
  if (after !== undefined && !/^[0-9a-f-]{36}$/.test(after)) throw noSuchPage(after)
  const size = pageSize(limit)
  const like = `%${(words ?? '').replace(/[\\%_]/g, '\\$&')}%`
  const conditions = [
    ...(words === undefined ? [] : [Prisma.sql`(a.name ILIKE ${like} OR a.email ILIKE ${like})`]),
    ...(role === undefined
      ? []
      : [
          Prisma.sql`EXISTS (SELECT FROM "RoleGrant" g WHERE g."accountId" = a.id AND g.role = ${role}::"Role")`,
        ]),
    ...(after === undefined ? [] : [Prisma.sql`a.id < ${after}::uuid`]),
  ]
  const rows = await selectPeople(Prisma.sql`WHERE ${every(conditions)} ORDER BY a.id DESC LIMIT ${size + 1}`)
  const people = rows.slice(0, size)
  return { people, next: rows.length > size ? (people.at(-1)?.id ?? null) : null }
}

/** One person by their author key; null when nobody has it. */
export const personByKey = async (key: string): Promise<PersonLine | null> =>
  (await selectPeople(Prisma.sql`WHERE a.key = ${key}`))[0] ?? null

const selectPeople = (rest: Prisma.Sql) => db().$queryRaw<PersonLine[]>`
  SELECT a.id::text AS id, a.key, a.name, a.email, a."emailVerifiedAt" IS NOT NULL AS confirmed, a."createdAt",
    a."closedAt" IS NOT NULL AS closed,
    ARRAY(SELECT g.role::text FROM "RoleGrant" g WHERE g."accountId" = a.id ORDER BY g.role) AS roles
  FROM "Account" a ${rest}`
