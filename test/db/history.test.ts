import { v7 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { RevisionState } from '../../prisma/generated/enums.ts'
import { HAND_WRITTEN } from '../../prisma/hand-written.ts'
import { makeRecipe, publish } from '../support/make.ts'

const run = (sql: string) => db().$executeRawUnsafe(sql)

beforeAll(async () => {
  await publish('recipe', 'held', makeRecipe())
})

describe('history in the database', () => {
  it.each([
    ['body', `'{}'::jsonb`],
    ['body', `jsonb_set(body, '{title}', '"Other"')`],
    ['number', '7'],
    ['shape', '2'],
    ['note', `'other'`],
    ['authorKey', `'other'`],
    ['createdAt', 'now()'],
    ['digest', `repeat('0', 64)`],
    ['bodyDigest', `repeat('0', 64)`],
    ['basedOn', '1'],
    ['key', 'gen_random_uuid()'],
    ['id', 'gen_random_uuid()'],
    ['entryId', 'gen_random_uuid()'],
  ])('refuses to change the %s of a revision to %s', async (column, value) => {
    await expect(run(`UPDATE "Revision" SET "${column}" = ${value}`)).rejects.toThrow(/never changed/)
  })

  it.each(['Revision', 'Decision', 'Entry'])('refuses to delete from %s or to empty it', async (table) => {
    await expect(run(`DELETE FROM "${table}"`)).rejects.toThrow(/never rewritten/)
    await expect(run(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/never rewritten/)
  })

  it('refuses to change a decision at all', async () => {
    await expect(run(`UPDATE "Decision" SET words = 'other'`)).rejects.toThrow(/never rewritten/)
  })

  it('refuses to rename an entry or to change its kind', async () => {
    await expect(run(`UPDATE "Entry" SET slug = 'other'`)).rejects.toThrow(/keeps its kind and address/)
    await expect(run(`UPDATE "Entry" SET kind = 'case'`)).rejects.toThrow(/keeps its kind and address/)
  })

  it("refuses to publish another entry's revision", async () => {
    const { revisionId } = await publish('recipe', 'other', makeRecipe())
    await expect(
      run(`UPDATE "Entry" SET "publishedRevisionId" = '${revisionId}' WHERE slug = 'held'`),
    ).rejects.toThrow(/only its own revisions/)
  })

  it('lets a state take the steps it may take and no others', async () => {
    const states = Object.values(RevisionState)
    const allowed: string[] = []
    const { id: entryId } = await db().entry.findUniqueOrThrow({ where: { slug: 'held' } })
    for (const [index, from] of states.entries())
      for (const to of states) {
        const id = v7()
        await run(`INSERT INTO "Revision" (id, "entryId", number, body, "bodyDigest", shape, note, "authorKey", state,
          "createdAt", digest, key) VALUES ('${id}', '${entryId}', ${100 + index * 10 + states.indexOf(to)}, '{}',
          repeat('a', 64), 1, 'n', 'a', '${from}', now(), repeat('a', 64), gen_random_uuid())`)
        const moved = await run(`UPDATE "Revision" SET state = '${to}' WHERE id = '${id}'`).then(
          () => true,
          () => false,
        )
        if (moved && from !== to) allowed.push(`${from} → ${to}`)
      }
    expect(allowed.sort()).toEqual([
      'published → superseded',
      'published → withdrawn',
      'submitted → declined',
      'submitted → published',
      'submitted → returned',
      'withdrawn → published',
    ])
  })

  it('refuses even where the session plays a replica, which skips ordinary triggers', async () => {
    const rows = await db().$queryRaw<{ tgname: string; tgenabled: string }[]>`
      SELECT tgname::text, tgenabled::text FROM pg_trigger WHERE NOT tgisinternal ORDER BY tgname`
    expect(rows.map(({ tgenabled }) => tgenabled)).toEqual(rows.map(() => 'A'))
  })
})

describe('HAND_WRITTEN', () => {
  it('lists every function, trigger, check and collation of the database that the schema cannot say', async () => {
    const names = async (sql: string) =>
      (await db().$queryRawUnsafe<{ name: string }[]>(sql)).map(({ name }) => name).sort()
    const own = `'public'::regnamespace`
    expect({
      functions: await names(`SELECT proname::text AS name FROM pg_proc p WHERE pronamespace = ${own}
        AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = p.oid AND d.deptype = 'e')`),
      triggers: await names(`SELECT tgname::text AS name FROM pg_trigger WHERE NOT tgisinternal`),
      checks: await names(
        `SELECT conname::text AS name FROM pg_constraint WHERE contype = 'c' AND connamespace = ${own}`,
      ),
      collations: await names(`SELECT c.relname || '.' || a.attname || ' ' || l.collname AS name
        FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid JOIN pg_collation l ON l.oid = a.attcollation
        WHERE c.relnamespace = ${own} AND c.relkind = 'r' AND l.collname <> 'default'`),
    }).toEqual({
      functions: [...HAND_WRITTEN.functions],
      triggers: [...HAND_WRITTEN.triggers],
      checks: [...HAND_WRITTEN.checks],
      collations: Object.entries(HAND_WRITTEN.collations).map(
        ([column, collation]) => `${column} ${collation}`,
      ),
    })
  })
})
