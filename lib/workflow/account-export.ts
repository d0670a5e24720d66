import { db } from '#lib/db/client.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import type { OwnAccount } from './account-change.ts'

const { sql } = Prisma

/**
 * Everything the site keeps of one person, table by table: which rows are theirs, each with a key that orders them.
 * Left out is only what is a secret of the site's (digests of passwords, sessions and links, the address of a calendar)
 * and the keys of others who did something to them.
 */
const PARTS: Readonly<Record<string, (own: OwnAccount) => Prisma.Sql>> = {
  account: ({ accountId }) =>
    sql`SELECT id::text AS key, to_jsonb(t) - 'passwordHash' AS row FROM "Account" t WHERE id = ${accountId}::uuid`,
  roles: ({ accountId }) =>
    sql`SELECT role::text AS key, to_jsonb(t) - 'grantedBy' AS row FROM "RoleGrant" t WHERE "accountId" = ${accountId}::uuid`,
  services: ({ accountId }) =>
    sql`SELECT issuer || ' ' || subject AS key, to_jsonb(t) AS row FROM "Identity" t
      WHERE "accountId" = ${accountId}::uuid`,
  sessions: ({ accountId }) =>
    sql`SELECT id::text AS key, to_jsonb(t) - 'digest' AS row FROM "Session" t WHERE "accountId" = ${accountId}::uuid`,
  revisions: ({ actor }) =>
    sql`SELECT t.id::text AS key, to_jsonb(t) || jsonb_build_object('slug', e.slug, 'kind', e.kind) AS row
      FROM "Revision" t JOIN "Entry" e ON e.id = t."entryId" WHERE t."authorKey" = ${actor.key}`,
  decisions: ({ actor }) =>
    sql`SELECT t.id::text AS key, to_jsonb(t) || jsonb_build_object('slug', e.slug) AS row
      FROM "Decision" t JOIN "Entry" e ON e.id = t."entryId" WHERE t."reviewerKey" = ${actor.key}`,
  drafts: ({ actor }) =>
    sql`SELECT id::text AS key, to_jsonb(t) AS row FROM "Draft" t WHERE "ownerKey" = ${actor.key}`,
  photos: ({ actor }) =>
    sql`SELECT sha256 AS key, to_jsonb(t) - '{uploaders,erasedBy}'::text[] AS row FROM "Photo" t WHERE uploaders @> ARRAY[${actor.key}]`,
  notices: ({ actor }) =>
    sql`SELECT id::text AS key, to_jsonb(t) AS row FROM "Notice" t WHERE "forKey" = ${actor.key}`,
  reminders: ({ actor }) =>
    sql`SELECT id::text AS key, to_jsonb(t) AS row FROM "Reminder" t WHERE "ownerKey" = ${actor.key}`,
  uploads: ({ actor }) =>
    sql`SELECT key::text AS key, to_jsonb(t) - 'pieces' AS row FROM "Upload" t WHERE "uploaderKey" = ${actor.key}`,
  inHand: ({ actor }) =>
    sql`SELECT "revisionId"::text AS key, to_jsonb(t) AS row FROM "Claim" t WHERE "reviewerKey" = ${actor.key}`,
  calendar: ({ actor }) =>
    sql`SELECT "ownerKey" AS key, to_jsonb(t) - 'token' AS row FROM "Calendar" t WHERE "ownerKey" = ${actor.key}`,
  sheets: ({ actor }) =>
    sql`SELECT id::text AS key, to_jsonb(t) AS row FROM "KeptSheet" t WHERE "ownerKey" = ${actor.key}`,
  done: ({ actor }) =>
    sql`SELECT id::text AS key,
        to_jsonb(t) || jsonb_build_object('actorKey', nullif(t."actorKey", nullif(t."actorKey", ${actor.key}))) AS row
      FROM "Audit" t
      WHERE "actorKey" = ${actor.key} OR subject = ${actor.key}`,
}

/** Rows fetched at once: what one person wrote may be more than memory should hold. */
const AT_ONCE = 100

/**
 * Everything the site keeps of the actor, as the text of one JSON document: a list of rows for each part. Each piece is
 * read when the one before it was taken, so that a slow reader holds no connection.
 */
export async function* exportAccount(own: OwnAccount): AsyncGenerator<string> {
  yield `{\n"exportedAt": ${JSON.stringify(new Date())}`
  for (const [name, rows] of Object.entries(PARTS)) {
    yield `,\n"${name}": [`
    let before = ''
    for await (const row of rowsOf(rows(own))) {
      yield `${before}\n${JSON.stringify(row)}`
      before = ','
    }
    yield ']'
  }
  yield '\n}\n'
}

async function* rowsOf(rows: Prisma.Sql): AsyncGenerator<unknown> {
  for (let after = ''; ; ) {
    const piece = await db().$queryRaw<{ key: string; row: unknown }[]>`
      SELECT key, row FROM (${rows}) r WHERE key COLLATE "C" > ${after} ORDER BY key COLLATE "C" LIMIT ${AT_ONCE}`
    for (const { row } of piece) yield row
    const last = piece.at(-1)
    if (last === undefined || piece.length < AT_ONCE) return
    after = last.key
  }
}
