import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { listActs } from '#lib/db/audit.ts'
import { caseBySlug } from '#lib/db/cases.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { addressState, withdrawnEntry } from '#lib/db/entries.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { ERASED } from '#lib/entry/erased.ts'
import { backup } from '#lib/workflow/backup.ts'
import { type Erasure, eraseBody } from '#lib/workflow/erase.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { restoreBackup } from '#lib/workflow/restore-backup.ts'
import { submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { restore } from '#lib/workflow/withdraw.ts'
import { copyTemplate } from '../support/database.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeRecipe,
  makeSubmission,
  publish,
  REFERENCES,
  REVIEWER,
  STEWARD,
} from '../support/make.ts'

const dataDir = mkdtempSync(join(tmpdir(), 'putlog-erase-'))
afterAll(() => rmSync(dataDir, { recursive: true, force: true }))

const order = (over: Partial<Erasure>): Erasure => ({
  key: v4(),
  slug: 'kept',
  number: 1,
  ground: 'personal-data',
  words: 'It named the owner of the house.',
  ...over,
})
const bodies = async (slug: string) =>
  (await db().revision.findMany({ where: { entry: { slug } }, orderBy: { number: 'asc' } })).map(
    ({ body, state, bodyDigest }) => ({ body, state, bodyDigest }),
  )

beforeAll(async () => {
  await publish('recipe', 'kept', makeRecipe({ title: 'Names somebody' }))
  await publish('recipe', 'kept', makeRecipe({ title: 'Names nobody' }), 1)
})

describe('eraseBody(actor, erasure)', () => {
  it('takes an earlier revision out and leaves the newest published', async () => {
    const before = await bodies('kept')
    await eraseBody(STEWARD, order({}))
    const after = await bodies('kept')
    expect(after[0]).toEqual({ ...before[0], body: ERASED })
    expect(after[1]).toEqual(before[1])
    expect(await recipeBySlug('kept')).toMatchObject({ revision: 2, body: { title: 'Names nobody' } })
    expect(await recipeBySlug('kept', 1)).toBeNull()
    expect(await addressState('recipe', 'kept', 1)).toEqual({ state: 'gone', latest: 2 })
    expect(await addressState('recipe', 'kept')).toEqual({ state: 'open', latest: 2 })
  })

  it('withdraws what is published and says why at its address, in lists no more, and for good', async () => {
    await publish('case', 'named', makeCase({ title: 'The house of somebody' }))
    const erasure = order({ slug: 'named', ground: 'private-place' })
    const decided = await eraseBody(STEWARD, erasure)
    expect(decided).toMatchObject({ outcome: 'erase', revision: 1, repeated: false })
    expect(await caseBySlug('named')).toBeNull()
    expect(await db().caseIndex.count({ where: { slug: 'named' } })).toBe(0)
    expect(await withdrawnEntry('named')).toMatchObject({ words: erasure.words, title: '', erased: true })
    await expect(restore(STEWARD, { key: v4(), slug: 'named', words: 'Back.' })).rejects.toMatchObject({
      code: 'conflict',
    })
    expect(JSON.stringify(await bodies('named'))).not.toContain('somebody')
  })

  it('declines what waits', async () => {
    await submit(CONTRIBUTOR, makeSubmission({ slug: 'waiting' }), REFERENCES)
    await eraseBody(STEWARD, order({ slug: 'waiting' }))
    expect(await bodies('waiting')).toMatchObject([{ state: 'declined', body: ERASED }])
  })

  it('answers a repeated key with the first result, and refuses to erase twice', async () => {
    await publish('recipe', 'twice', makeRecipe())
    const erasure = order({ slug: 'twice' })
    const first = await eraseBody(STEWARD, erasure)
    expect(await eraseBody(STEWARD, erasure)).toEqual({ ...first, repeated: true })
    await expect(eraseBody(STEWARD, order({ slug: 'twice' }))).rejects.toMatchObject({ code: 'conflict' })
  })

  it('refuses all but stewards, what is not there, and what has no ground or words', async () => {
    for (const actor of [CONTRIBUTOR, REVIEWER, { kind: 'guest' } as never as Member])
      await expect(eraseBody(actor, order({ number: 2 }))).rejects.toMatchObject({ code: 'forbidden' })
    await expect(eraseBody(STEWARD, order({ number: 9 }))).rejects.toMatchObject({ code: 'not-found' })
    await expect(eraseBody(STEWARD, order({ slug: 'nowhere' }))).rejects.toMatchObject({ code: 'not-found' })
    for (const wrong of [{ ground: 'dislike' as never }, { words: ' ' }])
      await expect(eraseBody(STEWARD, order({ number: 2, ...wrong }))).rejects.toMatchObject({
        code: 'invalid',
      })
  })

  it('is written down with its ground, without what it took out', async () => {
    const { lines } = await listActs({ act: 'erase-body', subject: 'named' })
    expect(lines).toMatchObject([{ actorKey: STEWARD.key, detail: { number: 1, ground: 'private-place' } }])
  })
})

describe('the database', () => {
  it('lets a body be erased only after a decision that says so, and into nothing else', async () => {
    const run = (sql: string) => db().$executeRawUnsafe(sql)
    const second = `"entryId" = (SELECT id FROM "Entry" WHERE slug = 'kept') AND number = 2`
    await expect(run(`UPDATE "Revision" SET body = '{"erased": true}' WHERE ${second}`)).rejects.toThrow(
      /never changed/,
    )
    const first = second.replace('2', '1')
    for (const body of ['{}', '{"title": "Forged"}', '{"erased": true, "title": "Forged"}'])
      await expect(run(`UPDATE "Revision" SET body = '${body}' WHERE ${first}`)).rejects.toThrow(
        /never changed/,
      )
  })
})

describe('verify, rebuild and backup', () => {
  it('report an erased body as erased and the record as whole', async () => {
    const { erased, findings } = await verify(dataDir)
    expect(findings).toEqual([])
    expect([...erased].sort()).toEqual([
      'kept revision 1',
      'named revision 1',
      'twice revision 1',
      'waiting revision 1',
    ])
    await rebuild()
    expect((await verify(dataDir)).findings).toEqual([])
  })

  it('carry it: a restored record says the same', async () => {
    const file = join(dataDir, 'erased.jsonl.gz')
    await backup(dataDir, file)
    const before = await verify(dataDir)
    const here = process.env.DATABASE_URL
    await closeDb()
    process.env.DATABASE_URL = await copyTemplate(`t_${v4().replaceAll('-', '')}`)
    const restored = await restoreBackup(dataDir, file)
    expect(restored.erased).toEqual(before.erased)
    expect(await withdrawnEntry('named')).toMatchObject({ erased: true })
    await closeDb()
    if (here !== undefined) process.env.DATABASE_URL = here
  })

  it('find a body that was blanked without a decision, and an erasure that was undone', async () => {
    const forge = async (sql: string) => {
      await db().$executeRawUnsafe('ALTER TABLE "Revision" DISABLE TRIGGER USER')
      await db().$executeRawUnsafe(sql)
      await db().$executeRawUnsafe('ALTER TABLE "Revision" ENABLE TRIGGER USER')
    }
    await publish('recipe', 'honest', makeRecipe())
    const of = (slug: string) => `"entryId" = (SELECT id FROM "Entry" WHERE slug = '${slug}') AND number = 1`
    await forge(`UPDATE "Revision" SET body = '{"erased": true}' WHERE ${of('honest')}`)
    await forge(`UPDATE "Revision" SET body = '{"title": "Undone"}' WHERE ${of('twice')}`)
    const { findings } = await verify(dataDir)
    expect(findings.map(({ what, where }) => `${what}: ${where}`).sort()).toEqual([
      'altered-body: honest revision 1',
      'altered-body: twice revision 1',
    ])
  })
})
